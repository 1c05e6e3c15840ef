import {
  dewPoint,
  evaporationHeat,
  humidityRatio,
  saturationPressure,
  saturationPressureSlope,
} from '../fluids/moist-air.ts';
import type { Vapour } from '../kernels/detailed-cell-sweep.ts';

/**
 * Lewis number of water vapour in air, thermal over mass diffusivity, 0.87 to 0.92 from 0 to 60 degC: ASHRAE Handbook:
 * Fundamentals, 2017, chapter 6
 */
const LEWIS_NUMBER = 0.9;

/**
 * Water vapour of the charge in the core, at the core's own pressure. Air under boost has a far higher dew point than
 * the air outside. What a cell of cold metal takes out of it goes by the analogy of heat and mass transfer:
 *
 *     w_out = w_s + (w_in - w_s) exp(-N/Le^(2/3)) where w_in > w_s(metal, p), else w_out = w_in
 *     latent heat = dry air flow (w_in - w_out) (2.501e6 - 2370 t), t of the metal in degC
 *
 * Range: metal from 0 to 60 degC, vapour pressure well below p; below 0 degC it is counted as water, not frost (13 %
 * more heat). The film of water resists no heat and the drops leave with the air, so nothing evaporates again. The
 * transfer units N are those of the dry surface, fins with their efficiency.
 *
 * ASHRAE Handbook: Fundamentals, 2017, chapter 6, mass transfer (analogy of Chilton and Colburn, 1934).
 */
export class CoreVapour implements Vapour {
  content = 0;
  airFlow = 0;
  private pressure = 1e5;

  /**
   * Takes the state of the air.
   *
   * @param content - humidity ratio entering [kg/kg]
   * @param airFlow - through the core [kg/s]
   * @param pressure - mean of the core's inlet and outlet [Pa]
   */
  set(content: number, airFlow: number, pressure: number): void {
    this.content = content;
    this.airFlow = airFlow;
    this.pressure = pressure;
  }

  /** Film coefficients go as Le^(2/3): vapour has N/Le^(2/3) transfer units. */
  readonly shedShareOf = (transferUnits: number): number => -Math.expm1(-transferUnits / Math.cbrt(LEWIS_NUMBER) ** 2);

  readonly saturatedAt = (temperature: number): number => humidityRatio(temperature, this.pressure, 1);

  /** w_s = 0.622 e/(p - e), so dw_s/dT = w_s p/(p - e) (de/dT)/e */
  readonly slopeAt = (temperature: number, saturated: number): number => {
    const e = saturationPressure(temperature);
    return ((saturated * this.pressure) / (this.pressure - e)) * (saturationPressureSlope(temperature) / e);
  };

  readonly dewPointOf = (content: number): number => (content > 0 ? dewPoint(content, this.pressure) : 0);

  readonly heatAt = evaporationHeat;
}
