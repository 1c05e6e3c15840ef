import type { Config } from '../scenario/config.ts';

/**
 * Time constant of the charge temperature sensor, which follows tau dTi/dt = f (T - Ti) + (1 - f)(T_housing - Ti).
 *
 *     tau = tau_moving (atFlow/m)^0.5, kept between the two typed constants
 *
 * The exponent is that of a small body in cross-flow at low Reynolds number; common practice, no published source.
 *
 * @param sensor - constants moving and still, and the flow of the first
 * @param airFlow - kg/s past the sensor; 0 = still air
 * @returns s
 */
export function sensorTimeConstant(sensor: Config['sensor'], airFlow: number): number {
  const { timeConstantMoving, timeConstantStill, atFlow } = sensor;
  if (airFlow <= 0) return timeConstantStill;
  const low = Math.min(timeConstantMoving, timeConstantStill);
  const high = Math.max(timeConstantMoving, timeConstantStill);
  return Math.min(high, Math.max(low, timeConstantMoving * Math.sqrt(atFlow / airFlow)));
}
