import type { GaugeReading } from '../../sim/index.ts';
import { signedDifference } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';
import { type Bar, type BarSlots, LETTER } from './bars.ts';
import type { ShownRun } from './runs.ts';

/** What the gauge showed at the end of a pull [K]. */
export interface GaugeMark {
  readonly pull: number;
  readonly gauge: number;
  /** what a gauge would show in the model, and that less the gauge; absent where the pull is not solved */
  readonly model?: { readonly indicated: number; readonly miss: number };
}

/** The readings of pulls that a run has, each beside the model. */
export function gaugeMarks(run: ShownRun | undefined, readings: readonly GaugeReading[]): GaugeMark[] {
  const planned = run?.phases.at(-1)?.pull ?? 0;
  return readings
    .filter(({ pull }) => pull <= planned)
    .map(({ pull, indicated }) => {
      const model = run?.pulls.find((each) => each.pull === pull)?.atEnd.indicatedTemperature;
      if (model === undefined) return { pull, gauge: indicated };
      return { pull, gauge: indicated, model: { indicated: model, miss: model - indicated } };
    });
}

/** Every temperature that marks stand at [K]. */
export const heightsOf = (marks: readonly GaugeMark[]): number[] =>
  marks.flatMap(({ gauge, model }) => (model === undefined ? [gauge] : [gauge, model.indicated]));

/** Model less gauge as it is written; '' where the pull is not solved. */
export const missOf = ({ model }: GaugeMark, units: UnitChoice): string =>
  model === undefined ? '' : signedDifference(model.miss, units);

/** What is left free left and right of a miss [px]. */
const BESIDE_DOT = 6;
const BEFORE_NEXT = 8;
/** The middle of a miss keeps this far off the line of the limit [px]. */
const OFF_LINE = 9;

/** Whether the misses find room between the bars: all of them, or none is written. */
export function haveRoom(misses: readonly string[], { slot, width, count }: BarSlots): boolean {
  const longest = Math.max(0, ...misses.map((miss) => miss.length));
  return longest > 0 && slot - count * width >= BESIDE_DOT + LETTER * longest + BEFORE_NEXT;
}

/** A mark in the drawing [px]. */
export interface PlacedMark {
  readonly pull: number;
  readonly x: number;
  readonly dot: number;
  readonly radius: number;
  readonly tick?: { readonly y: number; readonly half: number };
  /** `y`: its middle */
  readonly miss?: { readonly text: string; readonly x: number; readonly y: number };
}

const LARGEST_DOT = 4.5;
const SMALLEST_DOT = 2;
/** A tick reaches so far over its bar, and over the dot where that is wider [px]. */
const OVER_BAR = 2;
const OVER_DOT = 2.5;

interface MarksFrame {
  readonly bars: readonly Bar[];
  readonly slot: number;
  readonly y: (kelvin: number) => number;
  /** where the line of the limit is, and the end of the drawing [px] */
  readonly limit: number;
  readonly right: number;
  /** what is written beside a dot; left out: nothing */
  readonly write?: ((mark: GaugeMark) => string) | undefined;
}

/** Puts dots and ticks on the middle of the bars of the car in hand, and the misses right of them. */
export function placeMarks(
  marks: readonly GaugeMark[],
  { bars, slot, y, limit, right, write }: MarksFrame,
): PlacedMark[] {
  return marks.flatMap((mark) => {
    const bar = bars.findLast(({ pull }) => pull === mark.pull);
    if (bar === undefined) return [];
    const x = bar.x + bar.width / 2;
    const radius = Math.max(SMALLEST_DOT, Math.min(LARGEST_DOT, 0.3 * slot));
    const dot = y(mark.gauge);
    const half = Math.max(bar.width / 2 + OVER_BAR, radius + OVER_DOT);
    const text = write?.(mark) ?? '';
    const beside = bar.x + bar.width + BESIDE_DOT;
    const isWritten = text !== '' && beside + LETTER * text.length <= right;
    return {
      pull: mark.pull,
      x,
      dot,
      radius,
      ...(mark.model !== undefined && { tick: { y: y(mark.model.indicated), half } }),
      ...(isWritten && { miss: { text, x: beside, y: clearOfLine(dot, limit) } }),
    };
  });
}

/** The middle of a text kept off a line, on the side it stands on. */
const clearOfLine = (middle: number, line: number): number =>
  middle <= line ? Math.min(middle, line - OFF_LINE) : Math.max(middle, line + OFF_LINE);

/** Height of the digits of a number, and what is left free between it and a mark [px]. */
const DIGITS_HEIGHT = 10;
const CLEAR = 3;
const HALF_TICK = 2;
const HALF_LINE = 1;
/** The foot of a number is so far over the top of its bar, or so far under it where it stands inside [px]. */
const OVER_TOP = 5;
const UNDER_TOP = 15;
/** What is left below a number inside its bar, at least [px]. */
const OVER_FLOOR = 7;

interface NumberOfBar {
  /** of its bar [px] */
  readonly top: number;
  readonly floor: number;
  /** from where to where it reaches [px] */
  readonly span: readonly [number, number];
  /** whether it stands inside where there is room */
  readonly mayBeInside: boolean;
}

/**
 * Where the foot of a bar's number stands so that it touches no dot, no tick and no line across the bars: under them
 * inside, or over them.
 *
 * @param lines - where lines across the bars are [px]
 */
export function numberFoot(
  { top, floor, span: [from, to], mayBeInside }: NumberOfBar,
  marks: readonly PlacedMark[],
  lines: readonly number[],
): { readonly foot: number; readonly isInside: boolean } {
  const ofMarks = marks
    .flatMap(({ x, dot, radius, tick }) => [
      { x, half: radius, top: dot - radius, bottom: dot + radius },
      ...(tick ? [{ x, half: tick.half, top: tick.y - HALF_TICK, bottom: tick.y + HALF_TICK }] : []),
    ])
    .filter(({ x, half }) => x + half > from && x - half < to);
  const inTheWay = [...ofMarks, ...lines.map((line) => ({ top: line - HALF_LINE, bottom: line + HALF_LINE }))].sort(
    (a, b) => a.top - b.top,
  );
  const touches = (foot: number, mark: (typeof inTheWay)[number]): boolean =>
    mark.bottom > foot - DIGITS_HEIGHT - CLEAR && mark.top < foot + CLEAR;
  if (mayBeInside) {
    const lowered = inTheWay.reduce(
      (foot, mark) => (touches(foot, mark) ? mark.bottom + CLEAR + DIGITS_HEIGHT : foot),
      top + UNDER_TOP,
    );
    if (lowered <= floor - OVER_FLOOR) return { foot: lowered, isInside: true };
  }
  const lifted = inTheWay.reduceRight((foot, mark) => (touches(foot, mark) ? mark.top - CLEAR : foot), top - OVER_TOP);
  return { foot: lifted, isInside: false };
}
