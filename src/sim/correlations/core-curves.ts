import { type AirFilm, type AirFlow, airFilm } from './core-air-side.ts';
import {
  type CoolantFilm,
  type CoolantFlow,
  type CoolantPressureDrop,
  coolantFilm,
  coolantPressureDrop,
} from './core-coolant-side.ts';
import type { CoreGeometry } from './core-geometry.ts';
import { entranceLossOfCore, exitLossOfCore } from './core-losses.ts';

/** One flow of charge air through a core; SI. */
export interface AirPoint {
  readonly film: AirFilm;
  /** W/K */
  readonly conductance: number;
  /** Pa kg/m3 at constant density: entrance, friction and exit */
  readonly dropTimesDensity: number;
}

/**
 * Conductance of the air side of a core and its drop times density, which hangs on flow alone.
 *
 *     drop rho = G^2/2 (1 - s^2 + Kc + f A/Ac - (1 - s^2 - Ke)),  rho the same before and behind
 *
 * Range: as airFilm and airPressureDrop, without the change of density in the core, which accelerationOf adds.
 *
 * @param geometry - of the core [SI]
 * @param flow - mass flow and properties of the air [SI]
 * @returns film, conductance and drop times density [SI]
 * @throws {OutOfRangeError} when the flow or a property is not above 0
 *
 * @example
 * see tests/sim/correlations/core-curves.test.ts
 *
 * [1] W. M. Kays, A. L. London, Compact Heat Exchangers, 3rd ed., McGraw-Hill, 1984, equation 2-26.
 */
export function airPoint(geometry: CoreGeometry, flow: AirFlow): AirPoint {
  const film = airFilm(geometry, flow);
  const { areaRatio, area, freeArea } = geometry.air;
  const ends = entranceLossOfCore(areaRatio, 1) + exitLossOfCore(areaRatio, 1);
  const dropTimesDensity = (film.massVelocity ** 2 / 2) * (ends + (film.friction * area) / freeArea);
  return { film, conductance: film.conductance, dropTimesDensity };
}

/**
 * What the change of density adds to the drop of a core, over flow^2 (T_out - T_in)/T_mean.
 *
 *     a = (1 - (2 (1 - s^2) + Kc - Ke)/4)/Ac^2
 *
 * Acceleration, and the dynamic heads at both ends on their own densities. With it, and the density of the mean
 * temperature, the core equation is met to rounding as long as the pressure stays.
 *
 * Range: 0 < s < 1, pressure drop small against the pressure.
 *
 * @param geometry - of the core [SI]
 * @returns acceleration term of drop times density [1/m4]
 *
 * @example
 * see tests/sim/correlations/core-curves.test.ts
 *
 * [1] W. M. Kays, A. L. London, Compact Heat Exchangers, 3rd ed., McGraw-Hill, 1984, equation 2-26.
 */
export function accelerationOf(geometry: CoreGeometry): number {
  const { areaRatio, freeArea } = geometry.air;
  const change = 1 - areaRatio ** 2;
  const heads = 2 * change + entranceLossOfCore(areaRatio, 1) - exitLossOfCore(areaRatio, 1);
  return (1 - heads / 4) / freeArea ** 2;
}

/** One flow of coolant through a core; SI. */
export interface CoolantPoint {
  readonly film: CoolantFilm;
  /** film and wall of the tubes in series, W/K */
  readonly conductance: number;
  readonly drop: CoolantPressureDrop;
}

/**
 * Conductance from the outside of the tubes to the coolant, and the three drops of the coolant.
 *
 *     1/conductance = 1/(film h A) + wall resistance
 *
 * Range: as coolantFilm and coolantPressureDrop. The metal of the core is thought at the outside of the tubes.
 *
 * @param geometry - of the core [SI]
 * @param flow - volume flow and properties of the coolant [SI]
 * @param arrangement - ports at the same end of the stack (U) or at opposite ends (Z) [-]
 * @returns film, conductance and drops [SI]
 * @throws {OutOfRangeError} when the flow or a property is not above 0, or the headers allow no steady split
 *
 * @example
 * see tests/sim/correlations/core-curves.test.ts
 *
 * [1] W. M. Kays, A. L. London, Compact Heat Exchangers, 3rd ed., McGraw-Hill, 1984, chapter 2.
 */
export function coolantPoint(geometry: CoreGeometry, flow: CoolantFlow, arrangement: 'U' | 'Z'): CoolantPoint {
  const film = coolantFilm(geometry, flow);
  const conductance = 1 / (1 / film.conductance + geometry.metal.wallResistance);
  return { film, conductance, drop: coolantPressureDrop(geometry, flow, film, arrangement) };
}

/** Reynolds number at which coolant counts as standing: the laminar laws have come to their constants. */
const STANDING = 0.1;

/**
 * Conductance that is left when the coolant stands: the constant of developed laminar flow in the plain tube.
 *
 * Range: any core. An own choice where free convection would help a little; turbulators are taken to do nothing then.
 *
 * @param geometry - of the core [SI]
 * @param flow - properties of the coolant; its volume flow is not read [SI]
 * @returns conductance from the outside of the tubes to standing coolant [W/K]
 * @throws {OutOfRangeError} when a property is not above 0
 *
 * @example
 * see tests/sim/correlations/core-curves.test.ts
 *
 * [1] VDI Heat Atlas, 2nd ed., Springer, 2010, section G2: 7.541 between plates.
 */
export function standingConductance(geometry: CoreGeometry, flow: CoolantFlow): number {
  const { coolant, shape } = geometry;
  const plain = shape.tubes.kind === 'turbulated' ? ({ kind: 'plain' } as const) : shape.tubes;
  const volumeFlow = (STANDING * flow.viscosity * coolant.flowArea) / (flow.density * coolant.hydraulicDiameter);
  const film = coolantFilm({ ...geometry, shape: { ...shape, tubes: plain } }, { ...flow, volumeFlow });
  return 1 / (1 / film.conductance + geometry.metal.wallResistance);
}
