import type { Config } from '../scenario/config.ts';
import { withAirLock, withBlockedFace } from '../scenario/laws.ts';
import { withExchangers, withPhases, withPumpSpeed, withTank } from './car-changes.ts';

export type TriageCause =
  | 'healthy'
  | 'pump off'
  | 'low flow'
  | 'low voltage'
  | 'air-locked core'
  | 'blocked exchanger'
  | 'leak past the core'
  | 'low coolant';

/** One thing that can be wrong, at the sizes that are run. */
export interface Fault {
  readonly cause: TriageCause;
  /** shares; a fault without sizes is there or not */
  readonly sizes: readonly number[];
  /** "50 % of the core full of air" */
  readonly words: (percent: string) => string;
  readonly apply: (config: Config, size: number) => Config;
}

const QUARTERS = [0.25, 0.5, 0.75];
const WHOLE = [1];

/** A healthy car first. */
export const FAULTS: readonly Fault[] = [
  { cause: 'healthy', sizes: WHOLE, words: () => 'a healthy car', apply: (config) => config },
  { cause: 'pump off', sizes: WHOLE, words: () => 'the pump off', apply: (config) => withVoltage(config, 0) },
  {
    cause: 'low flow',
    sizes: QUARTERS,
    words: (percent) => `a pump that makes ${percent} less flow`,
    apply: (config, size) => withPumpSpeed(config, 1 - size),
  },
  {
    cause: 'low voltage',
    sizes: [0.1, 0.2, 0.3],
    words: (percent) => `${percent} less voltage at the pump`,
    apply: (config, size) => withVoltage(config, 1 - size),
  },
  {
    cause: 'air-locked core',
    sizes: QUARTERS,
    words: (percent) => `${percent} of the core full of air`,
    apply: (config, size) => ({ ...config, core: withAirLock(config.core, size) }),
  },
  {
    cause: 'blocked exchanger',
    sizes: QUARTERS,
    words: (percent) => `${percent} of the front exchanger blocked`,
    apply: (config, size) => withExchangers(config, (exchanger) => withBlockedFace(exchanger, size)),
  },
  {
    cause: 'leak past the core',
    sizes: [0.1, 0.2, 0.3],
    words: (percent) => `${percent} of the air leaking past the core`,
    apply: (config, size) => ({
      ...config,
      core: { ...config.core, leakPast: 1 - (1 - config.core.leakPast) * (1 - size) },
    }),
  },
  {
    cause: 'low coolant',
    sizes: QUARTERS,
    words: (percent) => `${percent} of the tank's coolant missing`,
    apply: (config, size) => withTank(config, (1 - size) * config.reservoir.coolantVolume),
  },
];

function withVoltage(config: Config, factor: number): Config {
  return withPhases(config, (phase) => ({
    ...phase,
    pumpVoltageRatio: factor * phase.pumpVoltageRatio,
    secondPumpVoltageRatio: factor * phase.secondPumpVoltageRatio,
  }));
}
