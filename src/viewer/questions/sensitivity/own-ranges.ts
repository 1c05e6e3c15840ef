import type { FileNumber } from '../file-numbers.ts';
import type { Typed } from '../typed.ts';

export const SIDES = ['low', 'high'] as const;
export type Side = (typeof SIDES)[number];

/** What somebody typed for one end of a range. */
export interface TypedEnd {
  readonly text: string;
  /** unit that a bare number was taken in */
  readonly symbol: string;
  readonly value: Typed;
}
export type TypedEnds = Readonly<Partial<Record<Side, TypedEnd>>>;

/**
 * What somebody made of the usual list of uncertain inputs, whatever the car in hand. The key of an input is its path
 * in the file, or the name of one of the trade's.
 */
export interface OwnRanges {
  readonly ends: Readonly<Record<string, TypedEnds>>;
  readonly leftOut: readonly string[];
  readonly added: readonly Pick<FileNumber, 'path' | 'name'>[];
}

export const USUAL_RANGES: OwnRanges = { ends: {}, leftOut: [], added: [] };

export const isUsual = ({ ends, leftOut, added }: OwnRanges): boolean =>
  Object.keys(ends).length + leftOut.length + added.length === 0;

export function withEnd(own: OwnRanges, key: string, side: Side, end: TypedEnd): OwnRanges {
  return { ...own, ends: { ...own.ends, [key]: { ...own.ends[key], [side]: end } } };
}

/** Leaves an input out, or takes it back in. */
export function withTick({ leftOut, ...own }: OwnRanges, key: string): OwnRanges {
  const others = leftOut.filter((each) => each !== key);
  return { ...own, leftOut: others.length < leftOut.length ? others : [...leftOut, key] };
}

export function withAdded(own: OwnRanges, { path, name }: OwnRanges['added'][number]): OwnRanges {
  return { ...own, added: [...own.added, { path, name }] };
}

/** Takes an added input off the list, with all that was typed for it. */
export function withoutAdded({ ends, leftOut, added }: OwnRanges, path: string): OwnRanges {
  const { [path]: _, ...others } = ends;
  return {
    ends: others,
    leftOut: leftOut.filter((key) => key !== path),
    added: added.filter((each) => each.path !== path),
  };
}
