import { type CompressorConfig, heldPressure } from '../scenario/config/compressor.ts';
import { type AirBand, EXPONENTS } from './air-band.ts';
import type { PullSummary } from './pull-summary.ts';
import type { Wording } from './wording.ts';

/** What another charge temperature does to the engine's air, at the end of the same pull of two cars. SI. */
export interface CoolingConsequence {
  readonly pull: number;
  /** K */
  readonly chargeChange: number;
  /** Pa */
  readonly manifoldChange: number;
  /** share, and the same for both ends of the swallowing exponent where both cars were run there */
  readonly airChange: number;
  readonly airChangeEnds?: readonly [plainDensity: number, steepest: number];
  /** W */
  readonly driveChange: number;
}

interface Car {
  readonly pull: PullSummary;
  readonly airBand?: AirBand | undefined;
}

export function compareCooling(before: Car, after: Car): CoolingConsequence {
  const [from, to] = [before.pull.atEnd, after.pull.atEnd];
  const [a, b] = [before.airBand, after.airBand];
  return {
    pull: after.pull.pull,
    chargeChange: to.chargeTemperature - from.chargeTemperature,
    manifoldChange: to.manifoldPressure - from.manifoldPressure,
    airChange: to.airFlow / from.airFlow - 1,
    ...(a && b && { airChangeEnds: [b.plainDensity / a.plainDensity - 1, b.steepest / a.steepest - 1] as const }),
    driveChange: to.drivePower - from.drivePower,
  };
}

/** Why the numbers come out as they do, by kind of compressor and what holds its pressure. */
const BECAUSE: Readonly<Record<CompressorConfig['kind'] | 'held by bypass', string>> = {
  displacement:
    'A displacement compressor on its pulley moves nearly the same air; the boost gauge shows what the engine makes of it.',
  centrifugal:
    'The pulley and the inlet air set what the centrifugal compressor delivers; the engine swallows more of a cooler charge.',
  'turbine-driven': 'The turbine holds the pressure; the engine swallows more of a cooler charge.',
  'held by bypass': 'The bypass holds the pressure; the engine swallows more of a cooler charge.',
};

/** The consequence in words: charge, boost gauge, mass with both ends, drive power, and why. */
export function explainCooling(
  { chargeChange, manifoldChange, airChange, airChangeEnds, driveChange }: CoolingConsequence,
  compressor: CompressorConfig,
  wording: Pick<Wording, 'difference' | 'pressure' | 'power'>,
): string {
  const isHeldByBypass = compressor.kind === 'displacement' && heldPressure(compressor) !== undefined;
  // A share that rounds to nothing has no sign.
  const percent = (share: number) => {
    const rounded = Math.round(1000 * share);
    return `${rounded < 0 ? '-' : rounded > 0 ? '+' : ''}${(Math.abs(rounded) / 10).toFixed(1)} %`;
  };
  const ends = airChangeEnds && [...airChangeEnds].sort((a, b) => a - b).map(percent);
  const mass = `air mass ${percent(airChange)}${ends ? ` (${ends[0]} to ${ends[1]} for swallowing exponents ${EXPONENTS.join(' to ')})` : ''}`;
  const gauge = change(manifoldChange, wording.pressure, 'rises', 'falls');
  return [
    `Charge ${change(chargeChange, wording.difference, 'warmer', 'cooler', true)} at the end of the pull: the boost gauge ${gauge}, ${mass}, drive power ${change(driveChange, wording.power, 'rises', 'falls')}.`,
    BECAUSE[isHeldByBypass ? 'held by bypass' : compressor.kind],
  ].join(' ');
}

function change(value: number, write: (size: number) => string, up: string, down: string, isAfter = false): string {
  if (write(Math.abs(value)) === write(0)) return isAfter ? 'as warm' : 'stays as it is';
  const word = value > 0 ? up : down;
  return isAfter ? `${write(Math.abs(value))} ${word}` : `${word} by ${write(Math.abs(value))}`;
}
