import { InvalidArgumentError } from 'commander';
import { evenly, isRange, type JsonValue, type RangeAxis, type SweepAxis } from '../sim/index.ts';

const VARY = /^([^=]+)=(.+)$/;
const NUMBERS = /^([^:]+):([^:]+)(?::([^:]+))?$/;

/**
 * One more of `--vary`: path=from:to:count, numbers evenly apart; path=a,b,c, where words, or quantities with their
 * unit, are values too; path=from:to, a range to draw from.
 */
export function readVary(text: string, before: readonly SweepAxis[] = []): SweepAxis[] {
  const [, path = '', values = ''] = VARY.exec(text) ?? [];
  if (path === '')
    throw new InvalidArgumentError(`got ${text}; expected path=from:to:count, path=a,b,c or path=from:to.`);
  if (before.some((axis) => axis.path === path)) throw new InvalidArgumentError(`${path} is varied twice.`);
  const [, from, to, count] = NUMBERS.exec(values) ?? [];
  if (from === undefined || to === undefined) return [...before, { path, values: values.split(',').map(readValue) }];
  const [low, high] = [finite(from, text), finite(to, text)];
  if (count === undefined) return [...before, { path, low, high }];
  const steps = Number(count);
  if (!Number.isInteger(steps) || steps < 2 || steps > 1e6) {
    throw new InvalidArgumentError(`got ${count} values of ${path}; expected a whole number from 2 to 1000000.`);
  }
  return [...before, { path, values: evenly(low, high, steps) }];
}

function readValue(text: string): JsonValue {
  const value = Number(text);
  return text.trim() === '' || !Number.isFinite(value) ? text : value;
}

function finite(text: string, whole: string): number {
  const value = Number(text);
  if (text.trim() !== '' && Number.isFinite(value)) return value;
  throw new InvalidArgumentError(`got ${whole}; expected numbers on both sides of the colon, in the unit of the file.`);
}

/** path=low:high, as a range that is not known better. */
export function readRange(text: string, before: readonly RangeAxis[] = []): RangeAxis[] {
  const axes = readVary(text, before);
  const last = axes[axes.length - 1];
  if (!isRange(last) || !(last.low < last.high)) {
    throw new InvalidArgumentError(`got ${text}; expected path=low:high, low below high.`);
  }
  return [...before, last];
}

/** One part of several, counted from 1. */
export interface Shard {
  readonly part: number;
  readonly of: number;
}

/** i/n */
export function readShard(text: string): Shard {
  const [, part, of] = (/^(\d+)\/(\d+)$/.exec(text) ?? []).map(Number);
  if (part >= 1 && part <= of) return { part, of };
  throw new InvalidArgumentError(`got ${text}; expected i/n, i from 1 to n.`);
}
