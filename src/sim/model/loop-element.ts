import type { LinePlace } from '../scenario/config/loop.ts';
import type { Stage } from '../solver/stage-system.ts';
import type { BlockRates, Extremes } from './cell-block.ts';

/** Air at the face of an exchanger in one instant. */
export interface ExchangerAir {
  /** m/s */
  speed: number;
  /** K */
  temperature: number;
  /** Pa */
  pressure: number;
}

/** What a loop meets round itself in one instant. */
export interface LoopSurroundings {
  /** air in the engine bay [K] */
  readonly bay: number;
  readonly exchangerAir: ExchangerAir;
  readonly secondExchangerAir: ExchangerAir;
}

/** What the coolant goes through between reservoir and core or core and reservoir: a part, a line, or two ways. */
export interface LoopElement {
  /** the part; of a line, what it leaves; of two ways, where they come together */
  readonly place: LinePlace;
  readonly isLine: boolean;
  /** Coolant that goes through from now on: m3/s, and the W/K that it carries. */
  setFlow(flow: number, rate: number): void;
  /** Sets its metal to one temperature [K]; what holds no metal has none to set. */
  fillMetal(state: Float64Array, temperature: number): void;
  /** One stage with coolant entering at `inlet` [K]; returns what leaves. */
  sweep(stage: Stage, inlet: number, near: LoopSurroundings): number;
  /** What leaves for a known state. */
  march(state: Float64Array, inlet: number, near: LoopSurroundings): number;
  /**
   * Pressure gained at a flow [m3/s], Pa: above 0 in a pump alone. It never rises with flow; heat sink and bypassed
   * exchanger take 0.
   */
  rise(flow: number): number;
  /** Multiplies what it takes at every flow; a pump has no resistance. */
  scaleResistance(factor: number): void;
  readonly watchedPlaces: readonly Int32Array[];
  watchFront(state: Float64Array, duration: number): void;
  /** Heat stored above `reference` [J]; widens the extremes of the coolant. */
  survey(state: Float64Array, reference: number, extremes: Extremes): number;
  /** Where in it coolant has just this temperature, in words; '' where nowhere. */
  placeOf(state: Float64Array, temperature: number): string;
}

export function emptyRates(): BlockRates {
  return { airRate: 0, airConductance: 0, coolantRate: 0, coolantConductance: 0, metalLoss: 0, metalSource: 0 };
}
