import { requirePositive, requireWithin } from '../errors.ts';

/**
 * Contraction of a jet behind a sharp plane edge, free-streamline theory.
 *
 *     1/C = 1 + (2/pi)(1/(s C) - s C) atan(s C),  C(0) = pi/(pi + 2)
 *
 * Range: 0 < s <= 1, exact for a plane jet without viscosity.
 *
 * @param areaRatio - free area behind the edge over the area before it, s [-]
 * @returns area of the jet at its narrowest over the free area [-]
 * @throws {OutOfRangeError} when areaRatio is outside the range above
 *
 * @example
 * contractionOfJet(0.7) // 0.6866559
 *
 * [1] R. von Mises, Berechnung von Ausfluss- und Ueberfallzahlen, Z. VDI 61, 1917, 447-452.
 */
export function contractionOfJet(areaRatio: number): number {
  requirePositive('free area over face area', areaRatio);
  requireWithin('free area over face area', areaRatio, 0, 1);
  let C = Math.PI / (Math.PI + 2);
  for (let round = 0; round < 200; round++) {
    const sC = areaRatio * C;
    const next = 1 / (1 + (2 / Math.PI) * (1 / sC - sC) * Math.atan(sC));
    if (Math.abs(next - C) < 1e-15) return next;
    C = next;
  }
  return C;
}

/**
 * Entrance loss of a core of many passages, after Kays.
 *
 *     Kc = (1 - 2 C + C^2 (2 Kd - 1))/C^2,  C the contraction of the jet
 *
 * Range: 0 < s <= 1; Kd 1 for a flat profile (interrupted fins at any Reynolds number, and wherever an apparent
 * friction factor already holds the growing profile), 6/5 developed laminar plates, 4/3 round tubes. Within 0.012 of
 * the charts.
 *
 * @param areaRatio - free area of the core over its face, s [-]
 * @param momentumFactor - mean of the squared velocity over the square of the mean, Kd [-]
 * @returns loss coefficient on the velocity head in the core [-]
 * @throws {OutOfRangeError} when areaRatio is outside the range above or momentumFactor below 1
 *
 * @example
 * entranceLossOfCore(0.7, 1) // 0.208240281
 *
 * [1] W. M. Kays, Loss coefficients for abrupt changes in flow cross section with low Reynolds number flow in single
 *     and multiple-tube systems, Trans. ASME 72, 1950, 1067-1074.
 */
export function entranceLossOfCore(areaRatio: number, momentumFactor: number): number {
  requireWithin('momentum factor', momentumFactor, 1, Number.POSITIVE_INFINITY);
  const C = contractionOfJet(areaRatio);
  return (1 - 2 * C + C * C * (2 * momentumFactor - 1)) / (C * C);
}

/**
 * Exit loss of a core of many passages, after Kays.
 *
 *     Ke = 1 - 2 Kd s + s^2
 *
 * Range: 0 < s <= 1, Kd as entranceLossOfCore. It turns negative for developed laminar flow and a large free area: the
 * profile gives up momentum as it flattens out.
 *
 * @param areaRatio - free area of the core over its face, s [-]
 * @param momentumFactor - mean of the squared velocity over the square of the mean, Kd [-]
 * @returns loss coefficient on the velocity head in the core [-]
 * @throws {OutOfRangeError} when areaRatio is outside the range above or momentumFactor below 1
 *
 * @example
 * exitLossOfCore(0.7, 1) // 0.09
 *
 * [1] W. M. Kays, Loss coefficients for abrupt changes in flow cross section with low Reynolds number flow in single
 *     and multiple-tube systems, Trans. ASME 72, 1950, 1067-1074.
 */
export function exitLossOfCore(areaRatio: number, momentumFactor: number): number {
  requirePositive('free area over face area', areaRatio);
  requireWithin('free area over face area', areaRatio, 0, 1);
  requireWithin('momentum factor', momentumFactor, 1, Number.POSITIVE_INFINITY);
  return 1 - 2 * momentumFactor * areaRatio + areaRatio ** 2;
}

/** What the pressure drop of a core follows from. */
export interface CorePassage {
  /** mass flow over free area, kg/(m2 s) */
  readonly massVelocity: number;
  /** kg/m3 */
  readonly densityIn: number;
  readonly densityOut: number;
  /** free area over face area [-] */
  readonly areaRatio: number;
  /** Fanning [-] */
  readonly friction: number;
  /** wetted area over free area, 4 L/Dh [-] */
  readonly wettedOverFree: number;
  readonly entranceLoss: number;
  readonly exitLoss: number;
}

/** Pa; the acceleration is negative where the gas is cooled, the exit where it regains pressure. */
export interface CorePressureDrop {
  readonly entrance: number;
  readonly acceleration: number;
  readonly friction: number;
  readonly exit: number;
  readonly total: number;
}

/**
 * Pressure drop of a gas through a core, the core equation of Kays and London.
 *
 *     dp = G^2/(2 r1) [ (1 - s^2 + Kc) + 2 (r1/r2 - 1) + f (A/Ac) r1/rm - (1 - s^2 - Ke) r1/r2 ]
 *     1/rm = (1/r1 + 1/r2)/2
 *
 * Range: 0 < s <= 1, drop small against the pressure (both densities are given), f a mean over the length.
 *
 * @param passage - flow, densities, areas, friction and the two losses [SI]
 * @returns the four parts and their sum [Pa]
 * @throws {OutOfRangeError} when a density is not above 0 or areaRatio outside the range above
 *
 * @example
 * corePressureDrop({
 *   massVelocity: 26.1752370506091, densityIn: 7.02563396196542, densityOut: 4.81034455120023, areaRatio: 0.445,
 *   friction: 0.0375, wettedOverFree: 1643.865168539326, entranceLoss: 0.48, exitLoss: 0.24
 * }).total // 3765.34998
 *
 * [1] W. M. Kays, A. L. London, Compact Heat Exchangers, 3rd ed., McGraw-Hill, 1984, equation 2-26.
 */
export function corePressureDrop(passage: CorePassage): CorePressureDrop {
  requirePositive('density before a core', passage.densityIn);
  requirePositive('density after a core', passage.densityOut);
  requirePositive('free area over face area', passage.areaRatio);
  requireWithin('free area over face area', passage.areaRatio, 0, 1);
  const head = passage.massVelocity ** 2 / (2 * passage.densityIn);
  const expansion = passage.densityIn / passage.densityOut;
  const change = 1 - passage.areaRatio ** 2;
  const entrance = head * (change + passage.entranceLoss);
  const acceleration = head * 2 * (expansion - 1);
  const friction = head * passage.friction * passage.wettedOverFree * (0.5 * (1 + expansion));
  const exit = -head * (change - passage.exitLoss) * expansion;
  return { entrance, acceleration, friction, exit, total: entrance + acceleration + friction + exit };
}
