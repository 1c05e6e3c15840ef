import { type CompressorConfig, heldPressure } from '../scenario/config/compressor.ts';
import type { CoreDropStudy } from './core-drop.ts';
import type { Wording } from './wording.ts';

/** A change of less than this share is none: it would be written as 0.0 %. */
const NOTHING = 5e-4;

/** What the core pressure drop takes, by kind of compressor, and what is left of what its cooling gives. */
export function explainCoreDrop(study: CoreDropStudy, compressor: CompressorConfig, wording: Wording): string[] {
  const { asItIs, free, none } = study;
  const { difference, pressure, power } = wording;
  const percent = (share: number): string =>
    Math.abs(share) < NOTHING ? 'not at all' : `by ${share > 0 ? '+' : '-'}${(100 * Math.abs(share)).toFixed(1)} %`;
  const change = (value: number, write: (size: number) => string): string => {
    const size = write(Math.abs(value));
    return size === write(0) ? size : `${value < 0 ? '-' : '+'}${size}`;
  };
  const isHeld = heldPressure(compressor) !== undefined;
  const takes =
    compressor.kind === 'centrifugal'
      ? `It comes straight off the manifold: ${change(asItIs.manifold - free.manifold, pressure)}, and the air changes ${percent(asItIs.airFlow / free.airFlow - 1)}.`
      : `The ${isHeld ? 'held pressure makes' : 'pulley makes'} the compressor work against it: discharge ${change(asItIs.discharge - free.discharge, difference)}, drive power ${change(asItIs.drivePower - free.drivePower, power)}, peak behind the core ${change(asItIs.peak - free.peak, difference)}; the air changes ${percent(asItIs.airFlow / free.airFlow - 1)}.`;
  const gives = `Against the same car without a core: charge ${change(asItIs.peak - none.peak, difference)}, manifold ${change(asItIs.manifold - none.manifold, pressure)}, drive power ${change(asItIs.drivePower - none.drivePower, power)}, and the air changes ${percent(asItIs.airFlow / none.airFlow - 1)}.`;
  return [`The core takes ${pressure(asItIs.drop)} at the end of the first pull.`, takes, gives];
}
