import { fixed, type Shown, scaleOf } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';

/** Drive power to the hundredth, as at the terminal: what parts move in it is small beside the whole. */
export function drivePower(watts: number, units: UnitChoice): Shown {
  const { fromSi, unit } = scaleOf('kW', units);
  return { value: fixed(fromSi(watts), 2), unit };
}

/** A figure's name with its unit, so that the cells of its row or column are bare numbers. */
export const named = (name: string, unit: string): string => (unit === '' ? name : `${name}, ${unit}`);
