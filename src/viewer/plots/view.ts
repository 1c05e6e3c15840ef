import { timeStep } from '../figures/ticks.ts';
import { clockTime, fixed } from '../format.ts';
import type { PlotSpan } from '../state/display.ts';
import { isPull, nameOf, type Phase, phaseAt } from '../time/phases.ts';

/** A stretch of time [s]. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The stretch of time that all plots show. */
export interface View extends Stretch {
  /** where their axis counts from [s] */
  readonly zero: number;
  /** what the axis counts */
  readonly unit: 'seconds' | 'minutes';
  readonly caption: string;
  /** "pull 1", "rest after pull 1", "whole run" */
  readonly name: string;
  /** the pull in it, where it is one pull that is looked at */
  readonly pull?: Phase;
}

/** The one before where nothing in it changed, so that what hangs on a view stays as it is. */
export function unchanged(before: View | undefined, view: View): View {
  if (before === undefined) return view;
  const keys = Object.keys(view) as (keyof View)[];
  const isSame = keys.length === Object.keys(before).length && keys.every((key) => before[key] === view[key]);
  return isSame ? before : view;
}

/** A pull is shown with this share of its length before it, and that much after it. */
export const LEAD = 1 / 6;
export const TAIL = 5 / 6;

/**
 * The stretch around a time: the pull it belongs to with a little before and after, else as much of the rest or
 * warm-up, moving along with the time.
 *
 * @param pinned - the time that is looked at [s]; a time that is only pointed at moves nothing
 */
export function viewOf(
  phases: readonly Phase[],
  length: number,
  span: PlotSpan,
  pinned: number,
  zoom: Stretch | undefined,
): View {
  const view = span === 'whole run' ? wholeRun(length) : aroundPull(phases, length, pinned);
  return zoom === undefined ? view : { ...view, ...zoom };
}

function wholeRun(length: number): View {
  if (length === 0) return { from: 0, to: 1, zero: 0, unit: 'seconds', caption: '', name: '' };
  const unit = length >= 180 ? 'minutes' : 'seconds';
  return { from: 0, to: length, zero: 0, unit, caption: unit, name: 'whole run' };
}

function aroundPull(phases: readonly Phase[], length: number, pinned: number): View {
  const pulls = phases.filter(isPull);
  const phase = phaseAt(phases, pinned);
  if (pulls.length === 0 || phase === undefined) return wholeRun(length);
  const coming = pulls.find(({ start, end }) => pinned >= start - LEAD * (end - start) && pinned <= end);
  const pull = coming ?? pulls.find((each) => each.pull === Math.max(1, phase.pull)) ?? pulls[0];
  const duration = pull.end - pull.start;
  const width = (1 + LEAD + TAIL) * duration;
  const isBefore = coming === undefined && phase.pull === 0;
  // The stretch starts to move when the time comes nearer to its end than it stood to its start.
  const at = coming === undefined ? pinned + LEAD * duration : pull.end + TAIL * duration;
  const to = Math.min(length, isBefore ? Math.max(width, at) : Math.max(at, pull.end + TAIL * duration));
  const from = Math.max(0, to - width);
  const isInView = pull.end > from && pull.start < to;
  const name = nameOf(isInView ? pull : phase);
  const rest = isInView || !isBefore ? { zero: pull.start, caption: `seconds into pull ${pull.pull}` } : undefined;
  const axis = rest ?? { zero: 0, caption: 'seconds' };
  return { from, to, unit: 'seconds', name, ...axis, ...(isInView ? { pull } : {}) };
}

/** Shortest stretch to zoom to [s]. */
const SHORTEST = 0.5;

/** An axis shorter than this leaves its caption little room [px]. */
const SHORT_AXIS = 340;

/** Times with a line and a number on an axis of some width [px], the numbers, and what they count. */
export function timeTicks(
  view: View,
  width: number,
  room: number,
): { times: number[]; texts: string[]; caption: string } {
  const step = timeStep(((view.to - view.from) * room) / Math.max(1, width));
  const times: number[] = [];
  for (let k = Math.ceil((view.from - view.zero) / step); view.zero + k * step <= view.to; k++) {
    times.push(view.zero + k * step);
  }
  const digits = step < 1 ? 1 : 0;
  if (view.name === '') return { times: [], texts: [], caption: '' };
  if (view.unit === 'seconds') {
    const caption = width < SHORT_AXIS ? view.caption.replace('seconds', 's') : view.caption;
    return { times, texts: times.map((time) => fixed(time - view.zero, digits)), caption };
  }
  return step < 60
    ? { times, texts: times.map((time) => clockTime(time, digits)), caption: 'minutes:seconds' }
    : { times, texts: times.map((time) => fixed(time / 60, 0)), caption: view.caption };
}

/** A stretch inside the run and no shorter than the scrubber can move in; undefined where it is the whole run. */
export function heldStretch({ from, to }: Stretch, length: number): Stretch | undefined {
  const width = Math.max(SHORTEST, to - from);
  if (width >= length) return undefined;
  const start = Math.min(Math.max(0, from), length - width);
  return { from: start, to: start + width };
}

/** A stretch made shorter or longer about a time that keeps its place in it. */
export function zoomed({ from, to }: Stretch, about: number, factor: number, length: number): Stretch | undefined {
  const width = (to - from) * factor;
  const start = about - ((about - from) / (to - from)) * width;
  return heldStretch({ from: start, to: start + width }, length);
}
