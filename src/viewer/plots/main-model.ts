import type { TimeSeries } from '../../sim/index.ts';
import { degrees, joined, type Scale, seconds } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';
import { isPull } from '../time/phases.ts';
import { inHand, type ShownRun } from '../time/runs.ts';
import { extremes } from './common-times.ts';
import type { Stretch, View } from './view.ts';

/** A point of a run that carries a word, in s and K. */
export interface Mark {
  readonly which: ShownRun['which'];
  readonly time: number;
  readonly kelvin: number;
  /** absent where there is no room for it */
  readonly text?: string;
}

/** What the plot of the charge temperature shows beside its lines. */
export interface MainMarks {
  /** limit of the car in hand [K] and, where it differs, that of Before */
  readonly limit?: { readonly kelvin: number; readonly text: string };
  readonly otherLimit?: { readonly kelvin: number; readonly text: string };
  readonly shades: readonly Stretch[];
  readonly peaks: readonly Mark[];
  readonly crossings: readonly Mark[];
}

/** More pulls than this in view leave room for one number a run only: that of the hottest. */
const MOST_WRITTEN = 2;

/** Limit, pulls, peaks and crossings within a view. */
export function mainMarks(runs: readonly ShownRun[], view: View, units: UnitChoice): MainMarks {
  const hand = inHand(runs);
  if (hand === undefined) return { shades: [], peaks: [], crossings: [] };
  const isInView = (time: number) => time >= view.from && time <= view.to;
  const limit = hand.car.config.limit.chargeTemperature;
  const other = runs[0].car.config.limit.chargeTemperature;
  const peaks: Mark[] = [];
  const crossings: Mark[] = [];
  for (const { which, pulls } of runs) {
    const inView = pulls.filter(({ start, duration }) => start + duration >= view.from && start <= view.to);
    const hottest = Math.max(...inView.map(({ peak }) => peak));
    const isCrowded = inView.length > MOST_WRITTEN;
    for (const { peak, peakTime, margin, crossedAtShare, start, duration } of inView) {
      const isWritten = !isCrowded || peak === hottest;
      const word = isWritten ? { text: degrees(peak, units) } : {};
      if (isInView(peakTime)) peaks.push({ which, time: peakTime, kelvin: peak, ...word });
      if (crossedAtShare === undefined || isCrowded) continue;
      const into = crossedAtShare * duration;
      const text = `over at ${joined(seconds(into))}`;
      if (isInView(start + into)) crossings.push({ which, time: start + into, kelvin: peak + margin, text });
    }
  }
  return {
    limit: { kelvin: limit, text: `Limit ${degrees(limit, units)}` },
    ...(other === limit ? {} : { otherLimit: { kelvin: other, text: `Before ${degrees(other, units)}` } }),
    shades: hand.phases
      .filter((phase) => isPull(phase) && phase.end > view.from && phase.start < view.to)
      .map(({ start, end }) => ({ from: start, to: end })),
    peaks,
    crossings,
  };
}

/** The height axis grows by whole steps beyond the colours [K]. */
const RANGE_STEP = 25;

/**
 * Ends of the height axis [K]: those of the colours, or wider where the charge or its limit does not fit in.
 *
 * @param colours - range of the colour scale [K]
 */
export function mainRange(
  colours: { readonly low: number; readonly high: number },
  series: readonly (TimeSeries | undefined)[],
  limits: readonly number[],
): readonly [number, number] {
  const values = [...limits];
  for (const column of ['chargeTemperature', 'indicatedTemperature'] as const) {
    values.push(...(extremes(series, column) ?? []));
  }
  const below = Math.max(0, colours.low - Math.min(...values));
  const above = Math.max(0, Math.max(...values) - colours.high);
  const steps = (beyond: number) => (Number.isFinite(beyond) ? RANGE_STEP * Math.ceil(beyond / RANGE_STEP) : 0);
  return [colours.low - steps(below), colours.high + steps(above)];
}

/** Step of the numbers at the height axis, in the shown unit. */
export function degreeStep(range: readonly [number, number], { fromSi }: Scale): number {
  const span = fromSi(range[1]) - fromSi(range[0]);
  return span > 120 ? 50 : span > 75 ? 25 : span > 50 ? 20 : 10;
}

/** Heights moved apart until no two are nearer than `gap`, keeping their order; at most two are expected. */
export function movedApart(heights: readonly number[], gap: number): number[] {
  const moved = [...heights];
  const order = moved.map((_, k) => k).sort((a, b) => heights[a] - heights[b]);
  for (let k = 1; k < order.length; k++) {
    const overlap = gap - (moved[order[k]] - moved[order[k - 1]]);
    if (overlap > 0) moved[order[k]] += overlap;
  }
  return moved;
}

/** Room of a word above and below the line of the limit, from its baseline [px]. */
const ABOVE_LINE = 6;
const BELOW_LINE = 16;

/** Heights of words beside points: apart, and off the line of the limit, each on the side of its point. */
export function besideLimit(heights: readonly number[], gap: number, limit: number | undefined): number[] {
  if (limit === undefined) return movedApart(heights, gap);
  const places = [...heights];
  const place = (sign: 1 | -1, room: number) => {
    const all = heights.flatMap((height, k) => (height > limit === sign > 0 ? [k] : []));
    // Above the line the lower word keeps its place and the other goes up: the same with the axis turned.
    const off = all.map((k) => Math.max(sign * heights[k], sign * limit + room));
    movedApart(off, gap).forEach((height, k) => {
      places[all[k]] = sign * height;
    });
  };
  place(1, BELOW_LINE);
  place(-1, ABOVE_LINE);
  return places;
}
