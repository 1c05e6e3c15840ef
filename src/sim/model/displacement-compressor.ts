import { AIR_GAS_CONSTANT, AIR_ISENTROPIC_EXPONENT } from '../fluids/moist-air.ts';
import type { DisplacementConfig } from '../scenario/config.ts';
import { Compressor, ISENTROPIC } from './compressor.ts';

/**
 * Displacement compressor.
 *
 *     m = eta_vc V n/60 p1/(R T1),   eta_vc = 1 - L (PR - 1)/(n/1000)
 *
 * With a built-in volume ratio v the ideal work is that of its indicator diagram, closed compression to V/v and then
 * delivery against p2, over p1 V:  w = (v^(g-1) - 1)/(g - 1) + PR/v - 1,  rise = k w. It is PR - 1 for external
 * compression (v = 1), the isentropic work where v^g = PR, and above nothing at PR 1 for v > 1: such a machine works
 * against its own discharge with the bypass open. Without v the work is isentropic over one inner efficiency.
 *
 * The diagram: textbook thermodynamics of rotary displacement machines, ideal gas, no leak inside.
 */
export class DisplacementCompressor extends Compressor {
  private readonly machine: DisplacementConfig;

  constructor(config: DisplacementConfig) {
    super(config);
    this.machine = config;
    const { speed, pressureRatio, inletTemperature, inletPressure } = config.quoted;
    this.setSpeed(speed);
    this.meetQuotedPoint((this.volumeFlow(pressureRatio) * inletPressure) / (AIR_GAS_CONSTANT * inletTemperature));
  }

  /** Volume taken in at inlet conditions [m3/s]; falls to nothing at {@link highestPressureRatio}. */
  volumeFlow(pressureRatio: number): number {
    const { sweptVolume, leak } = this.machine;
    return (1 - (leak * (pressureRatio - 1)) / (this.speed / 1000)) * sweptVolume * (this.speed / 60);
  }

  /** Pressure ratio at which 95 % of the swept flow leaks back; the root search ends there. */
  highestPressureRatio(): number {
    const { leak } = this.machine;
    return leak > 0 ? Math.min(20, 1 + (0.95 * this.speed) / 1000 / leak) : 20;
  }

  protected override idealRise(pressureRatio: number): number {
    const { builtInVolumeRatio: v } = this.machine;
    if (v === undefined) return super.idealRise(pressureRatio);
    const g = AIR_ISENTROPIC_EXPONENT;
    return ISENTROPIC * ((v ** (g - 1) - 1) / (g - 1) + pressureRatio / v - 1);
  }
}
