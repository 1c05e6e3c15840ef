import { requireWithin } from '../errors.ts';
import { evaporationHeat, humidityRatio } from './moist-air.ts';

/** Humid air over one cell of cold metal. */
export interface HumidCell {
  /** kg/s of dry air */
  readonly dryAirFlow: number;
  /** kg of vapour per kg of dry air, entering */
  readonly humidityRatio: number;
  /** K */
  readonly metalTemperature: number;
  /** absolute, Pa */
  readonly pressure: number;
  /** conductance from air to metal over heat capacity rate of the air, of this cell [-] */
  readonly transferUnits: number;
}

/** What one cell takes out of the air. */
export interface Condensation {
  /** kg/kg, leaving */
  readonly humidityRatio: number;
  /** kg/s of water */
  readonly condensate: number;
  /** W into the metal */
  readonly latentHeat: number;
}

/** Lewis number of water vapour in air, thermal over mass diffusivity, 0.87 to 0.92 from 0 to 60 degC, [1] */
export const LEWIS_NUMBER = 0.9;

/**
 * Water that condenses on one cell of metal, by the analogy of heat and mass transfer.
 *
 *     w_out = w_s + (w_in - w_s) exp(-N/Le^(2/3)) where w_in > w_s(metal, p), else w_out = w_in
 *     latent heat = dry air flow (w_in - w_out) (2.501e6 - 2370 t), t of the metal in degC
 *
 * Range: metal from 0 to 60 degC, vapour pressure well below p; below 0 degC it is counted as water, not frost (13 % more
 * heat). The film of water resists no heat and the drops leave with the air, so nothing evaporates again. The transfer
 * units are those of the dry surface, fins with their efficiency.
 *
 * @param cell - air, metal and transfer units of the cell
 * @returns humidity ratio behind the cell, condensate in kg/s, latent heat in W
 * @throws {OutOfRangeError} when the flow, the humidity ratio or the transfer units are below 0
 *
 * @example
 * condensationOn({
 *   dryAirFlow: 0.1, humidityRatio: 0.0160435, metalTemperature: 283.15, pressure: 200000, transferUnits: 1
 * }).condensate // 0.000803
 *
 * [1] ASHRAE Handbook: Fundamentals, 2017, chapter 6, mass transfer (analogy of Chilton and Colburn, 1934).
 */
export function condensationOn(cell: HumidCell): Condensation {
  requireWithin('dry air flow in kg/s', cell.dryAirFlow, 0, Number.POSITIVE_INFINITY);
  requireWithin('humidity ratio', cell.humidityRatio, 0, Number.POSITIVE_INFINITY);
  requireWithin('transfer units', cell.transferUnits, 0, Number.POSITIVE_INFINITY);
  const saturated = humidityRatio(cell.metalTemperature, cell.pressure, 1);
  const excess = cell.humidityRatio - saturated;
  if (!(excess > 0)) return { humidityRatio: cell.humidityRatio, condensate: 0, latentHeat: 0 };
  // Film coefficients go as Le^(2/3): h = h_m rho cp Le^(2/3), so vapour has N/Le^(2/3) transfer units.
  const shed = -excess * Math.expm1(-cell.transferUnits / Math.cbrt(LEWIS_NUMBER) ** 2);
  const condensate = cell.dryAirFlow * shed;
  return {
    humidityRatio: cell.humidityRatio - shed,
    condensate,
    latentHeat: condensate * evaporationHeat(cell.metalTemperature),
  };
}
