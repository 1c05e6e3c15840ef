import { difference, joined, temperature } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';

/** A temperature with its unit, as a sentence says it. */
export const degrees = (kelvin: number, units: UnitChoice): string => joined(temperature(kelvin, units));

/** A temperature difference with its unit, as a sentence says it. */
export const kelvins = (kelvin: number, units: UnitChoice): string => joined(difference(kelvin, units));
