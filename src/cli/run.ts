import {
  type Config,
  compareCooling,
  conduct,
  explainCooling,
  FILE_WORDING,
  type RunOptions,
  type RunReport,
  reportRun,
  type Scenario,
  seriesToCsv,
  startRun,
  studyAirBand,
  summarisePulls,
  type TimeSeries,
  toConfig,
  variants,
} from '../sim/index.ts';
import { EXIT } from './exit-codes.ts';
import { readScenarioFile, scenarioOf } from './read-scenario.ts';
import { reportAsText } from './text-report.ts';

export interface RunCommandOptions {
  readonly variant?: string;
  readonly allVariants?: true;
  readonly json?: true;
  readonly csv?: true;
  readonly interval?: number;
  readonly tolerance?: number;
}

/** Name of the file as it stands among its variants. */
const AS_IT_STANDS = undefined;
/** Rows that --interval may add to one run: a table of a million is beyond any reader. */
const MOST_ROWS = 1e6;
/** A run longer than this tells how far it is, this often [ms]. */
const PROGRESS_AFTER = 1000;

/** Runs a file, one of its variants, or all of them, and prints the answers. */
export function run(file: string, options: RunCommandOptions): number {
  const scenario = readScenarioFile(file);
  if (typeof scenario === 'number') return scenario;
  const names = options.allVariants ? [AS_IT_STANDS, ...variants(scenario)] : [options.variant];
  const configs: { name: string | undefined; config: Config }[] = [];
  for (const name of names) {
    const car = scenarioOf(file, scenario, name);
    if (car === undefined) return EXIT.badUsage;
    const config = toConfig(car);
    if (hasTooManyRows(config, options)) return EXIT.badUsage;
    configs.push({ name, config });
  }

  const reports: RunReport[] = [];
  for (const { name, config } of configs) {
    const started = performance.now();
    const series = runWithProgress(config, options);
    const solved = performance.now();
    if (options.csv) {
      process.stdout.write(seriesToCsv(series));
      if (series.outcome.kind === 'stopped') {
        console.error(`stopped at ${series.outcome.time.toFixed(1)} s: ${series.outcome.reason}`);
      }
      return series.outcome.kind === 'finished' ? EXIT.done : EXIT.stopped;
    }
    const report = reportRun(config, series, name);
    reports.push(report);
    if (!options.json) console.log(reportAsText(report));
    if (!options.json && name !== undefined) printComparison(scenario, config, series);
    const label = name === undefined ? 'solved' : `${name}: solved`;
    console.error(
      `${label} in ${(solved - started).toFixed(0)} ms, ${series.work.steps} steps; answers ${(performance.now() - solved).toFixed(0)} ms`,
    );
  }
  if (options.json) console.log(JSON.stringify(options.allVariants ? reports : reports[0], undefined, 2));
  return reports.every(({ outcome }) => outcome === 'finished') ? EXIT.done : EXIT.stopped;
}

/** The first pull of a car, with the air it takes at both ends of the swallowing exponent. */
function firstPull(config: Config, series: TimeSeries) {
  const pull = summarisePulls(series, config.limit.chargeTemperature)[0];
  return pull && { pull, airBand: conduct(studyAirBand(config, pull.pull)) };
}

/** What the variant's other charge temperature does to the engine's air, against the file as it stands. */
function printComparison(scenario: Scenario, config: Config, series: TimeSeries): void {
  const base = toConfig(scenario);
  const before = firstPull(base, runWithProgress(base, {}));
  const after = firstPull(config, series);
  if (before === undefined || after === undefined) return;
  console.log(
    `Against the file as it stands, first pull. ${explainCooling(compareCooling(before, after), config.compressor, FILE_WORDING)}\n`,
  );
}

/** Whether an interval would record more rows than anybody reads; says so. */
export function hasTooManyRows(config: Config, { interval }: Pick<RunCommandOptions, 'interval'>): boolean {
  const { duration } = startRun(config);
  const rows = interval === undefined ? 0 : duration / interval;
  if (rows <= MOST_ROWS) return false;
  console.error(
    `--interval ${interval} s over ${duration} s records ${rows.toPrecision(2)} rows; expected at least ${duration / MOST_ROWS} s, for a million rows.`,
  );
  return true;
}

function runWithProgress(config: Config, { interval, tolerance }: RunCommandOptions): TimeSeries {
  const options: RunOptions = {
    ...(interval === undefined ? {} : { interval }),
    ...(tolerance === undefined ? {} : { tolerance }),
  };
  const underWay = startRun(config, options);
  let nextWord = performance.now() + PROGRESS_AFTER;
  while (underWay.step()) {
    if (performance.now() < nextWord) continue;
    console.error(`${underWay.time.toFixed(0)} of ${underWay.duration.toFixed(0)} s simulated`);
    nextWord += PROGRESS_AFTER;
  }
  return underWay.finish();
}
