import { requirePositive, requireWithin } from '../errors.ts';

/** One fin, heated at both ends by the plates it stands between. */
export interface StraightFin {
  /** film coefficient on both faces, W/(m2 K) */
  readonly heatTransferCoefficient: number;
  /** W/(m K) */
  readonly conductivity: number;
  /** m */
  readonly thickness: number;
  /** root to the middle between the plates, m */
  readonly halfLength: number;
  /** along the flow between two cut edges, m: strip length, or the whole depth */
  readonly stripLength: number;
}

/**
 * Efficiency of a straight fin of constant section between two plates; its middle passes no heat.
 *
 *     m = ( 2 h/(k t) (1 + t/l) )^(1/2),  eta = tanh(m b)/(m b)
 *
 * Range: one-dimensional conduction, so h t/k well below 0.1, as in every metal fin here; t/l is the share that the cut
 * edges of the strips add to the wetted faces.
 *
 * @param fin - film coefficient, conductivity and sizes of the fin [SI]
 * @returns efficiency, 0 to 1 [-]
 * @throws {OutOfRangeError} when a size or the conductivity is not above 0, or the film coefficient is below 0
 *
 * @example
 * finEfficiency({
 *   heatTransferCoefficient: 120, conductivity: 180, thickness: 0.0001, halfLength: 0.0039, stripLength: 1e300
 * }) // 0.93746776
 *
 * [1] D. R. Harper, W. B. Brown, NACA Report 158, 1922; K. A. Gardner, Trans. ASME 67, 1945, 621-631.
 * [2] W. M. Kays, A. L. London, Compact Heat Exchangers, 3rd ed., McGraw-Hill, 1984, chapter 2.
 */
export function finEfficiency(fin: StraightFin): number {
  requireWithin('film coefficient', fin.heatTransferCoefficient, 0, Number.POSITIVE_INFINITY);
  for (const size of ['conductivity', 'thickness', 'halfLength', 'stripLength'] as const)
    requirePositive(size, fin[size]);
  const edges = 1 + fin.thickness / fin.stripLength;
  const m = Math.sqrt(((2 * fin.heatTransferCoefficient) / (fin.conductivity * fin.thickness)) * edges);
  const x = m * fin.halfLength;
  return x === 0 ? 1 : Math.tanh(x) / x;
}
