interface CompressorLosses {
  readonly quoted: {
    readonly efficiency: number;
    /** rpm of the compressor */
    readonly speed: number;
    readonly pressureRatio: number;
    /** K */
    readonly inletTemperature: number;
    /** Pa */
    readonly inletPressure: number;
  };
  /** W_idle = power (rpm / speed)^exponent (p1 / 100 kPa) */
  readonly idlePower: { readonly power: number; readonly speed: number; readonly exponent: number };
  /**
   * W_mech = power (rpm / idlePower.speed)^exponent; `toCasing` of it warms the casing, the rest leaves with the oil
   */
  readonly mechanicalLoss: { readonly power: number; readonly exponent: number; readonly toCasing: number };
}

export interface DisplacementConfig extends CompressorLosses {
  readonly kind: 'displacement';
  /** m3 per compressor revolution */
  readonly sweptVolume: number;
  /** compressor revolutions per engine revolution */
  readonly driveRatio: number;
  /** volumetric efficiency is 1 - leak (PR - 1) / (rpm / 1000) */
  readonly leak: number;
  /** absent: isentropic work over one inner efficiency; 1 = external compression */
  readonly builtInVolumeRatio?: number;
  /** Pa that a controlled bypass holds in a pull; absent: it floats */
  readonly targetManifoldPressure?: number;
}

interface ByHead extends CompressorLosses {
  readonly quoted: CompressorLosses['quoted'] & {
    /** kg/s */
    readonly flow: number;
  };
  /** one boost that the compressor is known to make; Pa, rpm, K, Pa */
  readonly typedBoost: {
    readonly outletPressure: number;
    readonly speed: number;
    readonly inletTemperature: number;
    readonly inletPressure: number;
  };
}

export interface CentrifugalConfig extends ByHead {
  readonly kind: 'centrifugal';
  /** compressor revolutions per engine revolution */
  readonly driveRatio: number;
}

export interface TurbineDrivenConfig extends ByHead {
  readonly kind: 'turbine-driven';
  /** rpm; at this speed the target is given up */
  readonly highestSpeed: number;
  /** Pa, held in a pull */
  readonly targetManifoldPressure: number;
}

export type CompressorConfig = DisplacementConfig | CentrifugalConfig | TurbineDrivenConfig;

/** Manifold pressure that is held in a pull, by a bypass or by a turbine [Pa]; undefined where it floats. */
export const heldPressure = (compressor: CompressorConfig): number | undefined =>
  compressor.kind === 'centrifugal' ? undefined : compressor.targetManifoldPressure;
