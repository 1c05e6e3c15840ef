import { InvalidArgumentError } from 'commander';
import {
  type CarAgreement,
  ESTIMATE_CAUTION,
  explainAgreement,
  FILE_WORDING,
  fromSi,
  GAUGE_RANGE,
  GAUGE_STEP_RANGE,
  type GaugeReading,
  pullsOfCycle,
  studyCarAgreement,
  toSi,
  whyNoSuchPull,
} from '../sim/index.ts';
import { aligned } from './aligned.ts';
import { celsius } from './celsius.ts';
import { csvOf } from './csv.ts';
import { EXIT } from './exit-codes.ts';
import { noAnswer } from './no-answer.ts';
import { numberIn } from './number-in.ts';
import { onAllCores } from './on-all-cores.ts';
import { type FormOptions, printAnswer } from './print-answer.ts';
import { readConfig } from './read-scenario.ts';
import { signed } from './signed.ts';

export interface AgreeCommandOptions extends FormOptions {
  readonly variant?: string;
  readonly gauge: readonly GaugeReading[];
  /** K */
  readonly gaugeStep: number;
}

/** Holds what the gauge showed against the model, and says which core conductance would fit. */
export async function agree(file: string, options: AgreeCommandOptions): Promise<number> {
  const config = readConfig(file, options.variant);
  if (typeof config === 'number') return config;
  const agreement = await onAllCores(studyCarAgreement(config, options.gauge, options.gaugeStep));
  if (agreement.kind === 'no such pull') {
    return noAnswer(whyNoSuchPull(agreement), agreement.pull <= pullsOfCycle(config.cycle));
  }
  printAnswer(options, {
    json: () => reported(agreement),
    csv: () => asCsv(agreement),
    text: () => lines(agreement),
  });
  return EXIT.done;
}

/** Readings of pull 1, 2, ... as they are typed: "52,55F,-,57"; a dash is a pull that nobody read. */
export function gaugeReadings(text: string): GaugeReading[] {
  const readings = text.split(',').flatMap((each, k): GaugeReading[] => {
    if (each.trim() === '-') return [];
    const reading = numberIn(each, ...GAUGE_RANGE, 'degC', ', or as 126F, or - for a pull not read');
    return [{ pull: k + 1, indicated: toSi(reading, 'degC') }];
  });
  if (readings.length === 0) throw new InvalidArgumentError('expected at least one reading, e.g. 52,55,57.');
  return readings;
}

/** What the last figure of the gauge is worth, K: "1", "0.5", "1 F". */
export const gaugeStep = (text: string): number => numberIn(text, ...GAUGE_STEP_RANGE, 'K', ', or as 1F');

function lines(agreement: CarAgreement): string[] {
  const rows = agreement.pulls.map(({ pull, indicated, model, miss, missLeft }) => [
    String(pull),
    celsius(indicated),
    celsius(model),
    signed(miss, 1),
    signed(missLeft, 1),
  ]);
  return [
    'Indicated temperature at the end of each pull, model less gauge:',
    ...aligned([
      ['pull', 'gauge, degC', 'model, degC', 'miss, K', `left with ${agreement.fit.factor.toFixed(2)} x core, K`],
      ...rows,
    ]),
    '',
    ...explainAgreement(agreement, FILE_WORDING),
  ];
}

function reported({ pulls, meanMiss, rmsMiss, fit, verdict, drift, gaugeStep: step }: CarAgreement) {
  return {
    gauge_step_K: step,
    pulls: pulls.map(({ pull, indicated, model, miss, missLeft }) => ({
      pull,
      gauge_degC: fromSi(indicated, 'degC'),
      model_degC: fromSi(model, 'degC'),
      miss_K: miss,
      miss_left_K: missLeft,
    })),
    mean_miss_K: meanMiss,
    rms_miss_K: rmsMiss,
    core_conductance_factor: fit.factor,
    core_conductance_factor_low: fit.low,
    core_conductance_factor_high: fit.high,
    at_end_of_range: fit.isAtEnd,
    rms_left_K: fit.rmsLeft,
    drift_left_K: drift,
    verdict,
    cautions: [ESTIMATE_CAUTION],
  };
}

const asCsv = ({ pulls }: CarAgreement): string =>
  csvOf(
    ['pull [-]', 'gauge [K]', 'model [K]', 'miss [K]', 'miss left with the core that fits [K]'],
    pulls.map(({ pull, indicated, model, miss, missLeft }) => [pull, indicated, model, miss, missLeft]),
  );
