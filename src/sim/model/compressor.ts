import { AIR_GAS_CONSTANT, AIR_HEAT_CAPACITY, AIR_ISENTROPIC_EXPONENT } from '../fluids/moist-air.ts';
import type { CompressorConfig } from '../scenario/config.ts';

const STANDARD_PRESSURE = 1e5;

/**
 * Displacement compressor on a fixed pulley.
 *
 *     m = eta_vc V n/60 p1/(R T1),   eta_vc = 1 - L (PR - 1)/(n/1000)
 *     W_gas = m cp T1 (PR^k - 1)/eta_i + W_idle,   W_idle = W_ref (n/n_ref)^a p1/100 kPa,   k = (g - 1)/g
 *     W_mech = W_mech,ref (n/n_ref)^exponent
 *
 * The quoted efficiency holds for the total at the quoted point: with A = m cp T1 (PR^k - 1) there,
 * eta_i = A/(A/eta_quoted - W_idle), constant from then on. Below PR 1 the work is an expander's, eta_i times the
 * isentropic one. The form is the usual one for machines without a map; leak, idle power and mechanical loss are inputs.
 */
export class DisplacementCompressor {
  readonly innerEfficiency: number;
  private readonly config: CompressorConfig;
  private speed = Number.NaN;
  private idleAtSpeed = 0;
  private mechanicalAtSpeed = 0;

  constructor(config: CompressorConfig) {
    this.config = config;
    const { efficiency, speed, pressureRatio, inletTemperature, inletPressure } = config.quoted;
    this.setSpeed(speed);
    const massFlow = (this.volumeFlow(pressureRatio) * inletPressure) / (AIR_GAS_CONSTANT * inletTemperature);
    const ideal = massFlow * AIR_HEAT_CAPACITY * inletTemperature * isentropicRise(pressureRatio);
    this.innerEfficiency = ideal / (ideal / efficiency - this.idlePower(inletPressure));
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

  /** Volume taken in at inlet conditions [m3/s]; falls to nothing at {@link highestPressureRatio}. */
  volumeFlow(pressureRatio: number): number {
    const { sweptVolume, leak } = this.config;
    return (1 - (leak * (pressureRatio - 1)) / (this.speed / 1000)) * sweptVolume * (this.speed / 60);
  }

  /** Pressure ratio at which 95 % of the swept flow leaks back; the root search ends there. */
  highestPressureRatio(): number {
    const { leak } = this.config;
    return leak > 0 ? Math.min(20, 1 + (0.95 * this.speed) / 1000 / leak) : 20;
  }

  /**
   * Temperature ratio across the rotors without the idle power. Below PR 1 the air drives the rotors: what a loss adds
   * to the work of compressing it takes from that of expanding.
   */
  temperatureRatio(pressureRatio: number): number {
    const rise = isentropicRise(pressureRatio);
    return 1 + (rise > 0 ? rise / this.innerEfficiency : rise * this.innerEfficiency);
  }

  /** Power that only churns the air [W], at inlet pressure `inletPressure` [Pa]. */
  idlePower(inletPressure: number): number {
    return this.idleAtSpeed * (inletPressure / STANDARD_PRESSURE);
  }

  /** Bearings and gears [W]. */
  get mechanicalLoss(): number {
    return this.mechanicalAtSpeed;
  }
}

function isentropicRise(pressureRatio: number): number {
  return pressureRatio ** ((AIR_ISENTROPIC_EXPONENT - 1) / AIR_ISENTROPIC_EXPONENT) - 1;
}
