import { AIR_GAS_CONSTANT } from '../fluids/moist-air.ts';
import type { Config } from '../scenario/config.ts';

/**
 * Air that a four-stroke engine takes in.
 *
 *     m = eta_v V N/120 p/(R T),   eta_v = eta_v0 (T/T_ref)^b
 *
 * The exponent b is between 0, the plain density rule, and about 0.5; see the parameter's source.
 */
export class Swallowing {
  private readonly engine: Config['engine'];
  private readonly factor: number;

  constructor(engine: Config['engine']) {
    this.engine = engine;
    this.factor = (engine.volumetricEfficiency * engine.displacement) / 120 / AIR_GAS_CONSTANT;
  }

  /**
   * Air into the engine.
   *
   * @param speed - rpm
   * @param pressure - of the manifold [Pa]
   * @param temperature - of the charge [K]
   * @returns kg/s
   */
  flowAt(speed: number, pressure: number, temperature: number): number {
    const { referenceTemperature, temperatureExponent } = this.engine;
    const efficiency = temperatureExponent === 0 ? 1 : (temperature / referenceTemperature) ** temperatureExponent;
    return (this.factor * efficiency * speed * pressure) / temperature;
  }
}
