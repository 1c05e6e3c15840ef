import { standardAtmosphere } from '../fluids/standard-atmosphere.ts';
import { toSi } from '../units.ts';
import type { Values } from './shape.ts';

/** As typed, or that of the standard atmosphere at the typed altitude [Pa]. */
export function stationPressure({ ambient: { pressure, altitude } }: Values): number {
  if (pressure !== undefined) return toSi(pressure, 'kPa abs');
  return Number.isNaN(altitude) ? Number.NaN : standardAtmosphere(altitude).pressure;
}
