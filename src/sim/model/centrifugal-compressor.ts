import type { CentrifugalConfig, TurbineDrivenConfig } from '../scenario/config/compressor.ts';
import { Compressor, ISENTROPIC, isentropicRise } from './compressor.ts';

/**
 * Centrifugal compressor by head, which goes with speed squared and with nothing else.
 *
 *     PR^k = 1 + head (n/n_ref)^2/T1,   k = (g - 1)/g
 *
 * `head` [K] follows from one typed boost: outlet pressure at a speed, inlet temperature and inlet pressure. The form
 * leaves out how head falls with flow; it is the usual one where no map is at hand.
 */
export class CentrifugalCompressor extends Compressor {
  /** isentropic temperature rise at the reference speed [K] */
  readonly head: number;
  private readonly referenceSpeed: number;

  constructor(config: CentrifugalConfig | TurbineDrivenConfig) {
    super(config);
    const { outletPressure, speed, inletTemperature, inletPressure } = config.typedBoost;
    this.head = isentropicRise(outletPressure / inletPressure) * inletTemperature;
    this.referenceSpeed = speed;
    this.meetQuotedPoint(config.quoted.flow);
  }

  /** Pressure ratio at the set speed with inlet air of this temperature [K]. */
  pressureRatioAt(inletTemperature: number): number {
    return (1 + (this.head * (this.speed / this.referenceSpeed) ** 2) / inletTemperature) ** (1 / ISENTROPIC);
  }

  /** Speed that makes a pressure ratio with inlet air of this temperature [rpm]; 0 where none is needed. */
  speedFor(pressureRatio: number, inletTemperature: number): number {
    const rise = Math.max(0, isentropicRise(pressureRatio));
    return this.referenceSpeed * Math.sqrt((rise * inletTemperature) / this.head);
  }
}
