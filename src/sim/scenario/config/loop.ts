/** Parts that the coolant can go through, each once at most. */
export const LOOP_PARTS = [
  'pump',
  'core',
  'exchanger',
  'reservoir',
  'secondPump',
  'secondExchanger',
  'heatSink',
] as const;
export type LoopPart = (typeof LOOP_PARTS)[number];
/** What a line leaves: a part, or the place where the first or the second pair of ways comes together. */
export const LINE_PLACES = [...LOOP_PARTS, 'ways', 'secondWays'] as const;
export type LinePlace = (typeof LINE_PLACES)[number];
/** as sentences name them */
export const PART_WORDS: Readonly<Record<LinePlace, string>> = {
  pump: 'pump',
  core: 'core',
  exchanger: 'front exchanger',
  reservoir: 'tank',
  secondPump: 'second pump',
  secondExchanger: 'second exchanger',
  heatSink: 'heat sink',
  ways: 'two ways',
  secondWays: 'second two ways',
};
/** One of two ways beside each other, its parts in flow order; at least one. */
export type LoopWay = readonly LoopPart[];
/** A part, or two ways between which the coolant divides. */
export type LoopItem = LoopPart | readonly [LoopWay, LoopWay];

/** One straight stretch of coolant line: round bore, its bends, and the losses it adds. */
export interface LineSegment {
  /** m */
  readonly length: number;
  /** m */
  readonly bore: number;
  /** sum of loss coefficients on this bore: bends, fittings, and the change of bore into this segment */
  readonly lossCoefficient: number;
}

export interface LineConfig {
  readonly after: LinePlace;
  readonly segments: readonly LineSegment[];
  /** m */
  readonly roughness: number;
  /** coolant to wall, W/(m K) */
  readonly coolantToWall: number;
  /** wall to bay air, W/(m K) */
  readonly wallToBay: number;
  /** J/(m K) */
  readonly wallHeatCapacity: number;
}

export interface PumpConfig {
  /**
   * head [Pa] against flow [m3/s] at voltage ratio 1: a parabola H0 (1 - (Q/Q0)^2), or straight lines through points
   */
  readonly curve:
    | { readonly kind: 'parabola'; readonly shutOffPressure: number; readonly freeFlow: number }
    | { readonly kind: 'points'; readonly flow: readonly number[]; readonly pressure: readonly number[] };
  /** W at voltage ratio 1 */
  readonly electricalPower: number;
  /** share of the electrical power that ends in the coolant, 0 to 1 */
  readonly shareIntoCoolant: number;
  /** Pa above vapour pressure at its inlet, below which it cavitates */
  readonly suctionNeeded: number;
  /** V at the pump for its curve, ohm of both wires; absent: its voltage is given as a ratio */
  readonly wiring?: { readonly ratedVoltage: number; readonly resistance: number };
}

/**
 * Heat that an extra sink draws from coolant leaving it at a temperature, straight between points; W, K, both rising.
 */
export interface HeatSinkConfig {
  readonly temperature: readonly number[];
  readonly heat: readonly number[];
}
