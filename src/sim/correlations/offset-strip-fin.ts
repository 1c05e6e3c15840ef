import { requirePositive } from '../errors.ts';
import { type Limit, markOf, type Ranged } from './range-mark.ts';

/** The ratios of an offset strip fin: channel s wide and h high between the plates, strips l long and t thick. */
export interface OffsetStripRatios {
  /** s/h [-] */
  readonly alpha: number;
  /** t/l [-] */
  readonly delta: number;
  /** t/s [-] */
  readonly gamma: number;
}

/** The limits of the 18 surfaces. */
function limitsOf(Re: number, { alpha, delta, gamma }: OffsetStripRatios): readonly Limit[] {
  requirePositive('Reynolds number', Re);
  requirePositive('s/h of an offset strip fin', alpha);
  requirePositive('t/l of an offset strip fin', delta);
  requirePositive('t/s of an offset strip fin', gamma);
  return [
    ['air Reynolds number [-]', Re, 120, 1e4],
    ['channel width over height s/h [-]', alpha, 0.134, 0.997],
    ['fin thickness over strip length t/l [-]', delta, 0.012, 0.048],
    ['fin thickness over channel width t/s [-]', gamma, 0.041, 0.121],
  ];
}

/**
 * Colburn factor of an offset strip fin, after Manglik and Bergles.
 *
 *     j = 0.6522 Re^-0.5403 a^-0.1541 d^0.1499 g^-0.0678 (1 + 5.269e-5 Re^1.340 a^0.504 d^0.456 g^-1.055)^0.1
 *     a = s/h, d = t/l, g = t/s,  Re = G Dh/mu,  Dh = 4 s h l/(2 (s l + h l + t h) + t s)
 *
 * Range: 120 < Re < 1e4, 0.134 < a < 0.997, 0.012 < d < 0.048, 0.041 < g < 0.121 (18 surfaces), air; the data lie
 * within 20 %. It runs on smoothly outside, marked.
 *
 * @param Re - Reynolds number on the hydraulic diameter above [-]
 * @param ratios - s/h, t/l and t/s [-]
 * @returns Nu/(Re Pr^(1/3)), with its mark [-]
 * @throws {OutOfRangeError} when Re or a ratio is not above 0
 *
 * @example
 * colburnOffsetStrip(1000, { alpha: 0.2441524351, delta: 0.032, gamma: 0.06659840437 }).value // 0.014902978
 *
 * [1] R. M. Manglik, A. E. Bergles, Heat transfer and pressure drop correlations for the rectangular offset strip fin
 *     compact heat exchanger, Exp. Therm. Fluid Sci. 10, 1995, 171-180, equation 34.
 */
export function colburnOffsetStrip(Re: number, ratios: OffsetStripRatios): Ranged {
  const range = markOf(limitsOf(Re, ratios));
  const { alpha: a, delta: d, gamma: g } = ratios;
  const laminar = 0.6522 * Re ** -0.5403 * a ** -0.1541 * d ** 0.1499 * g ** -0.0678;
  return { value: laminar * (1 + 5.269e-5 * Re ** 1.34 * a ** 0.504 * d ** 0.456 * g ** -1.055) ** 0.1, range };
}

/**
 * Fanning friction factor of an offset strip fin, after Manglik and Bergles.
 *
 *     f = 9.6243 Re^-0.7422 a^-0.1856 d^0.3053 g^-0.2659 (1 + 7.669e-8 Re^4.429 a^0.920 d^3.767 g^0.236)^0.1
 *
 * Range: as colburnOffsetStrip; the data lie within 20 %, a very low fin (1.9 mm) 34 % off.
 *
 * @param Re - Reynolds number on the hydraulic diameter, as for colburnOffsetStrip [-]
 * @param ratios - s/h, t/l and t/s [-]
 * @returns Fanning friction factor, with its mark [-]
 * @throws {OutOfRangeError} when Re or a ratio is not above 0
 *
 * @example
 * frictionOffsetStrip(1000, { alpha: 0.2441524351, delta: 0.032, gamma: 0.06659840437 }).value // 0.055528183
 *
 * [1] R. M. Manglik, A. E. Bergles, Heat transfer and pressure drop correlations for the rectangular offset strip fin
 *     compact heat exchanger, Exp. Therm. Fluid Sci. 10, 1995, 171-180, equation 35.
 */
export function frictionOffsetStrip(Re: number, ratios: OffsetStripRatios): Ranged {
  const range = markOf(limitsOf(Re, ratios));
  const { alpha: a, delta: d, gamma: g } = ratios;
  const laminar = 9.6243 * Re ** -0.7422 * a ** -0.1856 * d ** 0.3053 * g ** -0.2659;
  return { value: laminar * (1 + 7.669e-8 * Re ** 4.429 * a ** 0.92 * d ** 3.767 * g ** 0.236) ** 0.1, range };
}
