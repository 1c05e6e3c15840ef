import {
  type ChangedInput,
  type Config,
  type GaugeReading,
  type GridAxis,
  type Scenario,
  type StoreKind,
  type Study,
  studyCarAgreement,
  studyComparison,
  studyCoreDrop,
  studyDay,
  studyGrid,
  studyRest,
  studySensitivity,
  studyStore,
  studyTriage,
  studyUpgrades,
  type TriageReading,
  type UncertainInput,
  type Upgrade,
} from '../src/sim/index.ts';

interface GaugeAsked {
  readonly readings: readonly GaugeReading[];
  /** K */
  readonly gaugeStep: number;
}

/** A car beside others: what it is called, which line it has in a picture, and what is changed against the first. */
export interface ComparedCar {
  readonly name: string;
  readonly line: number;
  readonly config: Config;
  readonly changes: readonly ChangedInput[];
}

interface CompareAsked {
  readonly cars: readonly ComparedCar[];
  /** s */
  readonly interval: number;
}

interface DayAsked {
  readonly typed: Scenario;
  readonly there: Scenario;
  readonly pulls: number;
}

interface SensitivityAsked {
  readonly scenario: Scenario;
  readonly inputs: readonly UncertainInput[];
  readonly runs: number;
  readonly seed: number;
}

interface GridAsked {
  readonly scenario: Scenario;
  readonly axes: readonly GridAxis[];
}

/** What upgrades are weighed with: a study asks for its cars by what is fitted to them, and a message holds no function. */
export interface UpgradesAsked {
  readonly upgrades: readonly Upgrade[];
  /** places in the list, ascending and joined by commas, and the car that has them; what cannot be is not in it */
  readonly cars: readonly (readonly [chosen: string, car: Config])[];
  readonly withOrders: boolean;
}

/** Answers of many runs that a page asks for by name: each takes a car and what it is asked with. */
export const QUESTIONS = {
  store: (config: Config, { kind, pulls }: { readonly kind: StoreKind; readonly pulls: number }) =>
    studyStore(config, kind, pulls),
  rest: (config: Config, { pulls }: { readonly pulls: number }) => studyRest(config, pulls),
  drop: (config: Config, _asked: Record<never, never>) => studyCoreDrop(config),
  upgrades: (config: Config, { upgrades, cars, withOrders }: UpgradesAsked) => {
    const upgraded = new Map(cars);
    const carWith = (chosen: readonly number[]) => (chosen.length === 0 ? config : upgraded.get(chosen.join()));
    return studyUpgrades(upgrades, carWith, { withOrders });
  },
  gauge: (config: Config, { readings, gaugeStep }: GaugeAsked) => studyCarAgreement(config, readings, gaugeStep),
  triage: (config: Config, reading: TriageReading) => studyTriage(config, reading),
  compare: (_: Config, { cars, interval }: CompareAsked) =>
    studyComparison(
      cars.map(({ config }) => config),
      interval,
    ),
  day: (_: Config, { typed, there, pulls }: DayAsked) => studyDay(typed, there, pulls),
  grid: (_: Config, { scenario, axes }: GridAsked) => studyGrid(scenario, axes),
  sensitivity: (_: Config, { scenario, inputs, runs, seed }: SensitivityAsked) =>
    studySensitivity(scenario, inputs, runs, seed),
};

export type Question = keyof typeof QUESTIONS;
export type AskedOf<Q extends Question> = Parameters<(typeof QUESTIONS)[Q]>[1];
export type AnswerOf<Q extends Question> =
  ReturnType<(typeof QUESTIONS)[Q]> extends Study<infer Result> ? Result : never;
