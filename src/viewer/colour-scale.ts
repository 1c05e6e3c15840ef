import { interpolateInferno } from 'd3-scale-chromatic';
import { type TimeSeries, toSi } from '../sim/index.ts';
import type { ColourBy } from './state/display.ts';

/** Red, green and blue as they stand on the screen (sRGB), 0 to 255. */
export type Colour = readonly [number, number, number];

/** The one ruler of temperature: it colours the core and is the axis beside it. */
export interface ColourScale {
  /** K */
  readonly low: number;
  /** K */
  readonly high: number;
  /** Colour of a temperature [K]; undefined outside the scale, where things are drawn neutral with their number. */
  colourAt(temperature: number): Colour | undefined;
}

/** degC; wide enough for the cores of demo cars, and the same for both cars on screen */
const USUAL_RANGE = { metal: [25, 75], coolant: [25, 75], air: [25, 125] } as const;
/** K; the range grows by whole steps, so that it rarely moves */
const STEP = 25;

const COLOUR_COUNT = 256;
const COLOURS: readonly Colour[] = Array.from({ length: COLOUR_COUNT }, (_, k) => {
  const written = Number.parseInt(interpolateInferno((k + 0.5) / COLOUR_COUNT).slice(1), 16);
  return [written >> 16, (written >> 8) & 255, written & 255];
});

/**
 * The colour scale of what is shown, over all the runs on screen.
 *
 * The range is fixed (25 to 75 degC, air 25 to 125 degC). Where a core gets colder or hotter than that in any of the
 * runs, at any time, it is widened in steps of 25 K.
 *
 * @param colourBy - metal, coolant or air of the core
 * @param runs - the runs that are compared; those without fields do not count
 */
export function colourScale(colourBy: ColourBy, runs: readonly (TimeSeries | undefined)[]): ColourScale {
  const [usualLow, usualHigh] = USUAL_RANGE[colourBy];
  let low = toSi(usualLow, 'degC');
  let high = toSi(usualHigh, 'degC');
  for (const run of runs) {
    if (run?.core === undefined) continue;
    const [lowest, highest] = extremesOf(run.core[colourBy]);
    low -= STEP * Math.max(0, Math.ceil((low - lowest) / STEP));
    high += STEP * Math.max(0, Math.ceil((highest - high) / STEP));
  }
  return {
    low,
    high,
    colourAt: (temperature) =>
      temperature >= low && temperature <= high
        ? COLOURS[Math.min(COLOUR_COUNT - 1, Math.floor((COLOUR_COUNT * (temperature - low)) / (high - low)))]
        : undefined,
  };
}

/** A colour as style sheets write it. */
export function cssColour([red, green, blue]: Colour): string {
  return `rgb(${red}, ${green}, ${blue})`;
}

/** Black or white, whichever has the higher contrast to a colour: by relative luminance, WCAG 2.2. */
export function inkOn([red, green, blue]: Colour): 'black' | 'white' {
  const linear = (level: number) => {
    const share = level / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  const luminance = 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
  return (luminance + 0.05) / 0.05 > 1.05 / (luminance + 0.05) ? 'black' : 'white';
}

const knownExtremes = new WeakMap<Float32Array, readonly [number, number]>();

function extremesOf(field: Float32Array): readonly [number, number] {
  const known = knownExtremes.get(field);
  if (known !== undefined) return known;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const temperature of field) {
    if (temperature < lowest) lowest = temperature;
    if (temperature > highest) highest = temperature;
  }
  knownExtremes.set(field, [lowest, highest]);
  return [lowest, highest];
}
