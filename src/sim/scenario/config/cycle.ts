export const PHASE_KINDS = ['idle', 'cruise', 'pull', 'cooldown', 'hot soak'] as const;
export type PhaseKind = (typeof PHASE_KINDS)[number];

/** Engine running with the bypass open. */
export const isPartLoad = (kind: PhaseKind): boolean => kind !== 'pull' && kind !== 'hot soak';

/** Start and end value of a quantity that runs linearly through a phase. */
export interface Ramp {
  readonly from: number;
  readonly to: number;
}

export interface ExchangerAirConfig {
  /** m/s at the face */
  readonly speed: Ramp;
  /** K added to the air around the car by what stands before it */
  readonly pickUp: Ramp;
}

export interface PhaseConfig {
  readonly name: string;
  /** pull: wide open, valve closed. hot soak: engine off. The others: part load, valve open, manifold pressure given */
  readonly kind: PhaseKind;
  /** s */
  readonly duration: number;
  /** rpm; 0 in a hot soak */
  readonly engineSpeed: Ramp;
  /** Pa; only part load uses it */
  readonly manifoldPressure: Ramp;
  /** air at the exchanger, and at the second */
  readonly exchangerAir: ExchangerAirConfig;
  readonly secondExchangerAir: ExchangerAirConfig;
  /** whether the coolant passes by the exchangers */
  readonly isExchangerBypassed: boolean;
  readonly isHeatSinkOn: boolean;
  /** K; Pa; 0 to 1 */
  readonly outsideTemperature: Ramp;
  readonly outsidePressure: Ramp;
  readonly relativeHumidity: number;
  /** K above the air around the car */
  readonly bayAboveOutside: number;
  /** K */
  readonly engineMetalTemperature: number;
  /** K */
  readonly oilTemperature: number;
  /** voltage at the pump over its rated voltage; 0 = pump off */
  readonly pumpVoltageRatio: number;
  readonly secondPumpVoltageRatio: number;
  /** V at the battery, where the ratios follow from it */
  readonly supplyVoltage?: number;
}

export interface CycleConfig {
  readonly before: readonly PhaseConfig[];
  readonly block: readonly PhaseConfig[];
  readonly repeats: number;
  readonly after: readonly PhaseConfig[];
}

/** Every phase of a cycle in order, those of the repeated block once. */
export function phasesOf({ before, block, after }: CycleConfig): PhaseConfig[] {
  return [...before, ...block, ...after];
}

/** The first pull of a cycle; undefined where it has none. */
export const firstPullOf = (cycle: CycleConfig): PhaseConfig | undefined =>
  phasesOf(cycle).find(({ kind }) => kind === 'pull');

/** Whether a pump is on in a phase. */
export const isPumped = ({ pumpVoltageRatio, secondPumpVoltageRatio }: PhaseConfig): boolean =>
  pumpVoltageRatio > 0 || secondPumpVoltageRatio > 0;

/** How many of some phases are pulls. */
export const pullsIn = (phases: readonly PhaseConfig[]): number => phases.filter(({ kind }) => kind === 'pull').length;

/** Pulls of a whole cycle, those of the repeated block as often as it is repeated. */
export function pullsOfCycle({ before, block, repeats, after }: CycleConfig): number {
  return pullsIn(before) + repeats * pullsIn(block) + pullsIn(after);
}
