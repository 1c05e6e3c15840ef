import { LOOP_PARTS, type LoopItem, type LoopPart, type LoopWay } from './config/loop.ts';
import { isList, type JsonValue, quoted, type Report } from './issue.ts';
import { nearestWord } from './nearest.ts';

const EXPECTED = 'parts in flow order, such as ["pump", "core", ["exchanger", "secondExchanger"], "reservoir"]';

/** Reads the order of the loop; undefined where none is typed or it is no such list. */
export function readLoop(typed: JsonValue | undefined, path: string, report: Report): readonly LoopItem[] | undefined {
  if (typed === undefined) return undefined;
  const refuse = (place: string, message: string, found: string, expected = EXPECTED): undefined => {
    report({ severity: 'error', path: place, message, found, expected });
  };

  function readPart(value: JsonValue, place: string): LoopPart | undefined {
    const part = LOOP_PARTS.find((known) => known === value);
    if (part !== undefined) return part;
    const near = typeof value === 'string' ? nearestWord(value, LOOP_PARTS) : undefined;
    const hint = near ? `Did you mean ${quoted(near)}?` : `The parts are ${LOOP_PARTS.join(', ')}.`;
    return refuse(place, `${quoted(value)} is no part of a loop. ${hint}`, quoted(value), near ?? 'a part');
  }

  function readWay(value: JsonValue, place: string): LoopWay {
    const parts = isList(value) ? value : [value];
    if (parts.length === 0) {
      refuse(place, 'A way of the loop has no part: all coolant would go there.', '[]', 'one part or more');
    }
    return parts.flatMap((part, k) => readPart(part, isList(value) ? `${place}.${k}` : place) ?? []);
  }

  function readItem(value: JsonValue, place: string): LoopItem[] {
    if (!isList(value)) return [readPart(value, place) ?? []].flat();
    if (value.length === 2) return [[readWay(value[0], `${place}.0`), readWay(value[1], `${place}.1`)]];
    refuse(place, `Ways beside each other come as a list of two; found ${value.length}.`, quoted(value), 'two ways');
    return [];
  }

  if (!isList(typed)) return refuse(path, `The loop is ${quoted(typed)}; expected ${EXPECTED}.`, quoted(typed));
  return typed.flatMap((item, k) => readItem(item, `${path}.${k}`));
}
