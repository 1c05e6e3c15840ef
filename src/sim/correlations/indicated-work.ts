import { requirePositive, requireWithin } from '../errors.ts';

/**
 * Work of a displacement compressor with a built-in volume ratio over the enthalpy of the air it takes in.
 *
 *     w/(cp T1) = (g - 1)/g [ (v^(g-1) - 1)/(g - 1) + PR/v - 1 ]
 *
 * Area of the indicator diagram over p1 V: closed compression to V/v, then delivery against p2. PR - 1 times (g - 1)/g
 * for external compression (v = 1), the isentropic work where v^g = PR, and above nothing at PR 1 for v > 1: such a
 * compressor works against its own discharge with the bypass open.
 *
 * Range: v >= 1; perfect gas, no leak inside, full ports.
 *
 * @param volumeRatio - built-in volume ratio v [-]
 * @param pressureRatio - discharge over inlet pressure [-]
 * @param heatCapacityRatio - g, of the air [-]
 * @returns work over cp T1 [-]
 * @throws {OutOfRangeError} when volumeRatio is below 1, pressureRatio is not above 0 or g not above 1
 *
 * @example
 * indicatedWork(1, 1.7, 1.4) // 0.2
 *
 * [1] Own derivation from the indicator diagram, 2026; textbooks give the same area, from memory.
 */
export function indicatedWork(volumeRatio: number, pressureRatio: number, heatCapacityRatio: number): number {
  requireWithin('built-in volume ratio', volumeRatio, 1, Number.POSITIVE_INFINITY);
  requirePositive('pressure ratio', pressureRatio);
  requirePositive('ratio of heat capacities less 1', heatCapacityRatio - 1);
  const g = heatCapacityRatio;
  const closed = (volumeRatio ** (g - 1) - 1) / (g - 1);
  return ((g - 1) / g) * (closed + pressureRatio / volumeRatio - 1);
}
