import { indicatedWork } from '../correlations/indicated-work.ts';
import { AIR_GAS_CONSTANT, AIR_ISENTROPIC_EXPONENT } from '../fluids/moist-air.ts';
import type { DisplacementConfig } from '../scenario/config/compressor.ts';
import { Compressor } from './compressor.ts';

/** The root search for the pressure ratio goes no higher; own judgement, beyond any blower. */
const HIGHEST_RATIO = 20;

/**
 * Displacement compressor.
 *
 *     m = eta_vc V n/60 p1/(R T1),   eta_vc = 1 - L (PR - 1)/(n/1000)
 *
 * With a built-in volume ratio the ideal work is that of its indicator diagram, else isentropic; both over one inner
 * efficiency.
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

  /** Volume taken in at inlet conditions [m3/s]. */
  volumeFlow(pressureRatio: number): number {
    const { sweptVolume, leak } = this.machine;
    return (1 - (leak * (pressureRatio - 1)) / (this.speed / 1000)) * sweptVolume * (this.speed / 60);
  }

  /** Pressure ratio at which the root search ends: 95 % of the swept flow leaks back, own judgement. */
  highestPressureRatio(): number {
    const { leak } = this.machine;
    return leak > 0 ? Math.min(HIGHEST_RATIO, 1 + (0.95 * this.speed) / 1000 / leak) : HIGHEST_RATIO;
  }

  protected override idealRise(pressureRatio: number): number {
    const { builtInVolumeRatio: v } = this.machine;
    return v === undefined ? super.idealRise(pressureRatio) : indicatedWork(v, pressureRatio, AIR_ISENTROPIC_EXPONENT);
  }
}
