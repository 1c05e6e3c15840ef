import { capitalised, difference, fixed, joined, signed, threeFigures } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';

/** @param squareMetres - an area [m2]: in cm2 up to 0.1 m2 */
export const area = (squareMetres: number): string =>
  squareMetres < 0.1
    ? joined({ value: threeFigures(1e4 * squareMetres), unit: 'cm²' })
    : joined({ value: threeFigures(squareMetres), unit: 'm²' });

/** @param cubicMetres - a volume [m3] */
export const volume = (cubicMetres: number): string => joined({ value: fixed(1e3 * cubicMetres, 2), unit: 'L' });

/** @param kilograms - a mass [kg] */
export const mass = (kilograms: number): string => joined({ value: fixed(kilograms, 2), unit: 'kg' });

/** @param conductance - [W/K] */
export const conductance = (conductance: number): string => joined({ value: fixed(conductance, 0), unit: 'W/K' });

/** @param ratio - changed over as it is: "×1.048" */
export const times = (ratio: number): string => `×${fixed(ratio, 3)}`;

/** @param share - a change as a share: "+0.07 %" */
export const percent = (share: number): string => signed(joined({ value: fixed(100 * share, 2), unit: '%' }));

/** @param kelvin - a change of temperature [K] with its sign */
export const change = (kelvin: number, units: UnitChoice): string => signed(joined(difference(kelvin, units, 2)));

/** Fins per inch of a pitch: "14", or "13.7" where it is no whole number. */
export const finsPerInch = (pitch: number): string => threeFigures(0.0254 / pitch);

/** A doubt of the library as the page writes it. */
export const doubt = (mark: string): string => capitalised(mark.replaceAll('+-', '±'));
