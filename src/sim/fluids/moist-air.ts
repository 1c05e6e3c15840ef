/**
 * Air as the model uses it: a perfect gas of constant heat capacity, dry-air values throughout, and the water vapour
 * that it carries. T in K, p absolute in Pa, humidity ratio in kg of vapour per kg of dry air.
 */

/**
 * J/(kg K), dry air near 50 degC. It is 1004.7 at 25 degC and 1016 at 150 degC: Lemmon et al., J. Phys. Chem. Ref. Data
 * 29(3), 2000.
 */
export const AIR_HEAT_CAPACITY = 1006;
/** ratio of specific heats of dry air: 1.400 at 25 degC, 1.394 at 150 degC (as above) */
export const AIR_ISENTROPIC_EXPONENT = 1.4;
/** J/(kg K), dry air: 287.05287 in ISO 2533:1975 */
export const AIR_GAS_CONSTANT = 287.05;

/** molar mass of water over that of dry air, 0.621945 in the ASHRAE Handbook (2017) */
const VAPOUR_RATIO = 0.622;
/** Magnus form of Alduchov and Eskridge 1996: Pa, -, K */
const AT_ZERO = 610.94;
const SLOPE = 17.625;
const OFFSET = 243.04;

/**
 * Saturation pressure of water vapour over liquid water.
 *
 *     e = 610.94 exp( 17.625 t / (t + 243.04) ), t in degC
 *
 * Range: -40 to 50 degC within 0.4 % (not checked here); 1.3 % high at 80 degC.
 *
 * @param temperature - K
 * @returns saturation pressure in Pa
 *
 * @example
 * saturationPressure(273.15) // 610.94
 *
 * [1] O. A. Alduchov, R. E. Eskridge, Improved Magnus form approximation of saturation vapor pressure,
 *     J. Appl. Meteor. 35, 1996, 601-609, equation 21.
 */
export function saturationPressure(temperature: number): number {
  const t = temperature - 273.15;
  return AT_ZERO * Math.exp((SLOPE * t) / (t + OFFSET));
}

/**
 * Slope of the saturation pressure over temperature, of the same formula.
 *
 *     de/dT = e 17.625 243.04/(t + 243.04)^2
 *
 * The range is that of saturationPressure.
 *
 * @param temperature - K
 * @returns Pa/K
 *
 * @example
 * saturationPressureSlope(293.15) // 144.464
 */
export function saturationPressureSlope(temperature: number): number {
  const t = temperature - 273.15;
  return (saturationPressure(temperature) * SLOPE * OFFSET) / (t + OFFSET) ** 2;
}

/**
 * Humidity ratio of air at a relative humidity.
 *
 *     w = 0.622 e/(p - e), e = relative humidity x saturation pressure
 *
 * Assumes a mixture of perfect gases; meaningful while e is below p (not checked here).
 *
 * @param temperature - K
 * @param pressure - absolute, Pa
 * @param relativeHumidity - 0 to 1
 * @returns kg of vapour per kg of dry air
 *
 * @example
 * humidityRatio(303.15, 101325, 0.6) // 0.01602
 */
export function humidityRatio(temperature: number, pressure: number, relativeHumidity: number): number {
  const e = relativeHumidity * saturationPressure(temperature);
  return (VAPOUR_RATIO * e) / (pressure - e);
}

/**
 * Dew point of air that carries a given humidity ratio, at its own pressure: the inverse of humidityRatio at 100 %.
 *
 *     e = w p/(0.622 + w),  t = 243.04 g/(17.625 - g),  g = ln(e/610.94),  t in degC
 *
 * Compression leaves w alone and raises p, so charge air under boost has a higher dew point than the air outside.
 * The range is that of saturationPressure. Air without vapour answers with the formula's limit, 30.11 K.
 *
 * @param humidityRatio - kg of vapour per kg of dry air
 * @param pressure - absolute, Pa
 * @returns dew point in K
 *
 * @example
 * dewPoint(0.0228, 199000) // 312.1
 */
export function dewPoint(humidityRatio: number, pressure: number): number {
  const e = (humidityRatio * pressure) / (VAPOUR_RATIO + humidityRatio);
  const g = Math.log(e / AT_ZERO);
  return 273.15 + OFFSET / (SLOPE / g - 1);
}

/**
 * Heat of evaporation of water, given off when vapour condenses.
 *
 *     2.501e6 - 2370 t, t in degC
 *
 * Range: 0 to 60 degC within 0.05 % of IAPWS-95.
 *
 * @param temperature - of the liquid, K
 * @returns J/kg
 *
 * @example
 * evaporationHeat(283.15) // 2477300
 */
export function evaporationHeat(temperature: number): number {
  return 2.501e6 - 2370 * (temperature - 273.15);
}
