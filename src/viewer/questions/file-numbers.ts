import { carAlone, isList, isNumberRow, type NumberRow, type Scenario } from '../../sim/index.ts';
import { keysOfKind } from '../document/compressor-keys.ts';
import { type FieldGroup, type FieldSpec, fieldGroups, numberAt } from '../document/field-groups.ts';
import { placeWords } from '../document/input-words.ts';
import { PARTS } from '../document/parts.ts';
import { type Car, readCar, valueAt } from '../state/cars.ts';
import { withChanges } from '../state/session.ts';

/** A number of a car's file that may be off, called as the inputs call it. */
export interface FileNumber {
  readonly path: string;
  /** told from every other: "engine speed, pull, start" */
  readonly name: string;
  /** the part of the inputs that it stands in: "Air and engine" */
  readonly part: string;
  readonly row: NumberRow;
  /** what the car has, in the unit of the file */
  readonly value: number;
}

/** Groups of the parts whose numbers are not the car's own. */
const NOT_THE_CAR = ['chargeTable', 'numerics'];

/** Defaults that say something only where a car has what they are a detail of, or lacks what goes before them. */
const DETAILS: Readonly<Record<string, (values: Scenario['values']) => boolean>> = {
  'ambient.altitude': ({ ambient }) => ambient.pressure === undefined,
  'core.turnVolume': ({ core }) => core.passes === 2,
  'intake.dropAtFlow': ({ intake }) => intake.drop > 0,
  'pump.measuredFlowVoltage': ({ pump }) => pump.measuredFlow !== undefined,
  'reservoir.meltConductance': ({ reservoir }) => reservoir.iceMass > 0,
  'room.heatPerAir': ({ room }) => room.volume !== undefined,
};

/**
 * Every number of a car that may be varied, part by part: what its file has, and the defaults that stand in. Whole
 * numbers are left out, since there is nothing between two of them.
 */
export function fileNumbers(car: Car): FileNumber[] {
  const groups = fieldGroups(car.document);
  const numbers = PARTS.flatMap(({ name: part, groups: ofPart }) =>
    groups
      .filter(({ path }) => ofPart.includes(path.split('.')[0]) && !NOT_THE_CAR.includes(path.split('.')[0]))
      .flatMap((group) => group.fields.flatMap((field) => numbersOf(car, group, field)))
      .map((number): FileNumber => ({ ...number, part })),
  );
  const silent = silentDefaults(car, numbers);
  return numbers
    .filter(({ path }) => !silent.has(path))
    .map((number, k, each) => {
      const before = each.slice(0, k).filter(({ name }) => name === number.name).length;
      return before === 0 ? number : { ...number, name: `${number.name} (${before + 1})` };
    });
}

/** A number, or the two ends of one that runs through its phase. */
function numbersOf(car: Car, group: FieldGroup, { path, row }: FieldSpec): Omit<FileNumber, 'part'>[] {
  if (!isNumberRow(row) || row.whole) return [];
  const part = group.path === 'compressor' ? [group.path] : [];
  const name = [row.label, ...part, ...placeWords(car, group)].join(', ');
  const each = isList(valueAt(car.document, path))
    ? [
        { path: `${path}.0`, name: `${name}, start` },
        { path: `${path}.1`, name: `${name}, end` },
      ]
    : [{ path, name }];
  return each.flatMap((one) => {
    const value = numberAt(car, one.path);
    return value !== undefined && Number.isFinite(value) ? [{ ...one, row, value }] : [];
  });
}

/** Defaults that the file would refuse once they are typed, and those that mean nothing in this car. */
function silentDefaults({ document, config, scenario }: Car, numbers: readonly FileNumber[]): ReadonlySet<string> {
  const isTyped = (path: string): boolean => valueAt(document, path) !== undefined;
  const defaults = numbers.filter(({ path }) => !isTyped(path));
  const typed = Object.fromEntries(defaults.map(({ path, value }) => [path, value]));
  const refused = readCar('', withChanges(carAlone(document), typed)).issues.filter(
    ({ severity }) => severity === 'error',
  );
  const { unused } = keysOfKind(document, config.compressor.kind);
  const isSilent = ({ path, row: { needs, followsFrom } }: FileNumber): boolean =>
    unused.has(path) ||
    DETAILS[path]?.(scenario.values) === false ||
    (needs !== undefined && !isTyped(sibling(path, needs))) ||
    (followsFrom?.includes('.test') && isTyped(sibling(path, 'test'))) ||
    refused.some((issue) => issue.path === path);
  return new Set(defaults.filter(isSilent).map(({ path }) => path));
}

/** The path of another key of the same group. */
const sibling = (path: string, key: string): string => path.replace(/[^.]+$/, key);
