import {
  type Config,
  compareCooling,
  conduct,
  explainCooling,
  FILE_WORDING,
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
  written,
} from '../sim/index.ts';
import { EXIT } from './exit-codes.ts';
import { readScenarioFile, scenarioOf } from './read-scenario.ts';
import { hasTooManyRows } from './row-limit.ts';
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
    const config = configOf(car, options);
    if (hasTooManyRows(config, options)) return EXIT.badUsage;
    configs.push({ name, config });
  }

  const isCompared = !options.json && !options.csv && (options.allVariants || options.variant !== undefined);
  let base: FirstPull | undefined;
  if (isCompared && !options.allVariants) {
    const config = configOf(scenario, options);
    if (hasTooManyRows(config, options)) return EXIT.badUsage;
    base = firstPull(config, runWithProgress(config, options));
  }
  const reports: RunReport[] = [];
  for (const { name, config } of configs) {
    const started = performance.now();
    const series = runWithProgress(config, options);
    const solved = performance.now();
    if (options.csv) {
      process.stdout.write(seriesToCsv(series));
      if (series.outcome.kind === 'stopped') {
        console.error(
          `stopped at ${series.outcome.time.toFixed(1)} s: ${written(series.outcome.reason, FILE_WORDING)}`,
        );
      }
      return series.outcome.kind === 'finished' ? EXIT.done : EXIT.stopped;
    }
    const report = reportRun(config, series, name);
    reports.push(report);
    if (!options.json) console.log(reportAsText(report));
    if (isCompared) {
      const own = firstPull(config, series);
      if (name === AS_IT_STANDS) base = own;
      else printComparison(base, own, config);
    }
    const label = name === undefined ? 'solved' : `${name}: solved`;
    console.error(
      `${label} in ${(solved - started).toFixed(0)} ms, ${series.work.steps} steps; answers ${(performance.now() - solved).toFixed(0)} ms`,
    );
  }
  if (options.json) console.log(JSON.stringify(options.allVariants ? reports : reports[0], undefined, 2));
  return reports.every(({ outcome }) => outcome === 'finished') ? EXIT.done : EXIT.stopped;
}

/** A car with the tolerance asked for, so that every run of its answer has the same. */
function configOf(car: Scenario, { tolerance }: RunCommandOptions): Config {
  const config = toConfig(car);
  return tolerance === undefined ? config : { ...config, numerics: { ...config.numerics, tolerance } };
}

/** The first pull of a car, with the air it takes at both ends of the swallowing exponent. */
type FirstPull = Parameters<typeof compareCooling>[0];

function firstPull(config: Config, series: TimeSeries): FirstPull | undefined {
  const pull = summarisePulls(series, config.limit.chargeTemperature).at(0);
  return pull && { pull, airBand: conduct(studyAirBand(config, pull.pull)) };
}

/** What the variant's other charge temperature does to the engine's air, against the file as it stands. */
function printComparison(before: FirstPull | undefined, after: FirstPull | undefined, { compressor }: Config): void {
  if (before === undefined || after === undefined) return;
  const said = explainCooling(compareCooling(before, after), compressor, FILE_WORDING);
  console.log(`Against the file as it stands, first pull. ${said}\n`);
}

function runWithProgress(config: Config, { interval }: RunCommandOptions): TimeSeries {
  const underWay = startRun(config, interval === undefined ? {} : { interval });
  let nextWord = performance.now() + PROGRESS_AFTER;
  while (underWay.step()) {
    if (performance.now() < nextWord) continue;
    console.error(`${underWay.time.toFixed(0)} of ${underWay.duration.toFixed(0)} s simulated`);
    nextWord += PROGRESS_AFTER;
  }
  return underWay.finish();
}
