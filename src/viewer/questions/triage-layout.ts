import type { Triage } from '../../sim/index.ts';
import { placeOn } from '../figures/scales.tsx';
import { roundRange, roundStep, ticksBetween } from '../figures/ticks.ts';
import { scaleOf } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';
import { boxOf, placedLabels, type Spot, sharing } from './shared-labels.ts';
import { heldIn, triageRanges } from './triage-ranges.ts';

export const PAPER = { width: 360, height: 300, left: 34, right: 352, top: 22, bottom: 264 };
/** From the ends of the axes to the frame, so that no mark is cut. */
const INSET = 9;
const MOST_TICKS = 6;
/** Marks nearer together than this cover each other. */
const COVERED = 9;
const FREE = {
  x: (PAPER.left + PAPER.right) / 2,
  y: (PAPER.top + PAPER.bottom) / 2,
  width: PAPER.right - PAPER.left,
  height: PAPER.bottom - PAPER.top,
};

/** Where everything stands on paper; marks are in the order of the causes, numbers count them from 1. */
export function triageLayout(triage: Triage, units: UnitChoice) {
  const { reading, candidates } = triage;
  const { fromSi } = scaleOf('K', units);
  const { rise, approach, isCrowded } = triageRanges(triage);
  const across = axisOf(rise, fromSi, PAPER.left + INSET, PAPER.right - INSET);
  const up = axisOf(approach, fromSi, PAPER.bottom - INSET, PAPER.top + INSET);
  const measured: Spot = { x: across.place(fromSi(reading.rise)), y: up.place(fromSi(reading.approach)) };
  const marks = candidates.map((candidate) => {
    const right = heldIn(across.range, fromSi(candidate.rise));
    const high = heldIn(up.range, fromSi(candidate.approach));
    const turn = turnOf(right.beyond, high.beyond);
    return { x: across.place(right.value), y: up.place(high.value), ...(turn !== undefined && { turn }) };
  });
  const ring = {
    ...measured,
    width: 2 * Math.abs(across.place(fromSi(reading.riseDoubt)) - across.place(0)),
    height: 2 * Math.abs(up.place(fromSi(reading.approachDoubt)) - up.place(0)),
  };
  const groups = sharing(marks, COVERED);
  const labels = placedLabels(
    [
      ...groups.map((group) => ({
        text: group.map((k) => k + 1).join(', '),
        of: boxOf(group.map((k) => marks[k])),
      })),
      { text: 'measured', of: ring },
    ],
    [measured, ...marks],
    FREE,
  );
  return {
    across,
    up,
    ring,
    marks,
    numbers: groups.map((group, k) => ({ ...labels[k], group })),
    said: labels[groups.length],
    isCrowded,
  };
}

function axisOf([low, high]: readonly [number, number], fromSi: (si: number) => number, from: number, to: number) {
  const range = roundRange(fromSi(low), fromSi(high), MOST_TICKS);
  const ticks = ticksBetween(...range, roundStep((range[1] - range[0]) / MOST_TICKS));
  return { range, ticks, place: placeOn(range, from, to) };
}

/** Degrees clockwise from the right to where something beyond the edge lies; absent where it is within. */
function turnOf(right: number, high: number): number | undefined {
  return right === 0 && high === 0 ? undefined : (Math.atan2(0 - high, right) * 180) / Math.PI;
}
