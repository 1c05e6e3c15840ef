import { GAUGE_RANGE, GAUGE_STEP_RANGE, type JsonObject, parseScenario } from '../../sim/index.ts';
import { type Car, readCar } from '../state/cars.ts';
import type { Gauge } from '../state/gauge.ts';
import type { Session } from '../state/session.ts';

/** So many steps each way are kept: enough to find one's way back, little enough for the browser's storage. */
const MOST_STORED = 20;

/** A car as the browser keeps it: the file as typed, and what the page calls it. */
export interface StoredCar {
  readonly label: string;
  readonly document: JsonObject;
  /** the file of the car on which its flow was measured, where that is another one */
  readonly measuredOn?: JsonObject;
}

/** Undo and redo as lists of cars by their place in one table, since most steps share a car. */
export interface StoredSteps {
  readonly cars: readonly StoredCar[];
  readonly undo: readonly StoredStep[];
  readonly redo: readonly StoredStep[];
}

interface StoredStep {
  readonly label: string;
  /** places in the table; null where there was no car */
  readonly before: number | null;
  readonly after: number | null;
  readonly gauge?: Gauge;
}

type UndoStep = Session['undoSteps']['value'][number];

export function asStored({ label, document, scenario: { measuredOn } }: Car): StoredCar {
  return { label, document, ...(measuredOn && { measuredOn: measuredOn.document }) };
}

/** The car that was stored; undefined where it has errors. */
export function carOf({ label, document, measuredOn }: StoredCar): Car | undefined {
  const meter = measuredOn && parseScenario(JSON.stringify(measuredOn)).scenario;
  return readCar(label, document, meter).car;
}

/** The newest steps back and forth. */
export function storedSteps({ undoSteps, redoSteps }: Session): StoredSteps {
  const cars: Car[] = [];
  const placeOf = (car: Car | undefined): number | null => {
    if (car === undefined) return null;
    const known = cars.indexOf(car);
    return known >= 0 ? known : cars.push(car) - 1;
  };
  const stored = (steps: readonly UndoStep[]) =>
    steps.slice(-MOST_STORED).map((step) => ({ ...step, before: placeOf(step.before), after: placeOf(step.after) }));
  const [undo, redo] = [stored(undoSteps.value), stored(redoSteps.value)];
  return { cars: cars.map(asStored), undo, redo };
}

/**
 * Puts undo and redo back; both stay empty where one of the cars cannot be read any more. A car that is on screen is
 * taken as it is, with its run.
 */
export function restoreSteps({ cars, undo, redo }: StoredSteps, session: Session): void {
  const onScreen = [session.before.value, session.after.value].flatMap((car) => car ?? []);
  const written = onScreen.map((car) => JSON.stringify(asStored(car)));
  const found = cars.map((stored) => {
    const known = onScreen[written.indexOf(JSON.stringify(stored))];
    return known ?? carOf(stored);
  });
  if (found.some((car) => car === undefined)) return;
  const carAt = (place: number | null): Car | undefined => (place === null ? undefined : found[place]);
  const read = (steps: readonly StoredStep[]): UndoStep[] =>
    steps.map((step) => ({ ...step, before: carAt(step.before), after: carAt(step.after) }));
  session.undoSteps.value = read(undo);
  session.redoSteps.value = read(redo);
}

/** Whether what was stored is such a list; what stands behind its names is looked at where it is read. */
export function areStoredSteps(value: unknown): value is StoredSteps {
  if (!isRecord(value)) return false;
  const { cars, undo, redo } = value;
  if (!Array.isArray(cars) || !Array.isArray(undo) || !Array.isArray(redo) || !cars.every(isStoredCar)) return false;
  const isPlace = (place: unknown) => place === null || (typeof place === 'number' && place in cars);
  return [...undo, ...redo].every(
    (step) =>
      isRecord(step) &&
      typeof step.label === 'string' &&
      isPlace(step.before) &&
      isPlace(step.after) &&
      (step.gauge === undefined || isGauge(step.gauge)),
  );
}

/** Whether what was stored are readings of a gauge. */
export function isGauge(value: unknown): value is Gauge {
  const isWithin = (each: unknown, [low, high]: readonly [number, number]) =>
    typeof each === 'number' && each >= low && each <= high;
  return (
    isRecord(value) &&
    Array.isArray(value.byPull) &&
    value.byPull.every((reading) => reading === null || isWithin(reading, GAUGE_RANGE)) &&
    isWithin(value.step, GAUGE_STEP_RANGE)
  );
}

export const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export const isStoredCar = (value: unknown): value is StoredCar =>
  isRecord(value) &&
  typeof value.label === 'string' &&
  isRecord(value.document) &&
  (value.measuredOn === undefined || isRecord(value.measuredOn));
