import type { FileUnit } from '../units.ts';

/** What every row of the parameter table says. */
interface Row {
  /** a noun in lower case, as messages and forms name it */
  readonly label: string;
  readonly meaning: string;
  /** stands in where the key is absent, in the file unit; with `source` */
  readonly default?: number | string;
  /** where the default comes from */
  readonly source?: string;
  /** what stands in where the key is absent and no one value does, in words: "lines.bore" */
  readonly absent?: string;
  /** said where the key is missing, or 0, and must not be */
  readonly whenMissing?: string;
}

/** A number in the file unit. A row without `default` and `absent` is required. */
export interface NumberRow extends Row {
  readonly unit: FileUnit;
  /** outside min to max the file is refused */
  readonly min: number;
  readonly max: number;
  /** outside it the run goes ahead with a warning */
  readonly usual?: readonly [number, number];
  /** what is usual, in words, for the warning and the guide */
  readonly typical?: string;
  /** a bare number above `above` can only have been meant in the unit `unit`: it is read so, with a warning */
  readonly misread?: { readonly above: number; readonly unit: string };
  readonly whole?: true;
  /** may be a pair [at the start, at the end] of a phase */
  readonly ramp?: true;
  /** a mistake of the trade that text in this key is looked through for */
  readonly trap?: 'fitting size' | 'ethylene by mass' | 'propylene by mass';
  /**
   * groups of the file, ".name" of the same group, from which the value follows where one is there: the key may then be
   * left out
   */
  readonly followsFrom?: readonly string[];
  /** key of the same group that gives this one its sense: typed alone, this one is refused */
  readonly needs?: string;
}

/** One of a few words. */
export interface WordRow extends Row {
  readonly choices: readonly string[];
  /** other words are known to the trade, and not computed by this version */
  readonly othersNotModelled?: true;
}

/** Free text. */
export interface TextRow extends Row {
  readonly text: true;
}

export type Parameter = NumberRow | WordRow | TextRow;
export type Group = Readonly<Record<string, Parameter>>;

/** The value of a row once read: numbers in the file unit, NaN where what was typed is at fault. */
type ValueOf<R> =
  | (R extends { readonly choices: readonly (infer Choice)[] }
      ? Choice
      : R extends { readonly text: true }
        ? string
        : R extends { readonly ramp: true }
          ? readonly [number, number]
          : number)
  | (R extends { readonly absent: string } ? undefined : never);
export type ValuesOf<G> = { readonly [Key in keyof G]: ValueOf<G[Key]> };

export const isNumberRow = (row: Parameter): row is NumberRow => 'unit' in row;
export const isWordRow = (row: Parameter): row is WordRow => 'choices' in row;
export const isRequired = (row: Parameter): boolean => row.default === undefined && row.absent === undefined;
