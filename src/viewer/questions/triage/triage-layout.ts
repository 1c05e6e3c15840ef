import type { Triage } from '../../../sim/index.ts';
import { acrossPaper, type Paper, upPaper } from '../../figures/axes.tsx';
import type { Spot } from '../../figures/scales.tsx';
import { roundRange, ticksOn } from '../../figures/ticks.ts';
import { briefly, scaleOf } from '../../format.ts';
import type { UnitChoice } from '../../state/display.ts';
import { boxOf, placedLabels, sharing } from './shared-labels.ts';
import { heldIn, triageRanges } from './triage-ranges.ts';

export const PAPER: Paper = { width: 360, height: 300, left: 34, right: 8, top: 22, foot: 36 };
/** From the ends of the axes to the frame, so that no mark is cut. */
const INSET = 9;
const MOST_TICKS = 6;
/** Marks nearer together than this cover each other. */
const COVERED = 9;
/** What the axes frame: where labels may stand. */
const FRAME = boxOf([
  { x: PAPER.left, y: PAPER.top },
  { x: PAPER.width - PAPER.right, y: PAPER.height - PAPER.foot },
]);

/** Where everything stands on paper; marks are in the order of the causes, numbers count them from 1. */
export function triageLayout(triage: Triage, units: UnitChoice) {
  const { reading, candidates } = triage;
  const { fromSi } = scaleOf('K', units);
  const { rise, approach, isCrowded } = triageRanges(triage);
  const across = axisOf(rise.map(fromSi), acrossPaper);
  const up = axisOf(approach.map(fromSi), upPaper);
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
    FRAME,
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

function axisOf([low, high]: readonly number[], placer: typeof acrossPaper | typeof upPaper) {
  const range = roundRange(low, high, MOST_TICKS);
  return { range, ticks: ticksOn(range, MOST_TICKS), place: placer(PAPER, range, INSET), write: briefly };
}

/** Degrees clockwise from the right to where something beyond the edge lies; absent where it is within. */
function turnOf(right: number, high: number): number | undefined {
  return right === 0 && high === 0 ? undefined : (Math.atan2(0 - high, right) * 180) / Math.PI;
}
