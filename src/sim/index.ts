/** The only door into the library. */
export { explainAgreement } from './answers/agreement-sentences.ts';
export { studyAirBand } from './answers/air-band.ts';
export { type BottleneckPart, CAUSE_WORDS, causeInWords } from './answers/bottleneck.ts';
export type { RouteComparison, RouteFigures } from './answers/bypass-routes.ts';
export {
  type CarAgreement,
  GAUGE_RANGE,
  GAUGE_STEP_RANGE,
  type GaugeReading,
  studyCarAgreement,
} from './answers/car-agreement.ts';
export { ESTIMATE_CAUTION, freezeCaution, LOOP_CAUTIONS } from './answers/cautions.ts';
export { readChargeTable } from './answers/charge-table.ts';
export { type ComparedFigures, type Comparison, studyComparison } from './answers/comparison.ts';
export { compareCooling, explainCooling } from './answers/cooling-consequence.ts';
export { type CoreDesignStudy, type SizeChange, studyCoreDesign } from './answers/core-designer.ts';
export { type CoreDropStudy, type DropFigures, studyCoreDrop } from './answers/core-drop.ts';
export { explainCoreDrop } from './answers/core-drop-sentence.ts';
export {
  type CoreMap,
  type CoreMapLists,
  type CoreMapPoint,
  coreMapLists,
  studyCoreMap,
} from './answers/core-map.ts';
export { explainDay, explainHottestDay } from './answers/day-sentences.ts';
export type { Finding, FindingKind, FindingRank } from './answers/finding.ts';
export { findings } from './answers/findings.ts';
export { type Letter, type LetterRun, writeLetter } from './answers/letter.ts';
export { type QuestionSlot, questionPieces } from './answers/letter-question.ts';
export { explainCount, isStopped } from './answers/letter-rules.ts';
export { measuredIn } from './answers/measured-flow.ts';
export { type OperatingPoint, operatingPoint } from './answers/operating-point.ts';
export { explainOperatingPoint } from './answers/operating-point-sentences.ts';
export { type DayStudy, type HottestDay, studyDay, studyHottestDay } from './answers/other-day.ts';
export { type PullSummary, summarisePulls } from './answers/pull-summary.ts';
export { countPulls, decidingPull } from './answers/pulls-to-limit.ts';
export { explainRest } from './answers/rest-sentence.ts';
export { type RestStudy, studyRest } from './answers/rest-time.ts';
export { explainRoutes } from './answers/route-sentence.ts';
export { type RouteStudy, studyRoutes, type TurnLine } from './answers/route-turns.ts';
export { ENERGY_LABELS, type RunReport, reportRun } from './answers/run-report.ts';
export { type RankedInput, type Sensitivity, studySensitivity } from './answers/sensitivity.ts';
export { explainRanking, explainSensitivity, rangeInWords } from './answers/sensitivity-sentences.ts';
export { explainLateReturn, explainStore, storeSize } from './answers/store-sentence.ts';
export { conduct, conductWith, type RunJob, runJob, type Study, startJob } from './answers/study.ts';
export { type RunStudy, studyRun } from './answers/study-run.ts';
export {
  evenly,
  type GridAxis,
  gridPlan,
  isGridAxis,
  isRange,
  type RangeAxis,
  type SweepAxis,
  type SweepLine,
  type SweepPlan,
  type SweepResult,
  samplePlan,
  studyGrid,
  studySweepCase,
} from './answers/sweep.ts';
export { type StoreKind, type StoreStudy, soonestReturn, studyStore } from './answers/tank-size.ts';
export { studyTriage, TRIAGE_DOUBTS, TRIAGE_RANGE, type Triage, type TriageReading } from './answers/triage.ts';
export { LAST_PULL_OF_TRIAGE } from './answers/triage-quantities.ts';
export { explainTriage } from './answers/triage-sentences.ts';
export { issuesOfRanges, type OwnRange, type UncertainInput, uncertainInputs } from './answers/uncertain-inputs.ts';
export type { UpgradeWay } from './answers/upgrade-order.ts';
export { explainSteps, explainUpgrades, moneyText, type UpgradeWords } from './answers/upgrade-sentences.ts';
export {
  fittedUpgrades,
  studyUpgrades,
  type Upgrade,
  type UpgradeStep,
  type UpgradeStudy,
  upgradeSets,
} from './answers/upgrade-steps.ts';
export { WHY_NO_ANSWER, whyNoSuchPull } from './answers/why-no-answer.ts';
export { durationFigure, FILE_WORDING, type Wording, written } from './answers/wording.ts';
export { createCoolant } from './fluids/coolant.ts';
export { AIR_GAS_CONSTANT } from './fluids/moist-air.ts';
export { CentrifugalCompressor } from './model/centrifugal-compressor.ts';
export { airDropTimesDensity } from './model/drop-laws.ts';
export { loopVolume } from './model/loop-volume.ts';
export { seriesToCsv } from './results/csv.ts';
export { COLUMNS, type ColumnName, type CoreFields, type PhaseSpan, type TimeSeries } from './results/time-series.ts';
export { carAlone } from './scenario/changes.ts';
export { firstPullOf, isPartLoad, isPumped, phasesOf, pullsIn, pullsOfCycle } from './scenario/config/cycle.ts';
export { type LinePlace, type LoopItem, type LoopPart, PART_WORDS } from './scenario/config/loop.ts';
export type { Config } from './scenario/config.ts';
export { type CoreSize, type CoreSizeValues, resizeCore, sizeOfCore } from './scenario/core-size.ts';
export { type ChangedInput, changedInputs, inputInWords } from './scenario/differences.ts';
export { placeOfSource } from './scenario/file-shape.ts';
export { describeParameters } from './scenario/guide.ts';
export {
  counted,
  type Fix,
  type Issue,
  isList,
  isObject,
  type JsonObject,
  type JsonValue,
  listed,
} from './scenario/issue.ts';
export { linePlacesOf } from './scenario/loop.ts';
export { measuredOnOneOf } from './scenario/measured-flow.ts';
export { type Day, onDay } from './scenario/other-day.ts';
export { type ParameterGroup, parameterGroups } from './scenario/parameter-groups.ts';
export { parseScenario } from './scenario/parse.ts';
export { stepsOf, withoutValue, withValue } from './scenario/place.ts';
export { numberRowAt, rowAt } from './scenario/row-at.ts';
export { KEYS_BY_KIND } from './scenario/rules/core-geometry.ts';
export type { Scenario } from './scenario/scenario.ts';
export { type LineKey, lineAfter } from './scenario/shape.ts';
export { isNumberRow, isRequired, isWordRow, type NumberRow, type Parameter, type WordRow } from './scenario/table.ts';
export { BY_TEST, type TestedPart, testPointOf } from './scenario/test-point.ts';
export { toConfig } from './scenario/to-config.ts';
export { applyUpgrades, upgradeClashes } from './scenario/upgrade-list.ts';
export { applyChanges, applyVariant, variants } from './scenario/variants.ts';
export { type RunOptions, simulate, startRun } from './simulate.ts';
export { convert, decimals, type FileUnit, figure, fromSi, readQuantity, toSi } from './units.ts';
