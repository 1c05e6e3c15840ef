import { freezingPointOf } from '../fluids/coolant.ts';
import { HEAT_OF_MELTING, MELTING_POINT } from '../fluids/ice.ts';
import type { Config } from '../scenario/config.ts';
import type { Stage } from '../solver/stage-system.ts';
import type { Extremes } from './cell-block.ts';
import type { CoolantRing } from './coolant-ring.ts';
import { loopVolume } from './loop-volume.ts';

const MOST_NEWTON_STEPS = 30;
/** K; rounding of a temperature in kelvin is some 1e-13 */
const SETTLED = 1e-11;
/** The melting point follows the melt, which follows it: a share of about a hundredth is left by each round. */
const MELTING_ROUNDS = 5;
/** Share of the ice at which it counts as gone. */
const GONE = 1e-9;

/** Coolant that comes back into the reservoir, and what warms it from outside. */
export interface ReservoirInflow {
  /** W/K */
  rate: number;
  /** K */
  temperature: number;
  /** W/K and K */
  gain: number;
  around: number;
}

/** What a reservoir is filled with. */
export type Filling = Pick<CoolantRing, 'coolant' | 'density' | 'heatCapacity'>;

/** What a reservoir is to the model: where its coolant goes out, and what it takes up. */
export interface Store {
  /** numbers in the state */
  readonly size: number;
  /** J/K of what answers at once to the coolant that comes in */
  readonly promptCapacity: number;
  /** Coolant at a temperature [K], and all ice that was loaded. */
  fillStart(state: Float64Array, temperature: number): void;
  /** coolant that goes out, and the mean of all of it [K] */
  temperatureIn(state: Float64Array): number;
  meanIn(state: Float64Array): number;
  /** kg */
  iceIn(state: Float64Array): number;
  /** Freezing point of the loop's coolant with what has melted until now [K]. */
  freezingPointIn(state: Float64Array): number;
  /** Event function: below 0 while there is ice. */
  iceGone(state: Float64Array): number;
  /** Heat stored above liquid of `reference` [J]. */
  heatIn(state: Float64Array, reference: number): number;
  /** Widens the extremes of the coolant. */
  survey(state: Float64Array, extremes: Extremes): void;
  /** Looks over a state from which a step starts. */
  watch(state: Float64Array): void;
  /** Coolant that goes out at the end of a stage [K]. */
  solve(stage: Stage, inflow: ReservoirInflow): number;
  /** Takes up what the stage solved last brought, with coolant that came back at `returned` in truth; W of the gain. */
  takeUp(stage: Stage, returned: number): number;
}

/**
 * The reservoir as one mixed volume, with ice in it where some was loaded.
 *
 *     C de/dt = Q,  dm/dt = -G (m/m0)^(2/3) (T - Tm)/h,  T = T0 + (C (e - T0) + h m)/(C - m c)
 *
 * C is the heat capacity with all ice melted, e the temperature that it would have then [K]: a heat, so that melting
 * moves no energy. Ice is counted at 0 degC (T0), melt joins as liquid of T0. The state holds e and, with ice,
 * w = w0 (m/m0)^(1/3) with w0 = 3 h m0/C: it falls in a straight line at a steady T, reaches 0 in finite time, and an
 * error of it is one of the temperature. Tm is the freezing point of the whole loop's coolant with the melt in it: a
 * tank is stirred into the loop within a minute. Ice forms again below Tm. The coolant's density and heat capacity stay
 * those of the mix that was filled in; the heat of melting is that at 0 degC.
 *
 * The law is that of pieces that keep their shape: their surface goes with mass to the 2/3.
 */
export class MixedReservoir implements Store {
  /** numbers in the state, from `index` on */
  readonly size: number;
  /** J/K with all ice melted */
  readonly capacity: number;
  private readonly index: number;
  private readonly loaded: number;
  private readonly meltConductance: number;
  /** J/(kg K) */
  private readonly heatCapacity: number;
  private readonly fullMeasure: number;
  private readonly meltingPoints: (melted: number) => number;
  /** of the stage solved last */
  private measure = 0;
  private out = 0;
  private inflow: ReservoirInflow = { rate: 0, temperature: 0, gain: 0, around: 0 };

  constructor(config: Config, filling: Filling, index: number) {
    const { reservoir, coolant } = config;
    this.index = index;
    this.loaded = reservoir.iceMass;
    this.meltConductance = reservoir.meltConductance * this.loaded;
    this.size = this.loaded > 0 ? 2 : 1;
    this.heatCapacity = filling.heatCapacity;
    this.capacity = (reservoir.coolantVolume * filling.density + this.loaded) * filling.heatCapacity;
    this.fullMeasure = (3 * HEAT_OF_MELTING * this.loaded) / this.capacity;
    const { massFraction, freezingPoint } = filling.coolant;
    const filled = loopVolume(config) * filling.density;
    this.meltingPoints = (melted) =>
      melted === 0 ? freezingPoint : freezingPointOf((massFraction * filled) / (filled + melted), coolant.glycol);
  }

  private get isIced(): boolean {
    return this.loaded > 0;
  }

  fillStart(state: Float64Array, temperature: number): void {
    const { index, loaded, capacity, heatCapacity } = this;
    if (!this.isIced) {
      state[index] = temperature;
      return;
    }
    const heat = (capacity - loaded * heatCapacity) * (temperature - MELTING_POINT) - HEAT_OF_MELTING * loaded;
    state[index] = MELTING_POINT + heat / capacity;
    state[index + 1] = this.fullMeasure;
  }

  get promptCapacity(): number {
    return this.capacity;
  }

  meanIn(state: Float64Array): number {
    return this.temperatureIn(state);
  }

  temperatureIn(state: Float64Array): number {
    return this.isIced ? this.temperatureOf(state[this.index], this.iceIn(state)) : state[this.index];
  }

  iceIn(state: Float64Array): number {
    return this.isIced ? this.iceOf(state[this.index + 1]) : 0;
  }

  freezingPointIn(state: Float64Array): number {
    return this.meltingPoints(this.loaded - this.iceIn(state));
  }

  iceGone(state: Float64Array): number {
    return this.isIced ? Math.cbrt(GONE) * this.fullMeasure - state[this.index + 1] : -1;
  }

  heatIn(state: Float64Array, reference: number): number {
    return this.capacity * (state[this.index] - reference);
  }

  survey(state: Float64Array, extremes: Extremes): void {
    const temperature = this.temperatureIn(state);
    // A tank that is meant to hold ice may be as cold as ice.
    if (!this.isIced) extremes.coldestCoolant = Math.min(extremes.coldestCoolant, temperature);
    extremes.hottestCoolant = Math.max(extremes.hottestCoolant, temperature);
  }

  watch(): void {}

  solve({ s, base }: Stage, inflow: ReservoirInflow): number {
    const { rate, temperature, gain, around } = inflow;
    this.inflow = inflow;
    this.out = this.temperatureAt(s, base, gain * around + rate * temperature, gain + rate);
    return this.out;
  }

  takeUp({ s, reach, base, out }: Stage, returned: number): number {
    const { index, inflow } = this;
    const gained = inflow.gain * (inflow.around - this.out);
    const heat = inflow.rate * (returned - this.out) + gained;
    out[index] = base[index] + (reach * heat) / (this.capacity * s);
    if (this.isIced) out[index + 1] = base[index + 1] + reach * (this.measure - base[index + 1]);
    return gained;
  }

  /** Temperature at the end of a stage in which `held - conductance T` flows in [K]; W at 0 K, W/K. */
  private temperatureAt(s: number, base: Float64Array, held: number, conductance: number): number {
    const { index, capacity, heatCapacity } = this;
    const store = capacity * s;
    const from = base[index];
    if (!this.isIced) return (store * from + held) / (store + conductance);
    // From the temperature of the base, which the stage leaves by little.
    let T = this.temperatureOf(from, this.iceOf(base[index + 1]));
    for (let k = 0; k < MOST_NEWTON_STEPS; k++) {
      this.measure = this.measureAt(s, base[index + 1], T);
      const ice = this.iceOf(this.measure);
      const above = T - MELTING_POINT;
      const gap =
        s * ((capacity - ice * heatCapacity) * above - HEAT_OF_MELTING * ice - capacity * (from - MELTING_POINT)) -
        held +
        conductance * T;
      const melt = ice > 0 ? ((3 * ice) / this.measure) * (this.meltConductance / capacity) : 0;
      const slope = s * (capacity - ice * heatCapacity) + (heatCapacity * above + HEAT_OF_MELTING) * melt + conductance;
      const step = gap / slope;
      T -= step;
      if (Math.abs(step) < SETTLED) break;
    }
    this.measure = this.measureAt(s, base[index + 1], T);
    return T;
  }

  private temperatureOf(heatTemperature: number, ice: number): number {
    const { capacity, heatCapacity } = this;
    const heat = capacity * (heatTemperature - MELTING_POINT) + HEAT_OF_MELTING * ice;
    return MELTING_POINT + heat / (capacity - ice * heatCapacity);
  }

  private iceOf(measure: number): number {
    return measure > 0 ? this.loaded * (measure / this.fullMeasure) ** 3 : 0;
  }

  /** w at the end of a stage at temperature T; none is left below 0. */
  private measureAt(s: number, from: number, T: number): number {
    const rate = this.meltConductance / (this.capacity * s);
    let measure = from;
    for (let k = 0; k < MELTING_ROUNDS; k++) {
      const melting = this.meltingPoints(this.loaded - this.iceOf(measure));
      measure = Math.max(0, from - rate * (T - melting));
    }
    return measure;
  }
}
