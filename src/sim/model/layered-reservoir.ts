import type { Config } from '../scenario/config.ts';
import type { Stage } from '../solver/stage-system.ts';
import type { Extremes } from './cell-block.ts';
import type { Filling, ReservoirInflow, Store } from './reservoir.ts';

/** A layer warmer than the one above it changes places with it within this time [s]: own choice. */
const OVERTURN = 2;

/**
 * The reservoir as mixed layers one above the other, from the bottom up: coolant goes from the layer of its return to
 * that of its draw-off through those between, and the others stand.
 *
 *     C dT_i/dt = m c (T_before - T_i) + g (T_around - T_i) + X (T_above - T_i) + X (T_below - T_i)
 *
 * with X = C/2 s between layers of which the lower is warmer when a step starts, else 0. N layers on the way spread a
 * front as N stirred tanks in a row do. Coolant counts as lighter the warmer it is, so not water below 4 degC.
 */
export class LayeredReservoir implements Store {
  readonly size: number;
  /** J/K of one layer */
  readonly promptCapacity: number;
  private readonly index: number;
  private readonly freezingPoint: number;
  private readonly returnLayer: number;
  private readonly drawOffLayer: number;
  /** whether layers k and k + 1 overturn in this step */
  private readonly overturns: Uint8Array;
  private readonly temperatures: Float64Array;
  private readonly pivots: Float64Array;
  private inflow: ReservoirInflow = { rate: 0, temperature: 0, gain: 0, around: 0 };

  constructor({ reservoir }: Config, filling: Filling, index: number) {
    const { layers, coolantVolume, returnHeight, drawOffHeight } = reservoir;
    this.index = index;
    this.size = layers;
    this.promptCapacity = (coolantVolume / layers) * filling.density * filling.heatCapacity;
    this.freezingPoint = filling.coolant.freezingPoint;
    // Just between two layers a port belongs to the one on the way.
    const lower = Math.min(layers - 1, Math.floor(Math.min(returnHeight, drawOffHeight) * layers));
    const upper = Math.max(lower, Math.ceil(Math.max(returnHeight, drawOffHeight) * layers) - 1);
    const isUpward = returnHeight < drawOffHeight;
    this.returnLayer = isUpward ? lower : upper;
    this.drawOffLayer = isUpward ? upper : lower;
    this.overturns = new Uint8Array(layers - 1);
    this.temperatures = new Float64Array(layers);
    this.pivots = new Float64Array(layers);
  }

  fillStart(state: Float64Array, temperature: number): void {
    state.fill(temperature, this.index, this.index + this.size);
  }

  temperatureIn(state: Float64Array): number {
    return state[this.index + this.drawOffLayer];
  }

  meanIn(state: Float64Array): number {
    let sum = 0;
    for (let k = 0; k < this.size; k++) sum += state[this.index + k];
    return sum / this.size;
  }

  iceIn(): number {
    return 0;
  }

  freezingPointIn(): number {
    return this.freezingPoint;
  }

  iceGone(): number {
    return -1;
  }

  heatIn(state: Float64Array, reference: number): number {
    return this.size * this.promptCapacity * (this.meanIn(state) - reference);
  }

  survey(state: Float64Array, extremes: Extremes): void {
    for (let k = this.index; k < this.index + this.size; k++) {
      extremes.coldestCoolant = Math.min(extremes.coldestCoolant, state[k]);
      extremes.hottestCoolant = Math.max(extremes.hottestCoolant, state[k]);
    }
  }

  watch(state: Float64Array): void {
    for (let k = 0; k < this.overturns.length; k++) {
      this.overturns[k] = state[this.index + k] > state[this.index + k + 1] ? 1 : 0;
    }
  }

  solve({ s, base }: Stage, inflow: ReservoirInflow): number {
    this.inflow = inflow;
    const { size, index, promptCapacity, temperatures, pivots } = this;
    const store = promptCapacity * s;
    const around = (inflow.gain / size) * inflow.around;
    // Elimination from the bottom up, then back: each layer hangs on its neighbours alone.
    for (let k = 0; k < size; k++) {
      const below = this.fromBelow(k);
      const above = this.fromAbove(k);
      let held = store * base[index + k] + around;
      if (k === this.returnLayer) held += inflow.rate * inflow.temperature;
      let diagonal = store + inflow.gain / size + below + above;
      if (k === this.returnLayer) diagonal += inflow.rate;
      if (k > 0) {
        diagonal -= below * pivots[k - 1];
        held += below * temperatures[k - 1];
      }
      pivots[k] = above / diagonal;
      temperatures[k] = held / diagonal;
    }
    for (let k = size - 2; k >= 0; k--) temperatures[k] += pivots[k] * temperatures[k + 1];
    return temperatures[this.drawOffLayer];
  }

  takeUp({ reach, base, out, s }: Stage, returned: number): number {
    const { size, index, temperatures, inflow, promptCapacity } = this;
    let sum = 0;
    for (let k = 0; k < size; k++) {
      const place = index + k;
      out[place] = base[place] + reach * (temperatures[k] - base[place]);
      sum += temperatures[k];
    }
    out[index + this.returnLayer] += (reach * inflow.rate * (returned - inflow.temperature)) / (promptCapacity * s);
    return inflow.gain * (inflow.around - sum / size);
  }

  /** W/K that layer k gets from the one below: overturning, and the way of the coolant where it goes up. */
  private fromBelow(k: number): number {
    if (k === 0) return 0;
    const overturn = this.overturns[k - 1] * (this.promptCapacity / OVERTURN);
    const isOnWay = k > this.returnLayer && k <= this.drawOffLayer;
    return isOnWay ? overturn + this.inflow.rate : overturn;
  }

  private fromAbove(k: number): number {
    if (k === this.size - 1) return 0;
    const overturn = this.overturns[k] * (this.promptCapacity / OVERTURN);
    const isOnWay = k < this.returnLayer && k >= this.drawOffLayer;
    return isOnWay ? overturn + this.inflow.rate : overturn;
  }
}
