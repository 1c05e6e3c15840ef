/** The only door into the library. */
export { BOTTLENECK_PARTS, type Bottleneck, type BottleneckPart } from './answers/bottleneck.ts';
export { type PullSummary, summarisePulls } from './answers/pull-summary.ts';
export { countPulls, decidingPull, type PullsToLimit } from './answers/pulls-to-limit.ts';
export { ENERGY_LABELS, type RunReport, reportRun } from './answers/run-report.ts';
export type { Study } from './answers/study.ts';
export { type RunStudy, studyRun } from './answers/study-run.ts';
export { seriesToCsv } from './results/csv.ts';
export { COLUMNS, type ColumnName, type CoreFields, type PhaseSpan, type TimeSeries } from './results/time-series.ts';
export type { Config } from './scenario/config.ts';
export { describeParameters, parameterGroups } from './scenario/guide.ts';
export type { Fix, Issue, JsonObject, JsonValue } from './scenario/issue.ts';
export { parseScenario } from './scenario/parse.ts';
export { stepsOf, withValue } from './scenario/place.ts';
export type { Scenario } from './scenario/scenario.ts';
export { toConfig } from './scenario/to-config.ts';
export { applyVariant, variants } from './scenario/variants.ts';
export { type RunOptions, startRun } from './simulate.ts';
export { convert, type FileUnit, fromSi, toSi } from './units.ts';
