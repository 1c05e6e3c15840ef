import { LEWIS_NUMBER } from '../fluids/condensation.ts';
import {
  dewPoint,
  evaporationHeat,
  humidityRatio,
  saturationPressure,
  saturationPressureSlope,
} from '../fluids/moist-air.ts';
import type { Vapour } from '../kernels/detailed-cell-sweep.ts';

/**
 * Water vapour of the charge in the core, at the core's own pressure. Air under boost has a far higher dew point than
 * the air outside.
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
