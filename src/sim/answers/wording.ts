import { counted } from '../scenario/issue.ts';
import type { Sentence } from '../sentence.ts';
import { decimals, fromSi } from '../units.ts';

/** How sentences write quantities in a reader's units; what they take is SI. */
export interface Wording {
  readonly temperature: (kelvin: number) => string;
  readonly difference: (kelvin: number) => string;
  readonly pressure: (pascal: number) => string;
  readonly power: (watts: number) => string;
  /** of coolant, m3/s */
  readonly flow: (volume: number) => string;
  /** a time of the run [s] */
  readonly time: (seconds: number) => string;
  /** how long something lasts [s] */
  readonly duration: (seconds: number) => string;
}

/** As at a terminal and in files: the units of a scenario. */
export const FILE_WORDING: Wording = {
  temperature: (kelvin) => `${decimals(fromSi(kelvin, 'degC'), 1)} degC`,
  difference: (kelvin) => `${decimals(kelvin, 1)} K`,
  pressure: (pascal) => `${decimals(pascal / 1e3, 1)} kPa`,
  power: (watts) => (Math.abs(watts) < 1000 ? `${decimals(watts, 0)} W` : `${decimals(watts / 1e3, 1)} kW`),
  flow: (volume) => `${fromSi(volume, 'L/min').toFixed(1)} L/min`,
  time: (seconds) => `${seconds.toFixed(1)} s`,
  duration: (seconds) => `${durationFigure(seconds)} s`,
};

/** From here on tenths of a second tell nothing [s]. */
const WHOLE_SECONDS_FROM = 100;

/** How long something lasts in figures: "12.0", "1800". */
export const durationFigure = (seconds: number): string => seconds.toFixed(seconds < WHOLE_SECONDS_FROM ? 1 : 0);

/** A sentence of the simulator with its quantities in a reader's units. */
export function written(sentence: Sentence, wording: Pick<Wording, 'temperature' | 'pressure' | 'flow'>): string {
  const pieces = sentence.map((piece) => {
    if (typeof piece === 'string') return piece;
    if ('temperature' in piece) return wording.temperature(piece.temperature);
    return 'pressure' in piece ? wording.pressure(piece.pressure) : wording.flow(piece.flow);
  });
  return pieces.join('');
}

/** "1 pull", "3 pulls". */
export const countedPulls = (count: number): string => counted(count, 'pull');
