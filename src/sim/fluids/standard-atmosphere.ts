import { requireWithin } from '../errors.ts';

/** Still air at one height: K and Pa. */
export interface Atmosphere {
  readonly temperature: number;
  readonly pressure: number;
}

/** standard gravity, m/s2: 3rd General Conference on Weights and Measures, 1901, and ISO 2533:1975 */
export const GRAVITY = 9.80665;
/** ISO 2533: K, Pa, K/m, J/(kg K) and the nominal radius of the earth in m */
const SEA_LEVEL_TEMPERATURE = 288.15;
const SEA_LEVEL_PRESSURE = 101325;
const LAPSE_RATE = 0.0065;
const GAS_CONSTANT = 287.05287;
const EARTH_RADIUS = 6356766;

/**
 * Temperature and pressure of the standard atmosphere at a height above the sea.
 *
 *     H = r z/(r + z),  T = 288.15 - 0.0065 H,  p = 101325 (T/288.15)^(g/(0.0065 R)),  exponent 5.255880
 *
 * Range: -2000 to 11000 m, the lowest layer. A yearly mean of middle latitudes: the weather moves the pressure by some
 * 3 % either way, and the air on a hot day is far warmer, so a measured temperature goes before this one.
 *
 * @param altitude - height above the sea, geometric, m
 * @returns temperature in K and pressure in Pa
 * @throws {OutOfRangeError} when altitude is outside the range above
 *
 * @example
 * standardAtmosphere(1500) // { temperature: 278.402, pressure: 84559.7 }
 *
 * [1] ISO 2533:1975, Standard Atmosphere, sections 2.1 to 2.3.
 */
export function standardAtmosphere(altitude: number): Atmosphere {
  requireWithin('altitude in m', altitude, -2000, 11000);
  const geopotential = (EARTH_RADIUS * altitude) / (EARTH_RADIUS + altitude);
  const temperature = SEA_LEVEL_TEMPERATURE - LAPSE_RATE * geopotential;
  const exponent = GRAVITY / (LAPSE_RATE * GAS_CONSTANT);
  return { temperature, pressure: SEA_LEVEL_PRESSURE * (temperature / SEA_LEVEL_TEMPERATURE) ** exponent };
}
