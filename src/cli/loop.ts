import {
  convert,
  explainOperatingPoint,
  FILE_WORDING,
  type OperatingPoint,
  operatingPoint,
  toSi,
  WHY_NO_ANSWER,
} from '../sim/index.ts';
import { csvOf } from './csv.ts';
import { EXIT } from './exit-codes.ts';
import { noAnswer } from './no-answer.ts';
import { type FormOptions, printAnswer } from './print-answer.ts';
import { readConfig } from './read-scenario.ts';
import { signed } from './signed.ts';

export interface LoopCommandOptions extends FormOptions {
  readonly variant?: string;
  /** degC */
  readonly at?: number;
}

/** Prints where pump and loop meet, what takes the pressure, and what the next bore or pump buys. */
export function loop(file: string, options: LoopCommandOptions): number {
  const config = readConfig(file, options.variant);
  if (typeof config === 'number') return config;
  const temperature = options.at === undefined ? undefined : toSi(options.at, 'degC');
  const point = operatingPoint(config, temperature);
  if (point === undefined) {
    return noAnswer(WHY_NO_ANSWER.noPump, false);
  }
  printAnswer(options, {
    json: () => point,
    csv: () => asCsv(point),
    text: () => lines(point),
  });
  return EXIT.done;
}

const perMinute = (flow: number): number => convert(flow, 'm3/s', 'L/min');
const litres = FILE_WORDING.flow;
const kilopascals = (pressure: number): string => `${(pressure / 1e3).toFixed(2)} kPa`;

function lines(point: OperatingPoint): string[] {
  const { flow, rating, losses, steps, straightLineFlow } = point;
  const total = losses.reduce((sum, { pressure }) => sum + pressure, 0);
  const width = Math.max(...losses.map(({ name }) => name.length), ...steps.map(({ name }) => name.length));
  return [
    `Coolant flow in ${point.phase}, coolant at ${convert(point.temperature, 'K', 'degC').toFixed(0)} degC: ${litres(flow)} at ${kilopascals(point.pressure)}.`,
    `Free flow on the pump's label: ${litres(rating)}, never the flow in a loop.`,
    ...(straightLineFlow === undefined
      ? []
      : [`A straight line between its two figures would give ${litres(straightLineFlow)}.`]),
    ...explainOperatingPoint(point, FILE_WORDING).map(({ text }) => text),
    '',
    'What takes the pressure:',
    ...losses.map(
      ({ name, pressure, flow: through }) =>
        `  ${name.padEnd(width)}  ${kilopascals(pressure).padStart(10)}  ${percent(pressure / total)}${through === flow ? '' : `  at ${litres(through)}`}`,
    ),
    '',
    'What one change would make of the flow:',
    ...steps.map(
      ({ name, flow: next }) =>
        `  ${name.padEnd(width)}  ${litres(next).padStart(10)}  ${signed(perMinute(next - flow), 1)} L/min`,
    ),
  ];
}

const percent = (share: number): string => `${(100 * share).toFixed(0).padStart(3)} %`;

/** What takes the pressure, largest first. */
const asCsv = ({ losses }: OperatingPoint): string =>
  csvOf(
    ['part', 'pressure [Pa]', 'flow [m3/s]'],
    losses.map(({ name, pressure, flow }) => [name, pressure, flow]),
  );
