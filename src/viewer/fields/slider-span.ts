import type { NumberRow } from '../../sim/index.ts';
import type { Measure } from './measure.ts';

/** Ends and step of a slider, in the unit shown. */
export interface SliderSpan {
  readonly min: number;
  readonly max: number;
  readonly step: number;
}

/** A slider has about this many steps, so that one is small beside the doubt in most values. */
const STEPS = 150;
/** A usual range that spans more than this is no help to a hand on a slider. */
const WIDE = 10;

/**
 * Where a slider for a key makes sense: over the usual range where that is narrow, else from half to double of the
 * file's own value. It always covers `others` and the present value, so that nothing shown is ever off its end.
 *
 * @param own - value of the file that was opened, in the file unit
 * @param others - values that the variants of the file give to the key, in the file unit
 * @param present - value in hand, in the file unit
 * @returns ends and step in the unit shown, or undefined where there is nothing to slide over
 */
export function sliderSpan(
  row: NumberRow,
  measure: Measure,
  own: number,
  others: readonly number[],
  present: number,
): SliderSpan | undefined {
  const [usualLow, usualHigh] = row.usual ?? [row.min, row.max];
  const isNarrow =
    row.unit === 'degC' || row.unit === 'share' || row.unit === '%' || row.unit === 'K' || usualHigh - usualLow <= 4;
  const hasNarrowRange = isNarrow || (usualLow > 0 && usualHigh / usualLow <= WIDE) || !(own > 0);
  const [low, high] = hasNarrowRange ? [usualLow, usualHigh] : [Math.max(row.min, own / 2), Math.min(row.max, own * 2)];
  const all = [low, high, ...others, present].filter(Number.isFinite).map(measure.fromFile);
  const [least, most] = [Math.min(...all), Math.max(...all)];
  if (!(most > least)) return undefined;
  const step = roundStep((most - least) / STEPS, row.whole === true);
  // Ends on whole steps, outwards; the rounding takes the dust off sums of decimal fractions.
  const onStep = (steps: number) => Number((steps * step).toPrecision(12));
  return { min: onStep(Math.floor(least / step + 1e-9)), max: onStep(Math.ceil(most / step - 1e-9)), step };
}

/** The step next to `wanted` that is 1, 2 or 5 times a power of ten. */
function roundStep(wanted: number, isWhole: boolean): number {
  const power = 10 ** Math.floor(Math.log10(wanted));
  const factor = [1, 2, 5, 10].find((each) => each * power >= wanted * 0.999) ?? 10;
  const step = Number((factor * power).toPrecision(1));
  return isWhole ? Math.max(1, Math.round(step)) : step;
}
