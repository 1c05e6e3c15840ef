import { decimals, fromSi } from '../sim/index.ts';

/** A temperature in K as tables show it: degC to a tenth, a dash where there is none. */
export function celsius(kelvin: number | undefined): string {
  return kelvin === undefined || Number.isNaN(kelvin) ? '-' : decimals(fromSi(kelvin, 'degC'), 1);
}
