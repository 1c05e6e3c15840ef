import { AIR_HEAT_CAPACITY, AIR_ISENTROPIC_EXPONENT } from '../fluids/moist-air.ts';
import type { CompressorConfig } from '../scenario/config/compressor.ts';

/** Idle power is quoted at this inlet pressure [Pa]. */
const STANDARD_PRESSURE = 1e5;
/** k = (g - 1)/g */
export const ISENTROPIC = (AIR_ISENTROPIC_EXPONENT - 1) / AIR_ISENTROPIC_EXPONENT;

/**
 * What all compressors have in common: power into the gas and losses.
 *
 *     W_gas = m cp T1 rise(PR)/eta_i + W_idle,   W_idle = W_ref (n/n_ref)^a p1/100 kPa
 *     W_mech = W_mech,ref (n/n_ref)^exponent
 *
 * The rise is the isentropic PR^k - 1, k = (g - 1)/g, unless a kind has a better one. The quoted efficiency holds for
 * the total at the quoted point: with A = m cp T1 (PR^k - 1) there, eta_i = m cp T1 rise/(A/eta_quoted - W_idle),
 * constant from then on. Below PR 1 the work is an expander's, eta_i times the ideal one. The form is the usual one for
 * compressors without a map; idle power and mechanical loss are inputs.
 */
export abstract class Compressor {
  /** rpm */
  protected speed = Number.NaN;
  private inner = Number.NaN;
  private idleAtSpeed = 0;
  private mechanicalAtSpeed = 0;
  private readonly config: CompressorConfig;

  constructor(config: CompressorConfig) {
    this.config = config;
  }

  /** rpm */
  get rotation(): number {
    return this.speed;
  }

  /** Takes the compressor speed [rpm] that the other methods use. */
  setSpeed(speed: number): void {
    if (speed === this.speed) return;
    const { idlePower, mechanicalLoss } = this.config;
    this.speed = speed;
    const relative = speed / idlePower.speed;
    this.idleAtSpeed = idlePower.power * relative ** idlePower.exponent;
    this.mechanicalAtSpeed = mechanicalLoss.power * relative ** mechanicalLoss.exponent;
  }

  /** Temperature ratio across the rotors without the idle power. */
  temperatureRatio(pressureRatio: number): number {
    const rise = this.idealRise(pressureRatio);
    return 1 + (rise > 0 ? rise / this.inner : rise * this.inner);
  }

  /** Power that only churns the air [W], at inlet pressure `inletPressure` [Pa]. */
  idlePower(inletPressure: number): number {
    return this.idleAtSpeed * (inletPressure / STANDARD_PRESSURE);
  }

  /** Bearings and gears [W]. */
  get mechanicalLoss(): number {
    return this.mechanicalAtSpeed;
  }

  /** Ideal work over cp T1. */
  protected idealRise(pressureRatio: number): number {
    return isentropicRise(pressureRatio);
  }

  /** Scales the inner efficiency so that the quoted one comes out at the quoted point with this air flow [kg/s]. */
  protected meetQuotedPoint(massFlow: number): void {
    const { efficiency, speed, pressureRatio, inletTemperature, inletPressure } = this.config.quoted;
    this.setSpeed(speed);
    const unit = massFlow * AIR_HEAT_CAPACITY * inletTemperature;
    const total = (unit * isentropicRise(pressureRatio)) / efficiency;
    this.inner = (unit * this.idealRise(pressureRatio)) / (total - this.idlePower(inletPressure));
  }
}

/** Isentropic work over cp T1. */
export function isentropicRise(pressureRatio: number): number {
  return pressureRatio ** ISENTROPIC - 1;
}
