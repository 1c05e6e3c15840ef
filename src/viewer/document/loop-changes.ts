import {
  type Config,
  type JsonObject,
  type JsonValue,
  type LineKey,
  type LoopItem,
  type LoopPart,
  lineAfter,
} from '../../sim/index.ts';
import { type Car, valueAt } from '../state/cars.ts';
import type { Changes } from '../state/session.ts';
import { fieldGroups, groupAt } from './field-groups.ts';
import { itemsAt } from './lists.ts';

/** A part that a loop may have twice, and its second. */
const SECONDS = { exchanger: 'secondExchanger', pump: 'secondPump' } as const;
export type DoubledPart = keyof typeof SECONDS;

export const SECOND_PLACES = ['none', 'in series', 'side by side'] as const;
export type SecondPlace = (typeof SECOND_PLACES)[number];
export const TANK_PLACES = ['before the pump', 'after the core'] as const;
export type TankPlace = (typeof TANK_PLACES)[number];

type Loop = Config['loop'];
type Way = readonly LoopPart[];

const holds = (item: LoopItem, part: LoopPart): boolean =>
  typeof item === 'string' ? item === part : item.flat().includes(part);
const indexOf = (loop: Loop, part: LoopPart): number => loop.findIndex((item) => holds(item, part));

/** How the second of a part stands to the first. */
export function secondPlaceOf({ loop }: Config, part: DoubledPart): SecondPlace {
  const second = SECONDS[part];
  const item = loop[indexOf(loop, second)];
  if (item === undefined) return 'none';
  const areBeside =
    typeof item !== 'string' && holds(item, part) && !item.some((way) => way.includes(part) && way.includes(second));
  return areBeside ? 'side by side' : 'in series';
}

/** Whether a second can be put beside a part: ways do not divide again. */
export function canStandBeside(car: Car, part: DoubledPart): boolean {
  return without(car.config.loop, SECONDS[part]).includes(part);
}

/** Takes the second of a part out, or puts it behind the first or beside it: new, it is a copy of the first. */
export function secondChanges(car: Car, part: DoubledPart, place: SecondPlace): Changes {
  const { document, config } = car;
  const second = SECONDS[part];
  if (place === 'none') return partTakenOut(car, second);
  const loop = without(config.loop, second).flatMap((item): LoopItem[] => {
    if (!holds(item, part)) return [item];
    if (typeof item !== 'string') {
      const behind = (way: Way): Way => way.flatMap((each) => (each === part ? [each, second] : [each]));
      return [[behind(item[0]), behind(item[1])]];
    }
    return place === 'in series' ? [part, second] : [[[part], [second]]];
  });
  const order = orderChanges(car, loop);
  if (config[second] !== undefined) return order;
  const keys = new Set([
    'curve',
    'test',
    ...(groupAt(document, second)?.fields ?? []).map(({ path }) => path.split('.')[1]),
  ]);
  const first = document[part] as Readonly<Record<string, JsonValue>>;
  return {
    ...order,
    [second]: Object.fromEntries(Object.entries(first).filter(([key]) => keys.has(key))),
    [lineKey(second)]: itemsAt(document, lineKey(part)),
  };
}

/** Heat sink to begin with: points of an invented chiller. */
export const EXAMPLE_SINK = {
  curve: [
    { coolant: 5, heat: 0 },
    { coolant: 40, heat: 2000 },
  ],
};

/** Bolts an extra heat sink to the core's outlet, with a curve that is an example, or takes it out. */
export function sinkChanges(car: Car, isThere: boolean): Changes {
  if (!isThere) return partTakenOut(car, 'heatSink');
  return { ...partPutBehindCore(car, 'heatSink'), heatSink: EXAMPLE_SINK, [lineKey('heatSink')]: [] };
}

/** Where the tank stands; undefined where it is neither place, or both at once so that there is nothing to choose. */
export function tankPlaceOf({ loop }: Config): TankPlace | undefined {
  const isBeforePump = holds(loop[0], 'pump');
  const isAfterCore = loop[loop.length - 2] === 'core';
  if (isBeforePump === isAfterCore) return undefined;
  return isBeforePump ? 'before the pump' : 'after the core';
}

/** Moves the tank; the lines stay with the parts that they leave. */
export function tankChanges(car: Car, place: TankPlace): Changes {
  const loop = car.config.loop.slice(0, -1);
  const at = place === 'after the core' ? loop.indexOf('core') + 1 : indexOf(loop, 'pump');
  return orderChanges(car, loop.toSpliced(at, 0, 'reservoir'));
}

/** A part right behind the core, in the order alone. */
export function partPutBehindCore(car: Car, part: LoopPart): Changes {
  const { loop } = car.config;
  return orderChanges(car, loop.toSpliced(loop.indexOf('core') + 1, 0, part));
}

/** What phases say about a part that a car can do without. */
const PHASE_KEYS: Partial<Record<LoopPart, readonly string[]>> = {
  exchanger: ['exchangerAirSpeed', 'roadSpeed', 'fanFlow', 'exchangerPickUp', 'exchangerValve'],
  secondExchanger: ['secondExchangerAirSpeed'],
  secondPump: ['secondPump'],
  heatSink: ['heatSink'],
};

/** Takes a part out of the file: its group, the line behind it, its place in the loop, what phases say about it. */
export function partTakenOut(car: Car, part: LoopPart): Changes {
  const inPhases = phasesIn(car.document).flatMap(([path, phase]) =>
    (PHASE_KEYS[part] ?? []).filter((key) => key in phase).map((key) => [`${path}.${key}`, undefined]),
  );
  return {
    ...orderChanges(car, without(car.config.loop, part)),
    [part]: undefined,
    [lineKey(part)]: undefined,
    ...Object.fromEntries(inPhases),
  };
}

/** Every phase of a document with its path. */
export function phasesIn(document: JsonObject): [string, JsonObject][] {
  return fieldGroups(document)
    .filter(({ title }) => title === 'phase')
    .map(({ path }) => [path, valueAt(document, path) as JsonObject]);
}

const lineKey = (part: Parameters<typeof lineAfter>[0]): `lines.${LineKey}` => `lines.${lineAfter(part)}`;

/** A loop without a part; where a way is left empty the other goes on in the row. */
function without(loop: Loop, part: LoopPart): LoopItem[] {
  return loop.flatMap((item): LoopItem[] => {
    if (typeof item === 'string') return item === part ? [] : [item];
    const [first, second] = item.map((way) => way.filter((each) => each !== part));
    return first.length === 0 || second.length === 0 ? [...first, ...second] : [[first, second]];
  });
}

const WAYS = ['ways', 'secondWays'] as const;

/**
 * The new order, left out of the file where it is the usual one. A line behind two ways goes with its pair; where a
 * pair is gone, its line goes on from the last part of the way that is left.
 */
function orderChanges({ document, config }: Car, loop: Loop): Changes {
  const changes: Record<string, JsonValue | undefined> = { loop: isUsual(loop) ? undefined : (loop as JsonValue) };
  const old = pairsOf(config.loop);
  const now = pairsOf(loop);
  const lines = old.map((_, k) => itemsAt(document, lineKey(WAYS[k])));
  for (const place of WAYS) changes[lineKey(place)] = undefined;
  old.forEach((pair, k) => {
    if (lines[k].length === 0) return;
    const next = now.findIndex((ways) => ways.flat().some((part) => pair.flat().includes(part)));
    if (next >= 0) changes[lineKey(WAYS[next])] = lines[k];
    else {
      const left = pair.flat().filter((part) => loop.some((item) => holds(item, part)));
      const key = lineKey(left[left.length - 1]);
      changes[key] = [...itemsAt(document, key), ...lines[k]];
    }
  });
  return changes;
}

const pairsOf = (loop: Loop) => loop.filter((item) => typeof item !== 'string');

/** Pump, core, front exchanger where there is one, tank: what a file without an order means. */
function isUsual(loop: Loop): boolean {
  const start = indexOf(loop, 'reservoir') + 1;
  const order = [...loop.slice(start), ...loop.slice(0, start)].join(' ');
  return order === 'pump core exchanger reservoir' || order === 'pump core reservoir';
}
