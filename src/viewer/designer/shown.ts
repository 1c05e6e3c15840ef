import { capitalised, difference, fixed, joined, NO_BREAK_SPACE, scaleOf, signed } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';

const withUnit = (value: string, unit: string): string => `${value}${NO_BREAK_SPACE}${unit}`;

/** Figures without a row of noughts behind them; never as a power of ten. */
const brief = (value: number, figures: number): string => String(Number(value.toPrecision(figures)));

/** @param metres - a measure [m]: "1.81 mm", "0.0714 in" */
export function length(metres: number, units: UnitChoice): string {
  const { fromSi, unit } = scaleOf('mm', units);
  return withUnit(brief(fromSi(metres), 3), unit);
}

/** @param pascal - a drop [Pa], two digits of a kPa, three of a psi */
export function pressure(pascal: number, units: UnitChoice): string {
  const { fromSi, unit, digits } = scaleOf('kPa', units);
  return withUnit(fixed(fromSi(pascal), digits + 1), unit);
}

/** @param squareMetres - an area [m2]: in cm2 up to 0.1 m2 */
export const area = (squareMetres: number): string =>
  squareMetres < 0.1 ? withUnit(brief(1e4 * squareMetres, 3), 'cm²') : withUnit(brief(squareMetres, 3), 'm²');

/** @param cubicMetres - a volume [m3] */
export const volume = (cubicMetres: number): string => withUnit(fixed(1e3 * cubicMetres, 2), 'L');

/** @param kilograms - a mass [kg] */
export const mass = (kilograms: number): string => withUnit(fixed(kilograms, 2), 'kg');

/** @param conductance - [W/K] */
export const conductance = (conductance: number): string => withUnit(fixed(conductance, 0), 'W/K');

/** @param ratio - changed over as it is: "×1.048" */
export const times = (ratio: number): string => `×${fixed(ratio, 3)}`;

/** @param share - a change as a share: "+0.07 %" */
export const percent = (share: number): string => signed(withUnit(fixed(100 * share, 2), '%'));

/** @param kelvin - a change of temperature [K] with its sign */
export const change = (kelvin: number, units: UnitChoice): string => signed(joined(difference(kelvin, units, 2)));

/** Fins per inch of a pitch: "14", or "13.7" where it is no whole number. */
export const finsPerInch = (pitch: number): string => brief(0.0254 / pitch, 3);

/** A doubt of the library as the page writes it. */
export const doubt = (mark: string): string => capitalised(mark.replaceAll('+-', '±'));
