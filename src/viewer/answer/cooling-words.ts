import { compareCooling, explainCooling, type PullSummary } from '../../sim/index.ts';
import { fixed, NO_BREAK_SPACE, wordingIn } from '../format.ts';
import type { Car, CarRun } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';

/** A change of the charge smaller than this is none to speak of [K]. */
const LEAST = 0.05;
/** Less water than this in a pull is not worth a word [kg]. */
const LEAST_WATER = 0.0005;

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
  return explainCooling(consequence, car.config.compressor, wordingIn(units));
}

/** "wrings 89 g of water out of the air in pull 1": the first pull in which water condenses; '' where none does. */
export function describeWater(pulls: readonly PullSummary[]): string {
  const wet = pulls.find(({ condensate }) => condensate >= LEAST_WATER);
  if (wet === undefined) return '';
  return `wrings ${fixed(1000 * wet.condensate, 0)}${NO_BREAK_SPACE}g of water out of the air in pull ${wet.pull}`;
}
