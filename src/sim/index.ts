/** The only door into the library. */
export { type RunReport, reportRun } from './answers/run-report.ts';
export { seriesToCsv } from './results/csv.ts';
export type { TimeSeries } from './results/time-series.ts';
export type { Config } from './scenario/config.ts';
export { describeParameters } from './scenario/guide.ts';
export type { Issue } from './scenario/issue.ts';
export { parseScenario } from './scenario/parse.ts';
export type { Scenario } from './scenario/scenario.ts';
export { toConfig } from './scenario/to-config.ts';
export { applyVariant, variants } from './scenario/variants.ts';
export { type RunOptions, startRun } from './simulate.ts';
