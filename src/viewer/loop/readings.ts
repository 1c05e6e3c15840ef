import {
  type ColumnName,
  type Config,
  type LinePlace,
  type LoopPart,
  type OperatingPoint,
  PART_WORDS,
  phasesOf,
} from '../../sim/index.ts';
import {
  capitalised,
  columnShown,
  degrees,
  fixed,
  flow,
  joined,
  length,
  NO_BREAK_SPACE,
  pressure,
  scaleOf,
  signed,
  temperature,
  threeFigures,
  wordingIn,
} from '../format.ts';
import type { UnitChoice } from '../state/display.ts';

/** @example partName('reservoir') // "Tank" */
export const partName = (part: LoopPart): string => capitalised(PART_WORDS[part]);

/** A share of one: "47 %". */
export const percent = (share: number): string => `${fixed(100 * share, 0)}${NO_BREAK_SPACE}%`;

/** Length and bore of the line that leaves a place; where there is none a part is bolted on, and ways just meet. */
export function lineWords(config: Config, place: LinePlace, units: UnitChoice): readonly string[] {
  const segments = config.lines.find(({ after }) => after === place)?.segments ?? [];
  if (segments.length === 0) return place === 'ways' || place === 'secondWays' ? [] : ['bolted on'];
  const metres = segments.reduce((sum, segment) => sum + segment.length, 0);
  const bores = segments.map(({ bore }) => bore);
  const [least, most] = [Math.min(...bores), Math.max(...bores)];
  const from = least === most ? '' : `${threeFigures(scaleOf('mm', units).fromSi(least))}\u2013`;
  return [`${threeFigures(metres)}${NO_BREAK_SPACE}m`, `${from}${length(most, units)}`];
}

/** Share of the loop's flow that comes through a part. */
export function shareThrough(loop: Config['loop'], shares: readonly number[], part: LoopPart): number {
  const pairs = loop.filter((item) => typeof item !== 'string');
  const pair = pairs.findIndex((ways) => ways.flat().includes(part));
  if (pair < 0) return 1;
  return pairs[pair][0].includes(part) ? shares[pair] : 1 - shares[pair];
}

/** Names of the phases in which a valve leads the coolant past the exchangers; each once. */
export function phasesPast({ cycle, exchanger, secondExchanger }: Config): string[] {
  if (exchanger === undefined && secondExchanger === undefined) return [];
  const phases = phasesOf(cycle);
  return [...new Set(phases.filter(({ isExchangerBypassed }) => isExchangerBypassed).map(({ name }) => name))];
}

/** What is known at the time of the clock. */
export interface Moment {
  /** a recorded quantity, SI; undefined where nothing is solved */
  readonly at: (name: ColumnName) => number | undefined;
  readonly phase: string | undefined;
}

/** What stands in a part's box below its name: the telling number, and one beside it. */
export function partReading(
  part: LoopPart,
  config: Config,
  point: OperatingPoint,
  { at, phase }: Moment,
  units: UnitChoice,
): readonly [string, string] {
  const degreesAt = (name: ColumnName): string => {
    const kelvin = at(name);
    return kelvin === undefined || Number.isNaN(kelvin) ? '\u2013' : degrees(kelvin, units);
  };
  const loss = point.losses.find(({ place, isLine }) => place === part && !isLine)?.pressure;
  const drop = loss === undefined ? 'no loss' : pressure(loss, units);
  switch (part) {
    case 'reservoir': {
      const { coolantVolume, iceMass } = config.reservoir;
      const litres = `${threeFigures(1000 * coolantVolume)}${NO_BREAK_SPACE}L`;
      const out = degreesAt('reservoirTemperature');
      if (iceMass === 0) return [litres, `out ${out}`];
      const left = fixed(at('iceMass') ?? iceMass, 1);
      return [`${litres} + ${threeFigures(iceMass)}${NO_BREAK_SPACE}kg ice`, `now ${left}${NO_BREAK_SPACE}kg, ${out}`];
    }
    case 'pump':
    case 'secondPump': {
      const through = shareThrough(config.loop, point.shares, part) * point.flow;
      const isShut = point.heldShut.includes(PART_WORDS[part]);
      const makes = config.secondPump === undefined ? `makes ${wordingIn(units).pressure(point.pressure)}` : '';
      return [joined(flow(through, units)), isShut ? 'held shut' : makes];
    }
    case 'core': {
      const into = at('coolantIntoCore');
      const out = degreesAt('coolantOutOfCore');
      return [into === undefined ? out : `${temperature(into, units).value} \u2192 ${out}`, drop];
    }
    case 'exchanger':
    case 'secondExchanger': {
      if (phase !== undefined && phasesPast(config).includes(phase)) return ['by-passed', drop];
      const column = part === 'exchanger' ? 'coolantOutOfExchanger' : 'coolantOutOfSecondExchanger';
      return [`out ${degreesAt(column)}`, drop];
    }
    case 'heatSink': {
      const watts = at('heatSinkPower');
      return [
        watts === undefined ? '\u2013' : joined(columnShown(watts, 'heatSinkPower', units)),
        'out of the coolant',
      ];
    }
  }
}

export interface LossRow {
  readonly name: string;
  /** of all that the pumps make */
  readonly share: number;
  readonly pressure: string;
  /** where only a part of the flow comes through */
  readonly flow?: string;
}

/** Losses by part and line, largest first. Of two ways each takes the same pressure. */
export function lossRows({ losses, pressure: whole, flow: through }: OperatingPoint, units: UnitChoice): LossRow[] {
  return losses.map((loss) => ({
    name: capitalised(loss.name),
    share: loss.pressure / whole,
    pressure: pressure(loss.pressure, units),
    ...(loss.flow < through && { flow: joined(flow(loss.flow, units)) }),
  }));
}

/** What one change by itself makes of the flow: name, flow, and by how much it moves. */
export function stepRows({ steps, flow: now }: OperatingPoint, units: UnitChoice): [string, string, string][] {
  return steps.map(({ name, flow: next }) => [
    capitalised(name),
    joined(flow(next, units)),
    signed(joined(flow(next - now, units))),
  ]);
}
