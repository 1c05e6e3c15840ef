import { freeFlow } from '../model/loop-flow.ts';
import { ENERGY_TERMS, type TimeSeries } from '../results/time-series.ts';
import type { Config } from '../scenario/config.ts';
import { fromSi } from '../units.ts';
import type { Bottleneck, BottleneckPart } from './bottleneck.ts';
import { ESTIMATE_CAUTION, freezeCaution } from './cautions.ts';
import { readChargeTable } from './charge-table.ts';
import type { Finding } from './finding.ts';
import { findings } from './findings.ts';
import { type PullSummary, summarisePulls } from './pull-summary.ts';
import type { PullsToLimit } from './pulls-to-limit.ts';
import { conduct } from './study.ts';
import { studyRun } from './study-run.ts';
import { heatWhileWaiting } from './waiting-heat.ts';
import { FILE_WORDING, written } from './wording.ts';

/** Everything a run answers, in the units a shop reads; what did not happen is left out. Plain data. */
export interface RunReport {
  readonly scenario: string;
  readonly variant?: string;
  readonly outcome: 'finished' | 'stopped' | 'cancelled';
  readonly stopped_at_s?: number;
  readonly stopped_because?: string;
  readonly pulls_to_limit: PullsToLimitReport;
  readonly findings: readonly FindingReport[];
  readonly pulls: readonly PullReport[];
  /** fall of the deciding pull's peak with one part ideal at a time, largest first */
  readonly held_back_by?: HeldBackReport;
  /** air mass of the deciding pull at both ends of the swallowing exponent */
  readonly air_flow_at_swallowing_exponent?: AirBandReport;
  readonly loop: LoopReport;
  /** heat into the coolant outside the pulls, by name; the ice that all of it together melts */
  readonly waiting?: WaitingReport;
  /** every energy that crossed the boundary, positive into metal, coolant and charge air, and `stored`, their sum */
  readonly energy_kJ: Readonly<Record<string, number>>;
  /** what passed between parts; no terms of the balance */
  readonly energy_inside_kJ: Readonly<Record<'air_to_core' | 'casing_to_core' | 'casing_to_plenum', number>>;
  /** worst gap of any step over the heat moved until then */
  readonly energy_worst_step_gap: number;
  readonly cautions: readonly string[];
  readonly steps: number;
  readonly steps_rejected: number;
  readonly sweeps: number;
}

/** stop, check, note, and within each the weightiest first */
interface FindingReport extends Omit<Finding, 'time'> {
  readonly time_s?: number;
}

interface PullsToLimitReport {
  readonly limit_degC: number;
  readonly count: number;
  readonly pulls_run: number;
  readonly breaking_pull?: number;
  readonly crossed_at_share_of_pull?: number;
  readonly deciding_pull?: number;
  readonly deciding_margin_K?: number;
  readonly time_above_limit_s: number;
  readonly settled: PullsToLimit['settled']['kind'];
  readonly settled_peak_degC?: number;
  readonly settled_after_pulls?: number;
  readonly repeated_run_stopped_because?: string;
  readonly first_pull_over_limit_when_repeated?: number;
  readonly count_with_core_conductance_5_percent_lower: number;
  readonly count_with_core_conductance_5_percent_higher: number;
}

interface HeldBackReport {
  readonly pull: number;
  readonly parts: readonly BottleneckPart[];
  readonly falls: readonly { readonly part: BottleneckPart; readonly fall_K: number }[];
}

interface AirBandReport {
  readonly pull: number;
  readonly exponent_0_kg_s: number;
  readonly exponent_0_5_kg_s: number;
}

interface PullReport {
  readonly pull: number;
  readonly name: string;
  readonly starts_at_s: number;
  readonly peak_degC: number;
  readonly peak_rise_above_ambient_K: number;
  readonly peak_at_s_of_pull: number;
  readonly highest_in_first_second_degC: number;
  readonly indicated_peak_degC: number;
  readonly indicated_peak_to_15_s_after_lift_degC: number;
  readonly margin_K: number;
  readonly crossed_at_share_of_pull?: number;
  readonly time_above_limit_s: number;
  readonly coolant_into_core_at_start_degC: number;
  readonly coolant_into_core_degC: number;
  readonly coolant_out_of_core_degC: number;
  readonly coolant_flow_L_min: number;
  readonly air_flow_kg_s: number;
  readonly pressure_ratio: number;
  readonly manifold_pressure_kPa: number;
  readonly discharge_degC: number;
  readonly heat_into_core_kJ: number;
  readonly latent_heat_kJ: number;
  readonly condensate_g: number;
  readonly ice_left_kg?: number;
  readonly drive_power_kW: number;
  readonly drive_work_kJ: number;
  readonly core_air_drop_kPa: number;
  /** by the shop's own table, at the peak */
  readonly spark_change_deg?: number;
  readonly torque_change_percent?: number;
}

interface WaitingReport {
  readonly duration_s: number;
  readonly heat_kJ: Readonly<Record<'pump' | 'lines' | 'reservoir' | 'core' | 'exchanger' | 'heat_sink', number>>;
  readonly as_ice_kg: number;
}

interface LoopReport {
  readonly flow_at_end_of_first_pull_L_min?: number;
  readonly pump_free_flow_rating_L_min: number;
  readonly coolant_rise_through_core_K?: number;
  readonly hottest_coolant_degC?: number;
  readonly coldest_coolant_degC?: number;
}

/** Makes the report of one run; takes the further runs that the answer needs. */
export function reportRun(config: Config, series: TimeSeries, variant?: string): RunReport {
  const pulls = summarisePulls(series, config.limit.chargeTemperature);
  const { outcome } = series;
  const { answer, bottleneck, airBand } = conduct(studyRun(config, pulls));
  return {
    scenario: config.name,
    ...(variant === undefined ? {} : { variant }),
    outcome: outcome.kind,
    ...(outcome.kind === 'finished' ? {} : { stopped_at_s: outcome.time }),
    ...(outcome.kind === 'stopped' ? { stopped_because: written(outcome.reason, FILE_WORDING) } : {}),
    pulls_to_limit: reportAnswer(answer, pulls),
    findings: findings(config, series).map(reportFinding),
    pulls: pulls.map((pull) => reportPull(pull, config)),
    ...(bottleneck && { held_back_by: reportHeldBack(bottleneck) }),
    ...(airBand && {
      air_flow_at_swallowing_exponent: {
        pull: airBand.pull,
        exponent_0_kg_s: airBand.plainDensity,
        exponent_0_5_kg_s: airBand.steepest,
      },
    }),
    loop: reportLoop(config, series, pulls[0]),
    ...reportWaiting(config, series),
    energy_kJ: reportEnergy(series),
    energy_inside_kJ: {
      air_to_core: series.energy.internal.airToCore / 1e3,
      casing_to_core: series.energy.internal.casingToCore / 1e3,
      casing_to_plenum: series.energy.internal.casingToPlenum / 1e3,
    },
    energy_worst_step_gap: series.energy.worstStepGap,
    cautions: [freezeCaution(config), ESTIMATE_CAUTION],
    steps: series.work.steps,
    steps_rejected: series.work.rejected,
    sweeps: series.work.sweeps,
  };
}

function reportAnswer(answer: PullsToLimit, pulls: readonly PullSummary[]): PullsToLimitReport {
  const deciding = pulls.find(({ pull }) => pull === answer.decidingPull);
  const { settled } = answer;
  return {
    limit_degC: celsius(answer.limit),
    count: answer.count,
    pulls_run: answer.pullsRun,
    ...optional('breaking_pull', answer.breakingPull),
    ...optional('crossed_at_share_of_pull', answer.breakingPull === undefined ? undefined : deciding?.crossedAtShare),
    ...optional('deciding_pull', answer.decidingPull),
    ...optional('deciding_margin_K', deciding?.margin),
    time_above_limit_s: pulls.reduce((sum, { timeAboveLimit }) => sum + timeAboveLimit, 0),
    settled: settled.kind,
    ...(settled.kind === 'no repeated pulls'
      ? {}
      : {
          settled_peak_degC: celsius(settled.peak),
          settled_after_pulls: settled.afterPulls,
          ...optional('first_pull_over_limit_when_repeated', settled.firstOverLimit),
          ...(settled.kind === 'not settled' &&
            settled.stoppedBecause !== undefined && {
              repeated_run_stopped_because: written(settled.stoppedBecause, FILE_WORDING),
            }),
        }),
    count_with_core_conductance_5_percent_lower: answer.countAtLowerConductance,
    count_with_core_conductance_5_percent_higher: answer.countAtHigherConductance,
  };
}

function reportFinding({ time, ...finding }: Finding): FindingReport {
  return { ...finding, ...optional('time_s', time) };
}

function reportHeldBack({ pull, heldBackBy, falls }: Bottleneck): HeldBackReport {
  return { pull, parts: heldBackBy, falls: falls.map(({ part, fall }) => ({ part, fall_K: fall })) };
}

function reportPull(summary: PullSummary, { ambient, chargeTable, reservoir }: Config): PullReport {
  const { atEnd } = summary;
  const byTable = readChargeTable(chargeTable, summary.peak);
  return {
    pull: summary.pull,
    name: summary.name,
    starts_at_s: summary.start,
    peak_degC: celsius(summary.peak),
    peak_rise_above_ambient_K: summary.peak - ambient.temperature,
    peak_at_s_of_pull: summary.peakTime - summary.start,
    highest_in_first_second_degC: celsius(summary.soakPeak),
    indicated_peak_degC: celsius(summary.indicatedPeak),
    indicated_peak_to_15_s_after_lift_degC: celsius(summary.indicatedPeakAfterLift),
    margin_K: summary.margin,
    ...optional('crossed_at_share_of_pull', summary.crossedAtShare),
    time_above_limit_s: summary.timeAboveLimit,
    coolant_into_core_at_start_degC: celsius(summary.coolantIntoCoreAtStart),
    coolant_into_core_degC: celsius(atEnd.coolantIntoCore),
    coolant_out_of_core_degC: celsius(atEnd.coolantOutOfCore),
    coolant_flow_L_min: fromSi(atEnd.coolantFlow, 'L/min'),
    air_flow_kg_s: atEnd.airFlow,
    pressure_ratio: atEnd.pressureRatio,
    manifold_pressure_kPa: atEnd.manifoldPressure / 1e3,
    discharge_degC: celsius(atEnd.dischargeTemperature),
    heat_into_core_kJ: summary.heatIntoCore / 1e3,
    latent_heat_kJ: summary.latentHeat / 1e3,
    condensate_g: 1e3 * summary.condensate,
    ...(reservoir.iceMass > 0 && { ice_left_kg: atEnd.iceMass }),
    drive_power_kW: atEnd.drivePower / 1e3,
    drive_work_kJ: summary.driveWork / 1e3,
    core_air_drop_kPa: atEnd.coreAirDrop / 1e3,
    ...(byTable && { spark_change_deg: byTable.spark, torque_change_percent: 100 * byTable.torque }),
  };
}

function reportWaiting(config: Config, series: TimeSeries): Pick<RunReport, 'waiting'> {
  const heat = heatWhileWaiting(config, series);
  if (heat === undefined) return {};
  const { duration, pump, lines, reservoir, core, exchanger, heatSink, asIce } = heat;
  const heats = { pump, lines, reservoir, core, exchanger, heat_sink: heatSink };
  const inKilojoules = Object.fromEntries(Object.entries(heats).map(([name, joules]) => [name, joules / 1e3]));
  return {
    waiting: { duration_s: duration, heat_kJ: inKilojoules as WaitingReport['heat_kJ'], as_ice_kg: asIce },
  };
}

function reportLoop(config: Config, series: TimeSeries, first: PullSummary | undefined): LoopReport {
  const atEnd = first?.atEnd;
  const { hottestCoolant, coldestCoolant } = series.columns;
  return {
    ...optional('flow_at_end_of_first_pull_L_min', atEnd && fromSi(atEnd.coolantFlow, 'L/min')),
    pump_free_flow_rating_L_min: fromSi(freeFlow(config.pump, 1), 'L/min'),
    ...optional('coolant_rise_through_core_K', atEnd && atEnd.coolantOutOfCore - atEnd.coolantIntoCore),
    ...(series.rowCount > 0 && {
      hottest_coolant_degC: celsius(hottestCoolant.reduce((a, b) => Math.max(a, b))),
      coldest_coolant_degC: celsius(coldestCoolant.reduce((a, b) => Math.min(a, b))),
    }),
  };
}

/** Energy terms by their keys in the report, in words. */
export const ENERGY_LABELS: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(ENERGY_TERMS).map(([term, words]) => [snakeCase(term), words]),
);

function snakeCase(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}

function reportEnergy({ energy }: TimeSeries): RunReport['energy_kJ'] {
  const terms = Object.entries(energy.terms).map(([term, joules]) => [snakeCase(term), joules / 1e3]);
  return { ...Object.fromEntries(terms), stored: energy.stored / 1e3 };
}

function optional<Key extends string, Value>(key: Key, value: Value | undefined): { [K in Key]?: Value } {
  return (value === undefined ? {} : { [key]: value }) as { [K in Key]?: Value };
}

function celsius(temperature: number): number {
  return fromSi(temperature, 'degC');
}
