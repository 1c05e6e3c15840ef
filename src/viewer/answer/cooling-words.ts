import { compareCooling, explainCooling } from '../../sim/index.ts';
import { onScreen, wordingIn } from '../format.ts';
import type { Car, CarRun } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';

/** A change of the charge smaller than this is none to speak of [K]. */
const LEAST = 0.05;

/**
 * What After's charge temperature does to the engine's air in the first pull; '' where it is Before's. Both ends of the
 * swallowing exponent are named once the studies of both cars have them for that pull.
 */
export function describeCooling(before: CarRun, after: CarRun, car: Car, units: UnitChoice): string {
  const [from, to] = [before, after].map(({ pulls: [pull], study }) => ({
    pull,
    airBand: study?.airBand?.pull === pull?.pull ? study?.airBand : undefined,
  }));
  if (from.pull === undefined || to.pull === undefined) return '';
  const consequence = compareCooling({ ...from, pull: from.pull }, { ...to, pull: to.pull });
  if (Math.abs(consequence.chargeChange) < LEAST) return '';
  return onScreen(explainCooling(consequence, car.config.compressor, wordingIn(units)));
}
