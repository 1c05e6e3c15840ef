import type { ExchangerConfig } from '../scenario/config/exchangers.ts';
import type { Config } from '../scenario/config.ts';
import { listed } from '../scenario/issue.ts';
import { conductanceSideBySide, scaledConductance } from '../scenario/laws.ts';
import { hasExchanger, withCoreAirDrop, withCoreConductance, withExchangers, withPumpSpeed } from './car-changes.ts';
import { summarisePulls } from './pull-summary.ts';
import { jobToPull, type Study } from './study.ts';

/** Parts that can hold a pull back, in the order of the loop; each stands for one idealisation. */
const BOTTLENECK_PARTS = [
  'core conductance',
  'coolant flow',
  'front exchanger',
  'stored coolant',
  'core pressure drop',
  'intake air',
] as const;
export type BottleneckPart = (typeof BOTTLENECK_PARTS)[number];

/** The parts as sentences have them. */
export const CAUSE_WORDS: Readonly<Record<BottleneckPart, string>> = {
  'core conductance': 'the core',
  'coolant flow': 'the coolant flow',
  'front exchanger': 'the front exchanger',
  'stored coolant': 'the stored coolant',
  'core pressure drop': 'the core pressure drop',
  'intake air': 'the intake air',
};

/** "the core", or "a tie: the front exchanger and the stored coolant". */
export function causeInWords(heldBackBy: readonly BottleneckPart[]): string {
  const words = heldBackBy.map((part) => CAUSE_WORDS[part]);
  if (words.length === 0) return 'none of these parts';
  return words.length === 1 ? words[0] : `a tie: ${listed(words)}`;
}

/** A lead smaller than this is a tie [K]; own judgement. */
const TIE = 1;

export interface Bottleneck {
  /** pull whose peak is looked at, counted from 1 */
  readonly pull: number;
  /** fall of its peak if that part alone were ideal [K], largest first; a part that makes it worse is negative */
  readonly falls: readonly { readonly part: BottleneckPart; readonly fall: number }[];
  /** the part that holds the car back, or those within 1 K of the first */
  readonly heldBackBy: readonly BottleneckPart[];
}

/** How far "ideal" goes: far enough that going further changes a peak by hundredths of a kelvin. */
const CORE_CONDUCTANCE_FACTOR = 40;
const COOLANT_FLOW_FACTOR = 4;
const EXCHANGER_FACTOR = 60;
const ENDLESS_STORE = 100;
/** Pa above outside: water boils at 212 degC */
const IDEAL_CAP = 1.9e6;

const IDEAL: Record<BottleneckPart, (config: Config) => Config> = {
  'core conductance': (config) => withCoreConductance(config, CORE_CONDUCTANCE_FACTOR),
  'coolant flow': (config) => withPumpSpeed(config, COOLANT_FLOW_FACTOR),
  'front exchanger': (config) => withExchangers(config, idealExchanger),
  'stored coolant': (config) => ({
    ...config,
    reservoir: { ...config.reservoir, coolantVolume: ENDLESS_STORE, iceMass: 0, layers: 1 },
  }),
  'core pressure drop': (config) => withCoreAirDrop(config, 0),
  'intake air': (config) => ({ ...config, intake: { ...config.intake, pickUp: 0 } }),
};

/**
 * What holds one pull back: each part in turn is made ideal, alone, and the fall of that pull's peak is its share.
 * Core conductance x40 on both sides; coolant flow x4 by the pump's affinity; front exchanger, where there is one,
 * outlet at its air; 100 m3 of coolant at the start temperature; no air drop in the core; intake air at ambient.
 * Coolant does not boil in these runs.
 *
 * @param config - the car as it is
 * @param pull - the deciding pull, counted from 1
 * @param peak - its peak as the car is [K]
 */
export function* studyBottleneck(config: Config, pull: number, peak: number): Study<Bottleneck> {
  const parts = BOTTLENECK_PARTS.filter((part) => part !== 'front exchanger' || hasExchanger(config));
  const runs = yield parts.map((part) => jobToPull(IDEAL[part](neverBoiling(config)), pull));
  const falls = parts
    .map((part, k) => {
      const pulls = summarisePulls(runs[k], config.limit.chargeTemperature);
      return { part, fall: peak - (pulls[pull - 1]?.peak ?? Number.NaN) };
    })
    .filter(({ fall }) => Number.isFinite(fall));
  falls.sort((a, b) => b.fall - a.fall);
  const heldBackBy = falls.filter(({ fall }) => fall > 0 && fall > falls[0].fall - TIE).map(({ part }) => part);
  return { pull, falls, heldBackBy };
}

/** The same coolant under a cap that keeps it liquid: in a corner of an ideal core it is as hot as the air. */
function neverBoiling(config: Config): Config {
  return { ...config, coolant: { ...config.coolant, capPressure: IDEAL_CAP } };
}

/** Air flow and both conductances without practical bound; the conductance law keeps its shape. */
function idealExchanger(exchanger: ExchangerConfig): ExchangerConfig {
  const { airConductance, coolantConductance } = exchanger;
  return {
    ...exchanger,
    faceArea: EXCHANGER_FACTOR * exchanger.faceArea,
    airConductance: conductanceSideBySide(airConductance, EXCHANGER_FACTOR),
    coolantConductance: scaledConductance(coolantConductance, EXCHANGER_FACTOR),
  };
}
