import type { TimeSeries } from '../results/time-series.ts';
import type { Config } from '../scenario/config.ts';
import { condensation, fastAirPort, outsideChargeTable, targetPressureLost } from './air-findings.ts';
import { coolantNearBoiling, coolantNearFreezing, iceForms, iceLasts, pumpOff } from './coolant-findings.ts';
import { FINDING_RANKS, type Finding, type FindingSource } from './finding.ts';
import { measuredFlowDiffers, pumpHeldShut, pumpMayCavitate, tankLevel, waitingMeltsIce } from './loop-findings.ts';
import { summarisePulls } from './pull-summary.ts';
import { coreMarks, energyNotClosed, metalConduction, runStopped } from './run-findings.ts';
import { FILE_WORDING, type Wording } from './wording.ts';

/** Everything that is looked for; within a rank the earlier weighs more. */
const SOURCES: readonly FindingSource[] = [
  runStopped,
  energyNotClosed,
  coolantNearBoiling,
  coolantNearFreezing,
  pumpMayCavitate,
  pumpHeldShut,
  tankLevel,
  measuredFlowDiffers,
  condensation,
  targetPressureLost,
  iceLasts,
  fastAirPort,
  iceForms,
  waitingMeltsIce,
  pumpOff,
  outsideChargeTable,
  coreMarks,
  metalConduction,
];

/**
 * What a run tells besides its answer: why it stopped, what to check, what to know. The limit on the charge is the
 * answer itself and not among them.
 *
 * @param wording - how the sentences write temperatures, pressures and times; left out: as a file has them
 * @returns stop, check, note, and within each the weightiest first
 * @example
 * findings(config, series)[0].text // 'The ice is gone at 2092.4 s (lanes), before the end of pull 6, the last: ...'
 */
export function findings(config: Config, series: TimeSeries, wording: Wording = FILE_WORDING): Finding[] {
  const run = { config, series, pulls: summarisePulls(series, config.limit.chargeTemperature), wording };
  const found = SOURCES.flatMap((source) => source(run));
  return FINDING_RANKS.flatMap((rank) => found.filter((finding) => finding.rank === rank));
}
