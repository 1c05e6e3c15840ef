import type { PhaseConfig } from '../scenario/config/cycle.ts';
import type { ExchangerConfig } from '../scenario/config/exchangers.ts';
import type { Config } from '../scenario/config.ts';
import { scaledAirDrop, scaledConductance, scaledPump } from '../scenario/laws.ts';

/** The same car with the conductances of its core scaled on either side; with one factor, both alike. */
export function withCoreConductance(config: Config, air: number, coolant = air): Config {
  const airConductance = scaledConductance(config.core.airConductance, air);
  const coolantConductance = scaledConductance(config.core.coolantConductance, coolant);
  return { ...config, core: { ...config.core, airConductance, coolantConductance } };
}

/** The same car with the pressure drop of its core scaled. */
export function withCoreAirDrop(config: Config, factor: number): Config {
  return { ...config, core: { ...config.core, airDrop: scaledAirDrop(config.core.airDrop, factor) } };
}

/** The same car with flows and pressures of its first pump scaled. */
export function withPumpCurve(config: Config, flow: number, pressure: number): Config {
  return { ...config, pump: scaledPump(config.pump, flow, pressure) };
}

/** The same car with all its pumps at a multiple of their speed: flow goes with it, pressure with its square. */
export function withPumpSpeed(config: Config, factor: number): Config {
  const { secondPump } = config;
  return {
    ...withPumpCurve(config, factor, factor ** 2),
    ...(secondPump && { secondPump: scaledPump(secondPump, factor, factor ** 2) }),
  };
}

/** Whether the car has a front exchanger, the second alone counted too. */
export const hasExchanger = ({ exchanger, secondExchanger }: Config): boolean =>
  exchanger !== undefined || secondExchanger !== undefined;

/** The same car with each front exchanger that it has changed. */
export function withExchangers(config: Config, change: (exchanger: ExchangerConfig) => ExchangerConfig): Config {
  const { exchanger, secondExchanger } = config;
  return {
    ...config,
    ...(exchanger && { exchanger: change(exchanger) }),
    ...(secondExchanger && { secondExchanger: change(secondExchanger) }),
  };
}

/** The same car with another amount of coolant in its tank [m3]. */
export function withTank(config: Config, coolantVolume: number): Config {
  return { ...config, reservoir: { ...config.reservoir, coolantVolume } };
}

/** The same car with the power scaled that churns the air with the bypass open. */
export function withIdlePower(config: Config, factor: number): Config {
  const { compressor } = config;
  const idlePower = { ...compressor.idlePower, power: factor * compressor.idlePower.power };
  return { ...config, compressor: { ...compressor, idlePower } };
}

/** The same car whose engine swallows with another exponent of the charge temperature. */
export function withSwallowingExponent(config: Config, temperatureExponent: number): Config {
  return { ...config, engine: { ...config.engine, temperatureExponent } };
}

/** The same car with every phase of its cycle changed. */
export function withPhases(config: Config, change: (phase: PhaseConfig) => PhaseConfig): Config {
  const { before, block, repeats, after } = config.cycle;
  const cycle = { before: before.map(change), block: block.map(change), repeats, after: after.map(change) };
  return { ...config, cycle };
}
