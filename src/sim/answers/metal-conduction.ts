import { coreGeometry } from '../correlations/core-geometry.ts';
import type { CoreGeometryConfig } from '../scenario/config/exchangers.ts';

/**
 * How much metal conduction along a core could take from its heat, were it not left out.
 *
 *     lambda = k A/(L C) = k V/(L^2 C),  A the metal across the way, V all metal
 *
 * In a long balanced counter-flow core the effectiveness falls by lambda/(1 + 2 lambda) at most, in cross-flow by less
 * (W. M. Kays, A. L. London, Compact Heat Exchangers, 3rd ed., 1984, chapter 3). Louvres and strips cut the way along
 * the air, so this is an upper bound.
 *
 * @param geometry - of the core
 * @param rate - smaller heat capacity rate [W/K]
 * @returns that fall, by the larger of lambda along the air and along the coolant [-]
 */
export function metalConductionShare({ shape }: CoreGeometryConfig, rate: number): number {
  const { metal } = coreGeometry(shape);
  const { conductivity, density } = shape.alloy;
  const volume = (metal.tubeMass + metal.finMass) / density;
  const shortest = Math.min(shape.depth, shape.length);
  const lambda = (conductivity * volume) / (shortest ** 2 * rate);
  return lambda / (1 + 2 * lambda);
}
