import type { ComponentChildren } from 'preact';
import { LevelLines, placeOn, UprightLines } from './scales.tsx';
import { tickWriter } from './ticks.ts';

/** A sheet that a figure is drawn on [px]: its size, and how far the axes stand from its edges. */
export interface Paper {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly foot: number;
}

/** An axis with lines at its ticks. */
export interface Axis {
  /** with its unit; absent: it is said elsewhere */
  readonly title?: string;
  readonly ticks: readonly number[];
  readonly place: (value: number) => number;
  /** absent: with the digits that tell each tick from the next */
  readonly write?: (tick: number) => string;
}

type Range = readonly [low: number, high: number];

/** Places values of a range across a paper, its ends so far inside the axes [px]. */
export const acrossPaper = ({ left, width, right }: Paper, range: Range, inside = 0) =>
  placeOn(range, left + inside, width - right - inside);

/** Places values of a range up a paper, its ends so far inside the axes [px]. */
export const upPaper = ({ height, foot, top }: Paper, range: Range, inside = 0) =>
  placeOn(range, height - foot - inside, top + inside);

interface AxesProps {
  readonly paper: Paper;
  /** what the figure shows and where its numbers stand, for who cannot see it */
  readonly label: string;
  readonly class?: string;
  readonly up: Axis;
  /** absent: shared with the figure below */
  readonly across?: Axis;
  /** what lies on the axes */
  readonly children: ComponentChildren;
}

/** A figure on two axes: lines at round values with their numbers, titles above at the left and below at the right. */
export function Axes({ paper, label, class: look, up, across, children }: AxesProps) {
  const { width, height, left, top } = paper;
  const [right, bottom] = [width - paper.right, height - paper.foot];
  return (
    <svg class={look} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
      <LevelLines ticks={up.ticks} place={up.place} write={up.write ?? tickWriter(up.ticks)} from={left} to={right} />
      {across && (
        <UprightLines
          ticks={across.ticks}
          place={across.place}
          write={across.write ?? tickWriter(across.ticks)}
          from={bottom}
          to={top}
        />
      )}
      {children}
      {up.title && (
        <text x={0} y={12}>
          {up.title}
        </text>
      )}
      {across?.title && (
        <text x={right} y={height - 6} text-anchor="end">
          {across.title}
        </text>
      )}
    </svg>
  );
}
