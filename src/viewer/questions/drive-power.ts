import { fixed, joined, scaleOf } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';

/** Drive power to the hundredth, as at the terminal: what parts move in it is small beside the whole. */
export function drivePower(watts: number, units: UnitChoice): string {
  const { fromSi, unit } = scaleOf('kW', units);
  return joined({ value: fixed(fromSi(watts), 2), unit });
}
