import { standardAtmosphere } from '../fluids/standard-atmosphere.ts';
import type { JsonObject, JsonValue } from './issue.ts';
import { placedPhases } from './phases.ts';
import type { Scenario, ScenarioResult } from './scenario.ts';
import { stationPressure } from './station-pressure.ts';
import { applyChanges } from './variants.ts';

/** Weather and place in the units of the file; what is left out stays as the file has it. */
export interface Day {
  /** degC */
  readonly temperature?: number;
  /** m above sea level; its pressure is that of the standard atmosphere, in place of a typed one */
  readonly altitude?: number;
  /** % */
  readonly relativeHumidity?: number;
}

/**
 * The same car on another day: `ambient` as given, outside temperatures of phases shifted by as much as that of
 * `ambient`, station pressures of phases in proportion, humidity of phases as given. Start temperatures that the file
 * leaves to the outside air follow it; typed ones stay.
 *
 * @param scenario - the car as typed
 * @param day - what is different
 * @returns the changed scenario unless an issue is an error, and the issues
 * @throws {OutOfRangeError} when the altitude is outside -2000 to 11000 m and a phase has its own station pressure
 * @example
 * onDay(scenario, { temperature: 35 }).scenario?.values.ambient.temperature // 35
 */
export function onDay(scenario: Scenario, day: Day): ScenarioResult {
  const changes = changesOf(scenario, day);
  return Object.keys(changes).length === 0 ? { scenario, issues: [] } : applyChanges(scenario, 'another day', changes);
}

function changesOf({ document, values }: Scenario, day: Day): JsonObject {
  const { temperature, altitude, relativeHumidity } = day;
  const changes: Record<string, JsonValue> = {};
  if (altitude !== undefined) {
    const { pressure: _, ...ambient } = document.ambient as JsonObject;
    changes.ambient = { ...ambient, altitude };
  }
  if (temperature !== undefined) changes['ambient.temperature'] = temperature;
  if (relativeHumidity !== undefined) changes['ambient.relativeHumidity'] = relativeHumidity;
  for (const { phase, path } of placedPhases(values)) {
    const { outsideTemperature, stationPressure: pressures } = phase;
    if (temperature !== undefined && outsideTemperature) {
      const shift = temperature - values.ambient.temperature;
      changes[`${path}.outsideTemperature`] = outsideTemperature.map((each) => each + shift);
    }
    if (altitude !== undefined && pressures) {
      const ratio = standardAtmosphere(altitude).pressure / stationPressure(values);
      changes[`${path}.stationPressure`] = pressures.map((each) => each * ratio);
    }
    if (relativeHumidity !== undefined && phase.relativeHumidity !== undefined) {
      changes[`${path}.relativeHumidity`] = relativeHumidity;
    }
  }
  return changes;
}
