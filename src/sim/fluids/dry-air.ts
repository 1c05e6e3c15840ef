/**
 * Dry air as an ideal gas whose properties follow the temperature: what a core is rated with. The running model keeps
 * the constants of moist-air.ts. T in K, SI out. A real gas has up to 0.30 % more heat capacity at 1 atm, 0.75 % at 2.5
 * bar and 230 K; its density is off the ideal one by 0.34 % at most.
 *
 * [1] E. W. Lemmon, R. T Jacobsen, S. G. Penoncello, D. G. Friend, Thermodynamic properties of air, J. Phys. Chem. Ref.
 *     Data 29(3), 2000, 331-385, ideal-gas part.
 * [2] U.S. Standard Atmosphere, 1976, equations 51 (viscosity, as ISO 2533:1975) and 53 (thermal conductivity; ISO
 *     2533:1975, formula 24, has 2.648151e-3).
 */

/** J/(kg K), gas constant and molar mass of [1] */
const GAS_CONSTANT = 8.31451 / 0.02896546;
/** K, reducing temperature of [1] */
const REDUCING_TEMPERATURE = 132.6312;

/**
 * Heat capacity of dry air at constant pressure, ideal gas [1].
 *
 * Range: 60 to 2000 K (not checked here).
 *
 * @param temperature - K
 * @returns J/(kg K)
 *
 * @example
 * airHeatCapacity(298.15) // 1004.687
 */
export function airHeatCapacity(temperature: number): number {
  const t = REDUCING_TEMPERATURE / temperature;
  const e = Math.exp(87.31279 * t);
  const slow = 6 * 0.210274769e-4 * t ** -2 + (2 * 0.158860716e-3) / t - 12 * 0.6057194e-7 * t ** -3;
  const vibration =
    0.791309509 * einstein(25.36365 * t) +
    0.212236768 * einstein(16.90741 * t) +
    (0.197938904 * (87.31279 * t) ** 2 * (2 / 3) * e) / (2 / 3 + e) ** 2;
  return GAS_CONSTANT * (1 + 2.490888032 + slow + 0.75 * 0.19536342e-3 * t ** 1.5 + vibration);
}

function einstein(x: number): number {
  const e = Math.exp(x);
  return (x * x * e) / (e - 1) ** 2;
}

/**
 * Dynamic viscosity of air, Sutherland's law [2].
 *
 *     mu = 1.458e-6 T^1.5/(T + 110.4)
 *
 * Range: 100 to 1900 K at low pressure (not checked here); against Lemmon and Jacobsen (2004) 0.4 % low at 300 K, 1.7 %
 * at 550 K. Water vapour lowers it by some 2 % at 0.03 kg/kg, which is left out.
 *
 * @param temperature - K
 * @returns Pa s
 *
 * @example
 * airViscosity(300) // 0.00001846
 */
export function airViscosity(temperature: number): number {
  return (1.458e-6 * temperature ** 1.5) / (temperature + 110.4);
}

/**
 * Thermal conductivity of air [2].
 *
 *     lambda = 2.64638e-3 T^1.5/(T + 245.4 x 10^(-12/T))
 *
 * Range: 180 to 1000 K at low pressure (not checked here); within 1.7 % of Lemmon and Jacobsen (2004) from 230 to
 * 550 K.
 *
 * @param temperature - K
 * @returns W/(m K)
 *
 * @example
 * airConductivity(300) // 0.02625
 */
export function airConductivity(temperature: number): number {
  return (2.64638e-3 * temperature ** 1.5) / (temperature + 245.4 * 10 ** (-12 / temperature));
}
