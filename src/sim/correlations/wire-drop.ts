/** ohm m of annealed copper at 20 degC: IEC 60028 (1925), 1/58 ohm mm2/m */
const COPPER = 1e-6 / 58;

/**
 * Resistance of the two wires of a load, there and back.
 *
 *     R = 2 rho L / A,   rho = 1/58 ohm mm2/m
 *
 * Range: copper at 20 degC; 0.39 % more per kelvin, so 12 % more in a bay of 50 degC. Connectors, fuse and relay not
 * counted.
 *
 * @param length - one way [m]
 * @param area - cross-section of one wire [m2], above 0
 * @returns resistance of both wires together [ohm]
 *
 * @example
 * wireResistance(4, 2.5e-6) // 0.055172
 *
 * [1] IEC 60028, International standard of resistance for copper, 1925.
 */
export function wireResistance(length: number, area: number): number {
  return (2 * COPPER * length) / area;
}

/**
 * Voltage that reaches a motor whose current goes with the square of its voltage, as a pump's does: speed with
 * voltage, power with its cube.
 *
 *     V = Vs - R (P/Vr) (V/Vr)^2
 *
 * Range: supply from 0 up.
 *
 * @param supply - voltage of the supply [V]
 * @param rated - rated voltage of the motor [V]
 * @param power - power at rated voltage [W]
 * @param resistance - of both wires [ohm]
 * @returns voltage at the motor [V]
 *
 * @example
 * voltageAtMotor(13.5, 12, 120, 0.05) // 12.9204
 *
 * [1] F. M. White, Fluid Mechanics, 8th ed., 2016, section 11.3 (affinity of pumps), with Ohm's law.
 */
export function voltageAtMotor(supply: number, rated: number, power: number, resistance: number): number {
  const a = (resistance * power) / rated ** 3;
  // The root of a V^2 + V - Vs that has no difference of like numbers in it.
  return (2 * supply) / (1 + Math.sqrt(1 + 4 * a * supply));
}
