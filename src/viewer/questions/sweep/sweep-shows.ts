import { type FileUnit, type SweepResult, toSi } from '../../../sim/index.ts';
import { measureOf } from '../../fields/measure.ts';
import { briefly, fixed, joined, named, scaleOf } from '../../format.ts';
import type { UnitChoice } from '../../state/display.ts';
import type { FileNumber } from '../file-numbers.ts';

/** What the picture and its table may show of each car. */
export const SWEEP_SHOWS = ['pulls', 'hottest pull', 'settled peak', 'coolant flow'] as const;
export type SweepShow = (typeof SWEEP_SHOWS)[number];

interface Figure {
  /** absent: a count */
  readonly fileUnit?: FileUnit;
  /** in the unit of the line that the library writes */
  readonly read: (result: SweepResult) => number | undefined;
}

const FIGURES: Readonly<Record<SweepShow, Figure>> = {
  pulls: { read: ({ pulls }) => pulls },
  'hottest pull': { fileUnit: 'degC', read: (result) => result.hottest_peak_degC },
  'settled peak': { fileUnit: 'degC', read: (result) => result.settled_peak_degC },
  'coolant flow': { fileUnit: 'L/min', read: (result) => result.coolant_flow_at_end_of_first_pull_L_min },
};

export interface ShownFigure {
  /** in the unit of the page; undefined where the car has none */
  readonly read: (result: SweepResult) => number | undefined;
  readonly write: (shown: number) => string;
  readonly toSi: (shown: number) => number;
  /** with its unit, for a sentence */
  readonly say: (shown: number) => string;
  readonly unit: string;
  /** a temperature of the charge, which the limit can be held against */
  readonly isTemperature: boolean;
}

export function shownFigure(show: SweepShow, units: UnitChoice): ShownFigure {
  const { fileUnit, read } = FIGURES[show];
  if (fileUnit === undefined) {
    return { read, write: briefly, toSi: (count) => count, say: briefly, unit: '', isTemperature: false };
  }
  const { fromSi, toSi: backToSi, unit, digits } = scaleOf(fileUnit, units);
  const write = (shown: number) => fixed(shown, digits);
  return {
    read: (result) => {
      const value = read(result);
      return value === undefined ? undefined : fromSi(toSi(value, fileUnit));
    },
    write,
    toSi: backToSi,
    say: (shown) => joined({ value: write(shown), unit }),
    unit,
    isTemperature: fileUnit === 'degC',
  };
}

/** One number of the car that was gone through, as pictures, tables and sentences write it. */
export interface SweptNumber {
  readonly path: string;
  readonly name: string;
  /** its name and its unit */
  readonly title: string;
  /** in the unit of the file */
  readonly values: readonly number[];
  /** what the car in hand has, in the unit of the file */
  readonly own: number;
  /** from the unit of the file to that of the page */
  readonly fromFile: (value: number) => number;
  readonly write: (value: number) => string;
  /** with its unit */
  readonly say: (value: number) => string;
}

export function sweptNumber(
  { path, name, row, value }: FileNumber,
  values: readonly number[],
  units: UnitChoice,
): SweptNumber {
  const measure = measureOf(row.unit, units);
  const write = (each: number) => String(Number(measure.fromFile(each).toPrecision(4)));
  return {
    path,
    name,
    title: named(name, measure.caption),
    values,
    own: value,
    fromFile: measure.fromFile,
    write,
    say: (each) => joined({ value: write(each), unit: measure.caption }),
  };
}
