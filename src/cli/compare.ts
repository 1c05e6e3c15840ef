import {
  type ChangedInput,
  type ComparedFigures,
  type Comparison,
  changedInputs,
  decimals,
  ESTIMATE_CAUTION,
  FILE_WORDING,
  fromSi,
  inputInWords,
  type Scenario,
  studyComparison,
  toConfig,
  variants,
  written,
} from '../sim/index.ts';
import { aligned } from './aligned.ts';
import { csvOf } from './csv.ts';
import { EXIT } from './exit-codes.ts';
import { onAllCores } from './on-all-cores.ts';
import { type FormOptions, printAnswer } from './print-answer.ts';
import { readScenarioFile, scenarioOf } from './read-scenario.ts';
import { hasTooManyRows } from './row-limit.ts';
import { signed } from './signed.ts';
import { underlined } from './underlined.ts';

export interface CompareCommandOptions extends FormOptions {
  /** names between commas */
  readonly variants: string;
  /** s */
  readonly interval: number;
}

const MOST_CARS = 4;
const AS_IT_STANDS = 'as it stands';

interface Car {
  readonly name: string;
  readonly scenario: Scenario;
  readonly changes: readonly ChangedInput[];
}

/** Puts variants of a file beside the file as it stands: what was changed, and what comes of it. */
export async function compare(file: string, options: CompareCommandOptions): Promise<number> {
  const first = readScenarioFile(file);
  if (typeof first === 'number') return first;
  const names = namesIn(options.variants, variants(first));
  if (names.length >= MOST_CARS) {
    console.error(`${names.length} variants and the file as it stands; expected at most ${MOST_CARS} cars in all.`);
    return EXIT.badUsage;
  }
  const cars: Car[] = [{ name: AS_IT_STANDS, scenario: first, changes: [] }];
  for (const name of names) {
    const scenario = scenarioOf(file, first, name);
    if (scenario === undefined) return EXIT.badUsage;
    cars.push({ name, scenario, changes: changedInputs(first, scenario) });
  }
  const configs = cars.map(({ scenario }) => toConfig(scenario));
  if (configs.some((config) => hasTooManyRows(config, options))) return EXIT.badUsage;
  const comparison = await onAllCores(studyComparison(configs, options.interval));
  const stops = comparison.cars.flatMap(({ stoppedBecause }, k) =>
    stoppedBecause === undefined ? [] : [`${cars[k].name} stopped: ${written(stoppedBecause, FILE_WORDING)}`],
  );
  for (const stop of stops) console.error(stop);
  printAnswer(options, {
    json: () => reported(cars, comparison),
    csv: () => curvesAsCsv(cars, comparison),
    text: () => lines(cars, comparison),
  });
  return stops.length > 0 ? EXIT.stopped : EXIT.done;
}

/** Names between commas; a name that has a comma itself is taken whole where the file has it. */
function namesIn(text: string, known: readonly string[]): string[] {
  const parts = text.split(',');
  const names: string[] = [];
  for (let from = 0; from < parts.length; ) {
    const longest = parts.length - from;
    const whole = (count: number): string =>
      parts
        .slice(from, from + count)
        .join(',')
        .trim();
    let count = longest;
    while (count > 1 && !known.includes(whole(count))) count--;
    names.push(whole(count));
    from += count;
  }
  return names;
}

const toCelsius = (kelvin: number): number => fromSi(kelvin, 'degC');

/** A figure with how it is shown, and its difference from the first car, which is scaled alike but not shifted. */
interface Row {
  readonly name: string;
  readonly read: (figures: ComparedFigures) => number | undefined;
  readonly show: (value: number) => number;
  readonly scale: number;
  readonly digits: number;
}

const ROWS: readonly Row[] = [
  { name: 'pulls to the limit', read: ({ count }) => count, show: (value) => value, scale: 1, digits: 0 },
  { name: 'deciding pull', read: ({ decidingPull }) => decidingPull, show: (value) => value, scale: 1, digits: 0 },
  { name: 'deciding peak, degC', read: ({ decidingPeak }) => decidingPeak, show: toCelsius, scale: 1, digits: 1 },
  {
    name: 'coolant flow, L/min',
    read: ({ coolantFlow }) => coolantFlow,
    show: (value) => fromSi(value, 'L/min'),
    scale: fromSi(1, 'L/min'),
    digits: 1,
  },
  {
    name: 'core pressure drop, kPa',
    read: ({ coreAirDrop }) => coreAirDrop,
    show: (value) => value / 1e3,
    scale: 1e-3,
    digits: 2,
  },
  {
    name: 'drive power, kW',
    read: ({ drivePower }) => drivePower,
    show: (value) => value / 1e3,
    scale: 1e-3,
    digits: 2,
  },
  { name: 'air, kg/s', read: ({ airFlow }) => airFlow, show: (value) => value, scale: 1, digits: 4 },
];

function lines(cars: readonly Car[], { cars: compared }: Comparison): string[] {
  const most = Math.max(...compared.map(({ peaks }) => peaks.length));
  const peaks = Array.from(
    { length: most },
    (_, k): Row => ({
      name: `peak of pull ${k + 1}, degC`,
      read: (car) => car.peaks[k],
      show: toCelsius,
      scale: 1,
      digits: 1,
    }),
  );
  const rows = [...ROWS, ...peaks].map(({ name, read, show, scale, digits }) => [
    name,
    ...compared.map((car, k) => {
      const value = read(car);
      if (value === undefined) return '-';
      const shown = decimals(show(value), digits);
      const change = read(car.difference);
      if (k === 0 || change === undefined) return shown;
      return `${shown} (${signed(scale * change, digits)})`;
    }),
  ]);
  return [
    ...underlined(cars[0].scenario.values.name),
    ...cars.flatMap(({ name, changes }, k) => [
      `${k + 1}  ${name}`,
      ...changes.map((change) => `     ${asText(change)}`),
    ]),
    '',
    'In brackets the difference from the first; flow, drop, power and air at the end of pull 1.',
    ...aligned([['', ...cars.map((_, k) => String(k + 1))], ...rows]),
  ];
}

function asText({ path, unit, from, to }: ChangedInput): string {
  return `${path}: ${inputInWords(from)} -> ${inputInWords(to)}${unit === undefined ? '' : ` ${unit}`}`;
}

function reported(cars: readonly Car[], { cars: compared }: Comparison) {
  const figures = (car: ComparedFigures, temperature: (kelvin: number) => number, unit: 'degC' | 'K') => ({
    pulls_to_limit: car.count,
    ...(car.decidingPull !== undefined && { deciding_pull: car.decidingPull }),
    ...(car.decidingPeak !== undefined && { [`deciding_peak_${unit}`]: temperature(car.decidingPeak) }),
    [`peaks_${unit}`]: car.peaks.map(temperature),
    ...(car.coolantFlow !== undefined && { coolant_flow_L_min: fromSi(car.coolantFlow, 'L/min') }),
    ...(car.coreAirDrop !== undefined && { core_air_drop_kPa: car.coreAirDrop / 1e3 }),
    ...(car.drivePower !== undefined && { drive_power_kW: car.drivePower / 1e3 }),
    ...(car.airFlow !== undefined && { air_flow_kg_s: car.airFlow }),
  });
  return {
    scenario: cars[0].scenario.values.name,
    cars: compared.map((car, k) => ({
      name: cars[k].name,
      changed_inputs: cars[k].changes,
      ...figures(car, toCelsius, 'degC'),
      ...(car.stoppedBecause !== undefined && { stopped_because: written(car.stoppedBecause, FILE_WORDING) }),
      ...(k > 0 && { less_first: figures(car.difference, (kelvin) => kelvin, 'K') }),
    })),
    cautions: [ESTIMATE_CAUTION],
  };
}

/** Charge temperatures on one time axis, then each less the first (RFC 4180); nothing where a run is over. */
function curvesAsCsv(cars: readonly Car[], { time, charge }: Comparison): string {
  const heading = [
    'time [s]',
    ...cars.map(({ name }) => `charge temperature, ${name} [degC]`),
    ...cars.slice(1).map(({ name }) => `charge temperature, ${name} less ${cars[0].name} [K]`),
  ];
  const rows = time.map((at, row) => [
    at,
    ...charge.map((curve) => toCelsius(curve[row])),
    ...charge.slice(1).map((curve) => curve[row] - charge[0][row]),
  ]);
  return csvOf(heading, rows);
}
