import type { PullSummary } from '../../sim/index.ts';
import { scaleOf } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';
import { isPull, type Phase } from './phases.ts';
import type { ShownRun } from './runs.ts';

/** From temperatures [K] and times [s] to pixels. */
export interface BarFrame {
  readonly x: (time: number) => number;
  readonly y: (kelvin: number) => number;
  /** width of the drawing [px] */
  readonly width: number;
  /** digits of a peak in whole degrees: three in degF */
  readonly wholeDigits: number;
}

/** How the pulls share the width [px]. */
export interface BarSlots {
  /** distance between two pulls at their closest */
  readonly slot: number;
  /** width of a bar, and how many bars a pull has */
  readonly width: number;
  readonly count: number;
}

/** How peaks are written at the bars: with tenths, as whole degrees, or only at the bars that matter most. */
type LabelStyle = 'tenths' | 'whole' | 'few';

/** A pull of one car as it stands on the line of time. */
export interface Bar {
  readonly which: ShownRun['which'];
  readonly pull: number;
  /** end of the pull: where a click leads [s] */
  readonly time: number;
  /** left side and width [px] */
  readonly x: number;
  readonly width: number;
  /** absent where the pull is not solved */
  readonly solved?: SolvedBar;
}

interface SolvedBar {
  /** K */
  readonly peak: number;
  readonly isOver: boolean;
  /** top of the part up to the limit, and of the whole bar [px] */
  readonly limitTop: number;
  readonly top: number;
}

interface BarLayout {
  readonly bars: readonly Bar[];
  readonly labels: LabelStyle;
  /** number, middle and end of each pull of the car in hand [px, s] */
  readonly pulls: readonly { readonly pull: number; readonly x: number; readonly end: number }[];
  /** distance between two pulls at their closest [px] */
  readonly slot: number;
}

/** Rough width of a letter [px]. */
export const LETTER = 6.8;

const WIDEST_BAR = 34;
const NARROWEST_BAR = 2;
/** Share of the distance between two pulls that their bars may fill: where they are near, little is left between. */
const FILL = 0.74;
const FILL_NEAR = 0.92;
const NEAR = 45;
/** Width of a digit of a peak with tenths (point included) and as whole degrees, which are written smaller [px]. */
const TENTHS_DIGIT = 10;
const WHOLE_DIGIT = 7;
/** Room for a number that stands beside its bar [px]. */
const FEW_WIDTH = 34;

/** How the pulls of all runs share a width. */
export function shareOut(runs: readonly ShownRun[], { x, width }: Pick<BarFrame, 'x' | 'width'>): BarSlots {
  const middles = runs.map(({ phases }) => phases.filter(isPull).map((phase) => middleOf(phase, x)));
  const slot = Math.min(width, ...middles.map(closest));
  const count = Math.max(1, runs.length);
  const fill = slot < NEAR ? FILL_NEAR : FILL;
  return { slot, width: Math.max(NARROWEST_BAR, Math.min(WIDEST_BAR, (fill * slot) / count)), count };
}

const middleOf = ({ start, end }: Phase, x: BarFrame['x']): number => x((start + end) / 2);

/** Lays the peaks of all runs out as bars at the middle of their pulls, Before left of After. */
export function layOutBars(runs: readonly ShownRun[], frame: BarFrame): BarLayout {
  const planned = runs.map(({ phases }) => phases.filter(isPull));
  const middle = (phase: Phase): number => middleOf(phase, frame.x);
  const { slot, width, count } = shareOut(runs, frame);
  const bars = runs.flatMap(({ which, pulls, car }, place) => {
    const limit = car.config.limit.chargeTemperature;
    return planned[place].map((phase): Bar => {
      const summary = pulls.find(({ pull }) => pull === phase.pull);
      const x = middle(phase) + (place - count / 2) * width;
      const bar = { which, pull: phase.pull, time: phase.end, x, width: Math.max(1, width - (width > 15 ? 1.5 : 0.7)) };
      return summary === undefined ? bar : { ...bar, solved: heights(summary, limit, frame) };
    });
  });
  const hand = planned[planned.length - 1] ?? [];
  return {
    bars,
    labels: labelStyle(bars, count === 1 ? slot - 3 : width, frame.wholeDigits),
    pulls: hand.map((phase) => ({ pull: phase.pull, x: middle(phase), end: phase.end })),
    slot,
  };
}

/** Two numbers side by side need room only where both stand above their bars; else one is inside. */
function labelStyle(bars: readonly Bar[], room: number, wholeDigits: number): LabelStyle {
  if (room >= TENTHS_DIGIT * (wholeDigits + 1)) return 'tenths';
  const isAnyAfterOver = bars.some(({ which, solved }) => which === 'after' && solved?.isOver);
  return room >= (isAnyAfterOver ? 1 : 0.8) * WHOLE_DIGIT * wholeDigits ? 'whole' : 'few';
}

function heights({ peak, margin }: PullSummary, limit: number, { y }: BarFrame): SolvedBar {
  return { peak, isOver: margin < 0, limitTop: y(Math.min(peak, limit)), top: y(peak) };
}

function closest(places: readonly number[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let k = 1; k < places.length; k++) least = Math.min(least, places[k] - places[k - 1]);
  return least;
}

/** Bars that are written at where only a few can be: the one at the clock, and the hottest of each run. */
export function barsThatMatter(bars: readonly Bar[], pullAtClock: number): ReadonlySet<Bar> {
  const chosen = new Set<Bar>();
  for (const which of ['before', 'after'] as const) {
    const solved = bars.filter((bar) => bar.which === which && bar.solved !== undefined);
    const hottest = Math.max(...solved.map((bar) => bar.solved?.peak ?? 0));
    const wanted = [
      solved.find(({ pull }) => pull === pullAtClock),
      solved.find((bar) => bar.solved?.peak === hottest),
    ];
    for (const bar of wanted) if (bar !== undefined) chosen.add(bar);
  }
  return chosen;
}

const PULL_STEPS = [2, 5, 10, 20, 50, 100, 200, 500];

/**
 * Which pull numbers are written below the bars: every one, or every round step that has room beside that at the clock.
 *
 * @param pullAtClock - 0 where there is none
 */
export function writtenPulls(
  { pulls, slot }: Pick<BarLayout, 'pulls' | 'slot'>,
  labelWidth: number,
  pullAtClock: number,
): number[] {
  const numbers = pulls.map(({ pull }) => pull);
  if (slot >= labelWidth) return numbers;
  const least = labelWidth / Math.max(1e-3, slot);
  const every = PULL_STEPS.find((step) => step >= least) ?? PULL_STEPS[PULL_STEPS.length - 1];
  const atClock = pulls.find(({ pull }) => pull === pullAtClock);
  const isRound = (pull: number): boolean => pull === 1 || (pull % every === 0 && pull * slot > labelWidth);
  return pulls.flatMap(({ pull, x }) =>
    pull === pullAtClock || (isRound(pull) && Math.abs(x - (atClock?.x ?? Number.POSITIVE_INFINITY)) >= labelWidth)
      ? [pull]
      : [],
  );
}

/** Where a bar's number stands, and which end of it. */
export interface NumberPlace {
  readonly x: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

/**
 * At bars too thin for their numbers, those of Before and After stand back to back about the pull; elsewhere a number
 * stands at the middle of its bar. Near an end of the drawing it is moved in.
 *
 * @param isThin - the numbers are wider than the bars and there are two to a pull
 * @param left - where the axis stands [px]
 * @param right - end of the drawing [px]
 */
export function numberPlace({ which, x, width }: Bar, isThin: boolean, left: number, right: number): NumberPlace {
  if (!isThin) {
    const half = Math.max(width, FEW_WIDTH) / 2;
    return { x: Math.max(left + half, Math.min(right - half, x + width / 2)), anchor: 'middle' };
  }
  const seam = which === 'before' ? x + width : x;
  const held = Math.max(left + FEW_WIDTH, Math.min(seam, right - FEW_WIDTH));
  return which === 'before' ? { x: held - 1, anchor: 'end' } : { x: held + 1, anchor: 'start' };
}

/** The coldest outside air of the cars that are shown [K]. */
export const outsideOf = (runs: readonly ShownRun[]): number =>
  Math.min(...runs.map(({ car }) => car.config.ambient.temperature));

/** Ends of the height axis stand on multiples of this, counted from its base, in the shown unit. */
const RANGE_STEP = { degC: 5, degF: 10 } as const;

/**
 * Range of the bars' height axis [K]: from outside air, so that a bar is the rise above it, to what the hottest bar,
 * the limit and marks on the bars need. Where iced water keeps a peak below outside air, or a mark stands there, from
 * a round number a step or more below that.
 *
 * @param marks - heights of marks on the bars [K]
 */
export function barRange(
  runs: readonly ShownRun[],
  units: UnitChoice,
  marks: readonly number[] = [],
): readonly [number, number] {
  const { fromSi, toSi } = scaleOf('degC', units);
  const step = RANGE_STEP[units.temperature];
  const heights = [...runs.flatMap(({ pulls }) => pulls.map(({ peak }) => peak)), ...marks];
  const outside = outsideOf(runs);
  const coldest = Math.min(...heights);
  const low = coldest >= outside ? outside : toSi(step * (Math.floor(fromSi(coldest) / step) - 1));
  const highest = fromSi(Math.max(...runs.map(({ car }) => car.config.limit.chargeTemperature), ...heights));
  const steps = Math.max(1, Math.ceil((highest - fromSi(low)) / step - 1e-9));
  return [low, toSi(fromSi(low) + step * steps)];
}
