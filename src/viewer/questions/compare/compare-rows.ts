import type { ColumnName, ComparedFigures, Comparison, JsonValue } from '../../../sim/index.ts';
import { valueInWords } from '../../document/input-words.ts';
import { boxText, measureOf } from '../../fields/measure.ts';
import { columnShown, difference, drivePower, fixed, named, signed, temperature } from '../../format.ts';
import type { UnitChoice } from '../../state/display.ts';
import type { PickedCar } from './compared-cars.ts';

/** A figure of each car, and how it and its difference from the first are written. */
interface Row {
  readonly name: string;
  readonly unit: string;
  readonly read: (figures: ComparedFigures) => number | undefined;
  readonly write: (value: number) => string;
  readonly writeDifference: (value: number) => string;
}

const END_OF_PULL = {
  coolantFlow: 'Coolant flow',
  coreAirDrop: 'Core pressure drop',
  drivePower: 'Drive power',
  airFlow: 'Air',
} as const satisfies Partial<Record<ColumnName & keyof ComparedFigures, string>>;

/** Counts, the deciding peak and the end of pull 1, a row each. */
export function compareRows(comparison: Comparison, units: UnitChoice): string[][] {
  const count = (name: string, read: Row['read']): Row => ({
    name,
    unit: '',
    read,
    write: (value) => fixed(value, 0),
    writeDifference: (value) => fixed(value, 0),
  });
  const rows: Row[] = [
    count('Pulls to the limit', (car) => car.count),
    count('Deciding pull', (car) => car.decidingPull),
    peakRow('Its peak', (car) => car.decidingPeak, units),
    ...Object.entries(END_OF_PULL).map(([key, name]): Row => {
      const column = key as keyof typeof END_OF_PULL;
      const shown = (value: number) =>
        column === 'drivePower' ? drivePower(value, units) : columnShown(value, column, units);
      const write = (value: number) => shown(value).value;
      return {
        name: `${name}, end of pull 1`,
        unit: shown(0).unit,
        read: (car) => car[column],
        write,
        writeDifference: write,
      };
    }),
  ];
  return cellsOf(comparison, rows);
}

/** The peak of every pull, a row each. */
export function peakRows(comparison: Comparison, units: UnitChoice): string[][] {
  const most = Math.max(...comparison.cars.map(({ peaks }) => peaks.length));
  const rows = Array.from({ length: most }, (_, k) => peakRow(`Peak of pull ${k + 1}`, (car) => car.peaks[k], units));
  return cellsOf(comparison, rows);
}

const peakRow = (name: string, read: Row['read'], units: UnitChoice): Row => ({
  name,
  unit: temperature(0, units).unit,
  read,
  write: (value) => temperature(value, units).value,
  writeDifference: (value) => difference(value, units).value,
});

function cellsOf({ cars }: Comparison, rows: readonly Row[]): string[][] {
  return rows.map(({ name, unit, read, write, writeDifference }) => [
    named(name, unit),
    ...cars.map((car, k) => {
      const value = read(car);
      if (value === undefined) return 'not run';
      const change = k === 0 ? undefined : read(car.difference);
      return change === undefined ? write(value) : `${write(value)} (${changeShown(change, writeDifference)})`;
    }),
  ]);
}

/** "+8", "−8.7", "0" */
function changeShown(value: number, write: (value: number) => string): string {
  const text = write(value);
  return /[1-9]/.test(text) ? signed(text) : '0';
}

/** Inputs in which the cars differ, a row each with what every car has; the first car's value stands where none is changed. */
export function changeRows(cars: readonly Pick<PickedCar, 'changes'>[], units: UnitChoice): string[][] {
  const paths = [...new Set(cars.flatMap(({ changes }) => changes.map(({ path }) => path)))];
  return paths.flatMap((path) => {
    const found = cars.map(({ changes }) => changes.find((change) => change.path === path));
    const known = found.find((change) => change !== undefined);
    if (known === undefined) return [];
    const measure = measureOf(known.unit ?? '-', units);
    const write = (value: JsonValue | undefined) => valueInWords(value, (each) => boxText(each, measure));
    return [
      [
        named(known.name, measure.caption),
        ...found.map((change) => write(change === undefined ? known.from : change.to)),
      ],
    ];
  });
}
