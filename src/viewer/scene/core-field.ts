import type { CoreFields, TimeSeries } from '../../sim/index.ts';
import type { Colour, ColourScale } from '../colour-scale.ts';
import type { Moment } from '../state/clock.ts';
import type { ColourBy } from '../state/display.ts';

/** Clocks count in steps, so they may overshoot the end of a run by a rounding error [s]. */
const END_SLACK = 1e-3;

/** Whether a series tells anything about a time: it may be a part of a run, or a shorter one. */
export function isSolvedAt(series: TimeSeries, time: number): boolean {
  return series.rowCount > 0 && time <= series.columns.time[series.rowCount - 1] + END_SLACK;
}

/** Temperature of cell (i, j) at a moment, linear between recorded rows [K]. */
export function cellTemperature(core: CoreFields, by: ColourBy, moment: Moment, i: number, j: number): number {
  const field = core[by];
  const cell = i * core.ny + j;
  const cellCount = core.nx * core.ny;
  const now = field[moment.row * cellCount + cell];
  return now + moment.share * (field[moment.nextRow * cellCount + cell] - now);
}

/**
 * Writes the colours of all cells at a moment, row-major with i along the air and j along the coolant.
 *
 * @param neutral - for temperatures that the scale does not cover
 * @param out - red, green, blue and 255 for each of the nx ny cells
 */
export function fillColours(
  core: CoreFields,
  by: ColourBy,
  moment: Moment,
  scale: ColourScale,
  neutral: Colour,
  out: Uint8ClampedArray,
): void {
  const field = core[by];
  const cellCount = core.nx * core.ny;
  const start = moment.row * cellCount;
  const nextStart = moment.nextRow * cellCount;
  for (let cell = 0; cell < cellCount; cell++) {
    const now = field[start + cell];
    const temperature = now + moment.share * (field[nextStart + cell] - now);
    const [red, green, blue] = scale.colourAt(temperature) ?? neutral;
    out[4 * cell] = red;
    out[4 * cell + 1] = green;
    out[4 * cell + 2] = blue;
    out[4 * cell + 3] = 255;
  }
}

/** Writes one colour into all cells. */
export function fillPlain([red, green, blue]: Colour, out: Uint8ClampedArray): void {
  for (let k = 0; k < out.length; k += 4) {
    out[k] = red;
    out[k + 1] = green;
    out[k + 2] = blue;
    out[k + 3] = 255;
  }
}
