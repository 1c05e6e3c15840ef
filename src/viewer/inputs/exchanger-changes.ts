import type { JsonObject } from '../../sim/index.ts';
import { DEMO_SCENARIOS } from '../files/demo-scenarios.ts';
import { valueAt } from '../state/cars.ts';
import type { Changes } from '../state/session.ts';
import { fieldGroups } from './fields.ts';

/** m/s: a fan before the car gives 3 to 8, common practice */
const FAN = 5;

/** Changes that leave no exchanger in a document: its group, the line behind it and the air across it. */
export function exchangerTakenOut(document: JsonObject): Changes {
  const changes: Record<string, undefined> = { exchanger: undefined, 'lines.afterExchanger': undefined };
  for (const [path, phase] of phasesIn(document)) {
    for (const key of ['exchangerAirSpeed', 'roadSpeed', 'fanFlow', 'exchangerPickUp'])
      if (key in phase) changes[`${path}.${key}`] = undefined;
  }
  return changes;
}

/** Changes that put in the exchanger of the first demo car, a line like the one to it, and air at a usual fan's speed. */
export function exchangerPutIn(document: JsonObject): Changes {
  const { exchanger } = JSON.parse(DEMO_SCENARIOS[0].text);
  const lines = document.lines as JsonObject;
  const running = phasesIn(document).filter(([, { kind }]) => kind !== 'hot soak');
  return {
    exchanger,
    'lines.afterExchanger': lines.afterCore,
    ...Object.fromEntries(running.map(([path]) => [`${path}.exchangerAirSpeed`, FAN])),
  };
}

/** Every phase of a document with its path. */
function phasesIn(document: JsonObject): [string, JsonObject][] {
  return fieldGroups(document)
    .filter(({ title }) => title === 'phase')
    .map(({ path }) => [path, valueAt(document, path) as JsonObject]);
}
