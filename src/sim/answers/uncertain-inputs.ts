import type { Ramp } from '../scenario/config/cycle.ts';
import type { Config } from '../scenario/config.ts';
import { type Issue, isError, type JsonObject } from '../scenario/issue.ts';
import { onDay } from '../scenario/other-day.ts';
import { COMMON_PRACTICE } from '../scenario/parameters/sources.ts';
import { numberInWords } from '../scenario/row-at.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { toConfig } from '../scenario/to-config.ts';
import { applyChanges } from '../scenario/variants.ts';
import type { FileUnit } from '../units.ts';
import {
  hasExchanger,
  withCoreConductance,
  withIdlePower,
  withPhases,
  withPumpCurve,
  withSwallowingExponent,
} from './car-changes.ts';

/** An input that is not known well, and how far it may lie from what the file has. */
export interface UncertainInput {
  readonly name: string;
  /** how low and high are meant: times the value, added to it, or the value itself */
  readonly kind: 'factor' | 'shift' | 'value';
  readonly low: number;
  readonly high: number;
  readonly unit?: FileUnit;
  readonly source: string;
  /** a key of the file, for a range by a user; absent: one of the trade's inputs */
  readonly path?: string;
}

/** Inputs of the trade with their usual ranges, and what one of them does to a car. */
interface TradeInput extends UncertainInput {
  /** keys of the file that a range by a user puts in this one's place */
  readonly insteadOf: readonly string[];
  readonly isThere?: (config: Config) => boolean;
  readonly apply: (config: Config, value: number) => Config;
}

const factor = (share: number) =>
  ({ kind: 'factor', low: 1 - share, high: 1 + share, source: COMMON_PRACTICE }) as const;

const TRADE_INPUTS: readonly TradeInput[] = [
  {
    ...factor(0.15),
    name: 'core conductance, air side',
    insteadOf: ['core.airConductance'],
    apply: (config, value) => withCoreConductance(config, value, 1),
  },
  {
    ...factor(0.15),
    name: 'core conductance, coolant side',
    insteadOf: ['core.coolantConductance'],
    apply: (config, value) => withCoreConductance(config, 1, value),
  },
  {
    ...factor(0.1),
    name: 'pump free flow',
    insteadOf: ['pump.freeFlow'],
    apply: (config, value) => withPumpCurve(config, value, 1),
  },
  {
    ...factor(0.1),
    name: 'pump shut-off pressure',
    insteadOf: ['pump.shutOffPressure'],
    apply: (config, value) => withPumpCurve(config, 1, value),
  },
  {
    ...factor(0.25),
    name: 'air speed at the front exchanger',
    insteadOf: ['exchanger.ramShare'],
    isThere: hasExchanger,
    apply: withAirSpeed,
  },
  {
    kind: 'factor',
    low: 0.5,
    high: 2,
    source: COMMON_PRACTICE,
    name: 'compressor idle power',
    insteadOf: ['compressor.idlePower'],
    apply: withIdlePower,
  },
  {
    kind: 'value',
    low: 0,
    high: 0.5,
    source: COMMON_PRACTICE,
    name: 'swallowing exponent',
    insteadOf: ['engine.temperatureExponent'],
    apply: withSwallowingExponent,
  },
];

/** Outside air moves with the phases and with the start temperatures that follow it, so it goes through the file. */
const OUTSIDE: UncertainInput = {
  kind: 'shift',
  low: -3,
  high: 3,
  unit: 'K',
  source: COMMON_PRACTICE,
  name: 'outside temperature',
};

const scaled = ({ from, to }: Ramp, by: number): Ramp => ({ from: by * from, to: by * to });

function withAirSpeed(config: Config, by: number): Config {
  return withPhases(config, (phase) => ({
    ...phase,
    exchangerAir: { ...phase.exchangerAir, speed: scaled(phase.exchangerAir.speed, by) },
    secondExchangerAir: { ...phase.secondExchangerAir, speed: scaled(phase.secondExchangerAir.speed, by) },
  }));
}

/** A range that a user gives a key of the file, in the file's unit. */
export interface OwnRange {
  readonly path: string;
  readonly low: number;
  readonly high: number;
}

/** The trade's inputs that a car has, and a user's own, which go before those on the same key. */
export function uncertainInputs(scenario: Scenario, own: readonly OwnRange[]): UncertainInput[] {
  const config = toConfig(scenario);
  const paths = own.map(({ path }) => path);
  const trade = TRADE_INPUTS.filter(
    ({ insteadOf, isThere }) => !insteadOf.some((path) => paths.includes(path)) && (isThere?.(config) ?? true),
  ).map(({ insteadOf: _, isThere: __, apply: ___, ...input }) => input);
  return [
    ...trade,
    ...(paths.includes('ambient.temperature') ? [] : [OUTSIDE]),
    ...own.map(({ path, low, high }): UncertainInput => {
      const { label: name, ...unit } = numberInWords(path);
      return { name, path, kind: 'value', low, high, ...unit, source: 'as given' };
    }),
  ];
}

/**
 * Value of an input at a place between its low end (0) and its high end (1). A factor runs evenly by its logarithm
 * where its ends are each other's inverse, all else evenly as it stands.
 */
export function valueAt({ kind, low, high }: UncertainInput, place: number): number {
  const isByRatio = kind === 'factor' && Math.abs(low * high - 1) < 1e-9;
  return isByRatio ? low * (high / low) ** place : low + (high - low) * place;
}

/** The car with each input at its place between low (0) and high (1); an input left out is as the file has it. */
export function carAt(
  scenario: Scenario,
  inputs: readonly UncertainInput[],
  places: readonly (number | undefined)[],
): { readonly config?: Config; readonly issues: readonly Issue[] } {
  const changes: Record<string, number> = {};
  let shift: number | undefined;
  const tradeChanges: ((config: Config) => Config)[] = [];
  inputs.forEach((input, k) => {
    const place = places[k];
    if (place === undefined) return;
    const value = valueAt(input, place);
    const trade = TRADE_INPUTS.find(({ name }) => name === input.name);
    if (input.path !== undefined) changes[input.path] = value;
    else if (trade === undefined) shift = value;
    else tradeChanges.push((config) => trade.apply(config, value));
  });
  const temperature = shift === undefined ? undefined : scenario.values.ambient.temperature + shift;
  const changed = withChanges(scenario, changes);
  if (changed.scenario === undefined) return { issues: changed.issues };
  const there = onDay(changed.scenario, temperature === undefined ? {} : { temperature });
  if (there.scenario === undefined) return { issues: there.issues };
  const config = tradeChanges.reduce((car, change) => change(car), toConfig(there.scenario));
  return { config: scenario.measuredOn === undefined ? withOwnMeter(config) : config, issues: [] };
}

/**
 * What is not known well is no change of the car: its meter read what it read whatever pump and loop really are. How
 * well the meter is known is a range of its own, of `pump.measuredFlow`.
 */
function withOwnMeter(config: Config): Config {
  if (config.measuredFlow === undefined) return config;
  const { on: _, ...measuredFlow } = config.measuredFlow;
  return { ...config, measuredFlow };
}

const withChanges = (scenario: Scenario, changes: JsonObject) =>
  Object.keys(changes).length === 0 ? { scenario, issues: [] } : applyChanges(scenario, 'changed values', changes);

/** What is wrong with the ranges: errors that one input alone brings about at one of its ends. */
export function issuesOfRanges(scenario: Scenario, inputs: readonly UncertainInput[]): Issue[] {
  return inputs.flatMap((_, k) =>
    [0, 1].flatMap((place) => {
      const { issues } = carAt(
        scenario,
        inputs,
        inputs.map((__, other) => (other === k ? place : undefined)),
      );
      return issues.filter(isError);
    }),
  );
}
