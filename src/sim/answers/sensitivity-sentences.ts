import type { Sensitivity } from './sensitivity.ts';
import type { UncertainInput } from './uncertain-inputs.ts';
import type { Wording } from './wording.ts';

/**
 * How far an input that is not known well may lie off, as a person reads it: "x0.85 to x1.15", "-3 to +3 K".
 *
 * @param range - of an input, in its own unit or in another one that is to be read
 */
export function rangeInWords({ kind, low, high, unit }: RangeToRead): string {
  if (kind === 'factor') return `x${low} to x${high}`;
  const signed = (end: number): string => (kind === 'shift' && end > 0 ? `+${end}` : String(end));
  return `${signed(low)} to ${signed(high)}${unit === undefined ? '' : ` ${unit}`}`;
}

type RangeToRead = Pick<UncertainInput, 'kind' | 'low' | 'high'> & { readonly unit?: string };

/** The bands in whole sentences, and how many runs are not in them. */
export function explainSensitivity(
  { typed, pull, limit, count, peak, runs, unusable }: Sensitivity,
  { temperature }: Pick<Wording, 'temperature'>,
): string[] {
  const { low, high, lowest, highest } = count;
  const others =
    lowest === highest
      ? `${lowest} in all ${runs.length} runs with every input uncertain at once`
      : `${span(low, high)} in nine tenths of ${runs.length} runs with every input uncertain at once, ${span(lowest, highest)} in all`;
  return [
    `Pulls to limit: ${typed.count} as typed; ${others}.`,
    `Peak of pull ${pull}: ${temperature(typed.peak)} as typed; ${temperature(peak.low)} to ${temperature(peak.high)} in nine tenths, half below ${temperature(peak.middle)} (limit ${temperature(limit)}).`,
    ...(unusable === 0 ? [] : [`Runs left out, refused or stopped before that pull: ${unusable}.`]),
  ];
}

const span = (low: number, high: number): string => (low === high ? String(low) : `${low} to ${high}`);

/** What the ranking leaves open, and where its ranges are from. */
export function explainRanking({ ranking, unexplained }: Sensitivity): string[] {
  const sources = [...new Set(ranking.map(({ input }) => input.source))];
  return [
    `${(100 * unexplained).toFixed(1)} % of the spread follows no straight line: curvature, and inputs that act together.`,
    `Ranges: ${sources.join('; ')}.`,
  ];
}
