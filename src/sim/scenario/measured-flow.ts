import { isObject, type JsonObject, type JsonValue } from './issue.ts';
import type { Scenario } from './scenario.ts';

const KEYS = ['measuredFlow', 'measuredFlowAt', 'measuredFlowVoltage'] as const;

/** What a file says of the flow that was measured, to be compared. */
function measurementOf(pump: JsonValue | undefined): string {
  return JSON.stringify(KEYS.map((key) => (isObject(pump) ? pump[key] : undefined)));
}

/** Whether changes of a file measure the flow anew: they name it, or give the whole pump with another one. */
export function measuresAnew(changes: JsonObject, original: JsonObject): boolean {
  return Object.entries(changes).some(([path, value]) =>
    path === 'pump'
      ? measurementOf(value) !== measurementOf(original.pump)
      : KEYS.some((key) => path === `pump.${key}`),
  );
}

/**
 * The car on which the flow of a document was measured, where the document was made of other cars and says the same of
 * that flow as one of them, the first of which counts; else undefined: it was measured on the car of the document.
 */
export function measuredOnOneOf(cars: readonly Scenario[], document: JsonObject): Scenario | undefined {
  const measurement = measurementOf(document.pump);
  const alike = cars.find((car) => measurementOf(car.document.pump) === measurement);
  return alike?.measuredOn ?? alike;
}
