import { briefly } from '../format.ts';
import { roundStep, ticksBetween } from '../time/ticks.ts';

/** Where a picture draws: its size and its margins, in its own units. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly foot: number;
}

/** A number's place between the ends of an axis, drawn from `from` to `to`. */
export const placed =
  (low: number, high: number, from: number, to: number) =>
  (value: number): number =>
    from + ((value - low) / (high - low)) * (to - from);

interface ValueAxisProps {
  readonly low: number;
  readonly high: number;
  /** about so many lines */
  readonly lines?: number;
  readonly y: (value: number) => number;
  readonly frame: Frame;
}

/** Lines across a picture at round values, each with its number. */
export function ValueAxis({ low, high, lines = 5, y, frame: { width, left, right } }: ValueAxisProps) {
  return (
    <g>
      {ticksBetween(low, high, roundStep((high - low) / lines)).map((value) => (
        <g key={value}>
          <line class="grid" x1={left} x2={width - right} y1={y(value)} y2={y(value)} />
          <text x={left - 6} y={y(value) + 4} text-anchor="end">
            {briefly(value)}
          </text>
        </g>
      ))}
    </g>
  );
}
