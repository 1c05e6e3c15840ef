import type { TimeSeries } from '../results/time-series.ts';
import type { Config } from '../scenario/config.ts';
import { phaseBeforePull } from './bypass-routes.ts';
import { hasExchanger } from './car-changes.ts';
import { summarisePulls } from './pull-summary.ts';
import { jobToPull, type Study } from './study.ts';
import { FAULTS, type Fault, type TriageCause } from './triage-faults.ts';
import { LAST_PULL_OF_TRIAGE, QUANTITIES } from './triage-quantities.ts';

/** What two thermometers showed, K. */
export interface TriageReading {
  /** coolant leaving less coolant entering the core, at the end of the part-load phase before the first pull */
  readonly rise: number;
  /** indicated charge less coolant entering the core, at the end of the pull that follows */
  readonly approach: number;
  /** what each of the two may be off by */
  readonly riseDoubt: number;
  readonly approachDoubt: number;
}

/** Least and greatest difference that may be typed [K]: own judgement. */
export const TRIAGE_RANGE = [-200, 200] as const;

/** Common practice, no published source [K]. */
export const TRIAGE_DOUBTS: Pick<TriageReading, 'riseDoubt' | 'approachDoubt'> = { riseDoubt: 1, approachDoubt: 3 };

/** One cause at the size that comes nearest to the reading. */
export interface TriageCandidate {
  readonly cause: TriageCause;
  /** "50 % of the core full of air" */
  readonly words: string;
  /** share; absent where a fault is there or not */
  readonly size?: number;
  /** K */
  readonly rise: number;
  readonly approach: number;
  /** from the reading, in doubts */
  readonly distance: number;
}

/** What tells the leading causes apart: its value under each of them, in the order of the leading. */
export interface NextMeasurement {
  readonly quantity: string;
  /** pairs of leading causes that it parts by more than its own doubt */
  readonly partedPairs: number;
  readonly values: readonly number[];
}

export interface Triage {
  readonly reading: TriageReading;
  /** the phase and the pull that the figures are from */
  readonly phase: string;
  readonly pull: number;
  /** nearest first */
  readonly candidates: readonly TriageCandidate[];
  /** the nearest and all that are less than one doubt further: the reading cannot tell them apart */
  readonly leading: readonly TriageCandidate[];
  /** absent where one leads alone, or nothing parts those that lead */
  readonly next?: NextMeasurement;
  /** causes with which no run came to the end of that pull */
  readonly notRun: readonly TriageCause[];
}

/** Distances that differ by less cannot be told apart, in doubts; own choice. */
export const TOLD_APART = 1;

interface Trial {
  readonly fault: Fault;
  readonly size: number;
  readonly config: Config;
  readonly series: TimeSeries;
  readonly row: number;
  readonly candidate: TriageCandidate;
}

/**
 * What is wrong with a car, from two temperatures: the car is run healthy and with one fault at a time, in three sizes
 * each, and the causes are ranked by how far their two figures lie from those that were measured.
 *
 *     distance = sqrt( ((rise - measured)/doubt)^2 + ((approach - measured)/doubt)^2 )
 *
 * Of the causes that lead, each at its nearest size, that quantity is named which parts the most of them by more than
 * its own doubt. A car without a front exchanger has none to block. Absent where the healthy car has no part-load phase
 * with a pull after it among its first three pulls.
 */
export function* studyTriage(config: Config, reading: TriageReading): Study<Triage | undefined> {
  const faults = FAULTS.filter(({ cause }) => cause !== 'blocked exchanger' || hasExchanger(config));
  const cars = faults.flatMap((fault) =>
    fault.sizes.map((size) => ({ fault, size, config: fault.apply(config, size) })),
  );
  const runs = yield cars.map((car) => jobToPull(car.config, LAST_PULL_OF_TRIAGE));
  const trials = cars.flatMap((car, k): Trial[] => {
    const found = figuresOf(car.config, runs[k]);
    if (found === undefined) return [];
    const { fault, size } = car;
    const isSized = fault.sizes.length > 1;
    const words = fault.words(`${Math.round(100 * size)} %`);
    const { rise, approach, row } = found;
    const distance = Math.hypot(
      (rise - reading.rise) / reading.riseDoubt,
      (approach - reading.approach) / reading.approachDoubt,
    );
    const candidate = { cause: fault.cause, words, ...(isSized && { size }), rise, approach, distance };
    return [{ ...car, series: runs[k], row, candidate }];
  });
  const healthy = figuresOf(config, runs[0]);
  if (healthy === undefined) return undefined;

  const nearest = faults.flatMap((fault) =>
    trials
      .filter((trial) => trial.fault === fault)
      .sort((a, b) => a.candidate.distance - b.candidate.distance)
      .slice(0, 1),
  );
  nearest.sort((a, b) => a.candidate.distance - b.candidate.distance);
  const leading = nearest.filter(({ candidate }) => candidate.distance < nearest[0].candidate.distance + TOLD_APART);
  const next = nextMeasurement(leading);
  return {
    reading,
    phase: healthy.phase,
    pull: healthy.pull,
    candidates: nearest.map(({ candidate }) => candidate),
    leading: leading.map(({ candidate }) => candidate),
    ...(next && { next }),
    notRun: faults.map(({ cause }) => cause).filter((cause) => !nearest.some(({ fault }) => fault.cause === cause)),
  };
}

/** The two figures of one run, the row at lift, and where they are from. */
function figuresOf({ limit }: Config, series: TimeSeries) {
  const phase = phaseBeforePull(series.phases);
  const pull = summarisePulls(series, limit.chargeTemperature).find(({ start }) => phase && start >= phase.end);
  if (phase === undefined || pull === undefined) return undefined;
  const { columns, phases } = series;
  const row = phases.find(({ start, kind }) => kind === 'pull' && start === pull.start)?.lastRow ?? Number.NaN;
  return {
    phase: phase.name,
    pull: pull.pull,
    row,
    rise: columns.coolantOutOfCore[phase.lastRow] - columns.coolantIntoCore[phase.lastRow],
    approach: pull.atEnd.indicatedTemperature - pull.atEnd.coolantIntoCore,
  };
}

/** The quantity that parts most pairs of trials by more than its doubt, of equals the one that parts them furthest. */
function nextMeasurement(leading: readonly Trial[]): NextMeasurement | undefined {
  const found = QUANTITIES.map(({ name, doubt, read }) => {
    const values = leading.map(({ config, series, row }) => read(config, series, row));
    const gaps = values.flatMap((value, k) => values.slice(k + 1).map((other) => Math.abs(value - other) / doubt));
    const parted = gaps.filter((gap) => gap > 1);
    return { quantity: name, values, partedPairs: parted.length, furthest: Math.max(0, ...parted) };
  });
  found.sort((a, b) => b.partedPairs - a.partedPairs || b.furthest - a.furthest);
  const [{ quantity, values, partedPairs }] = found;
  return partedPairs === 0 ? undefined : { quantity, partedPairs, values };
}
