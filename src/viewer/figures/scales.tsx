/** Puts values on paper: `low` of the range at `from`, `high` at `to`. */
export const placeOn =
  ([low, high]: readonly [number, number], from: number, to: number): ((value: number) => number) =>
  (value) =>
    from + ((value - low) / (high - low)) * (to - from);

interface GridProps {
  readonly ticks: readonly number[];
  readonly place: (value: number) => number;
  readonly write: (value: number) => string;
  /** where the lines begin and end; the numbers stand at the beginning */
  readonly from: number;
  readonly to: number;
}

/** Level lines at round values, with the values at their left. */
export function LevelLines({ ticks, place, write, from, to }: GridProps) {
  return (
    <>
      {ticks.map((tick) => (
        <g key={tick}>
          <line class="grid" x1={from} x2={to} y1={place(tick)} y2={place(tick)} />
          <text x={from - 6} y={place(tick) + 4} text-anchor="end">
            {write(tick)}
          </text>
        </g>
      ))}
    </>
  );
}

/** Upright lines at round values, with the values below. */
export function UprightLines({ ticks, place, write, from, to }: GridProps) {
  return (
    <>
      {ticks.map((tick) => (
        <g key={tick}>
          <line class="grid" x1={place(tick)} x2={place(tick)} y1={from} y2={to} />
          <text x={place(tick)} y={from + 14} text-anchor="middle">
            {write(tick)}
          </text>
        </g>
      ))}
    </>
  );
}

/** A place on paper: to the right and downwards. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** The points of a line through places, as SVG writes them. */
export const polylineOf = (spots: readonly Spot[]): string =>
  spots.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ');
