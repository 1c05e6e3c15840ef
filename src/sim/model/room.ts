import { AIR_GAS_CONSTANT, AIR_HEAT_CAPACITY } from '../fluids/moist-air.ts';
import type { Config } from '../scenario/config.ts';

/**
 * A closed room round a car on rollers, one well-mixed volume that warms through a session.
 *
 *     rho V cp dT/dt = q m - rho E cp (T - T_outside),   rho = p/(R T)
 *
 * q heat per kg of engine air, E extraction. In a stage the equation is linear in T and needs no guess but the air
 * flow.
 */
export class Room {
  private readonly config: NonNullable<Config['room']>;

  constructor(config: NonNullable<Config['room']>) {
    this.config = config;
  }

  /**
   * @param base - right-hand side of the stage [K]
   * @param s - 1/(gamma h) of the stage [1/s]
   * @param outside - air that is drawn in [K]
   * @param pressure - Pa
   * @param airFlow - into the engine [kg/s]
   * @returns temperature of the room at the stage [K]
   */
  temperatureAt(base: number, s: number, outside: number, pressure: number, airFlow: number): number {
    const { volume, extraction, heatPerAir } = this.config;
    const changes = extraction / volume;
    const warming = (heatPerAir * airFlow * AIR_GAS_CONSTANT) / (pressure * volume * AIR_HEAT_CAPACITY);
    return (s * base + changes * outside) / (s + changes - warming);
  }
}
