import type { CoreConfig } from '../scenario/config/exchangers.ts';
import type { HeatSinkConfig, LinePlace, PumpConfig } from '../scenario/config/loop.ts';
import { coolantDropAt } from './drop-laws.ts';
import type { LoopElement } from './loop-element.ts';
import { pumpPressure } from './loop-flow.ts';

/** What holds no heat of its own: nothing of it stands in the state. */
abstract class Device implements Omit<LoopElement, 'rise'> {
  abstract readonly place: LinePlace;
  readonly isLine = false;
  readonly watchedPlaces = [];
  protected rate = 0;

  setFlow(_flow: number, rate: number): void {
    this.rate = rate;
  }

  fillMetal(): void {}

  sweep(_stage: unknown, inlet: number): number {
    return this.leaving(inlet);
  }

  march(_state: unknown, inlet: number): number {
    return this.leaving(inlet);
  }

  scaleResistance(_factor: number): void {}

  watchFront(): void {}

  survey(): number {
    return 0;
  }

  placeOf(): string {
    return '';
  }

  protected abstract leaving(inlet: number): number;
}

/**
 * Heat of a pump's motor and its losses into the coolant that it moves.
 *
 *     q = P s r^3    P = electrical power at rated voltage, s = share of it into the coolant
 *
 * Speed goes with voltage and power with the cube of speed (F. M. White, Fluid Mechanics, as in wire-drop.ts).
 *
 * @param pump - the pump
 * @param voltageRatio - voltage at the pump over its rated voltage [-]
 * @returns heat into the coolant in W
 */
export function pumpHeat({ electricalPower, shareIntoCoolant }: PumpConfig, voltageRatio: number): number {
  return electricalPower * shareIntoCoolant * voltageRatio ** 3;
}

/** A pump: pressure, and the heat of its motor and its losses; held shut by another, it keeps that heat. */
export class Pump extends Device {
  readonly place: 'pump' | 'secondPump';
  readonly config: PumpConfig;
  /** voltage at the pump over its rated voltage */
  voltageRatio = 0;
  /** W into the coolant */
  heat = 0;

  constructor(config: PumpConfig, place: 'pump' | 'secondPump') {
    super();
    this.place = place;
    this.config = config;
  }

  rise(flow: number): number {
    return pumpPressure(this.config, this.voltageRatio, flow);
  }

  protected leaving(inlet: number): number {
    this.heat = this.rate > 0 ? pumpHeat(this.config, this.voltageRatio) : 0;
    return this.rate > 0 ? inlet + this.heat / this.rate : inlet;
  }
}

/**
 * An extra heat sink: heat by the temperature of the coolant that leaves it, as from a plate that its coolant stirs.
 *
 *     m c (T_in - T_out) = Q(T_out)
 *
 * Q rises with T_out, so there is one answer, and it never passes the temperature at which Q is 0.
 */
export class HeatSink extends Device {
  readonly place = 'heatSink';
  isOn = true;
  /** W into the coolant: negative while it cools */
  heat = 0;
  private readonly config: HeatSinkConfig;

  constructor(config: HeatSinkConfig) {
    super();
    this.config = config;
  }

  rise(): number {
    return 0;
  }

  protected leaving(inlet: number): number {
    const { rate } = this;
    this.heat = 0;
    if (!this.isOn || rate === 0) return inlet;
    const { temperature, heat } = this.config;
    // The first stretch at whose warmer end more is drawn than the coolant brings; the end stretches run on.
    let k = 1;
    while (k < temperature.length - 1 && rate * (inlet - temperature[k]) > heat[k]) k++;
    const slope = (heat[k] - heat[k - 1]) / (temperature[k] - temperature[k - 1]);
    const out = (rate * inlet - heat[k] + slope * temperature[k]) / (rate + slope);
    this.heat = rate * (out - inlet);
    return out;
  }
}

/** The core as the flow meets it: its cells stand between the two halves of the ring. */
export class CoreResistance extends Device {
  readonly place = 'core';
  private readonly config: CoreConfig;
  private resistanceFactor = 1;

  constructor(config: CoreConfig) {
    super();
    this.config = config;
  }

  rise(flow: number): number {
    return -this.resistanceFactor * coolantDropAt(this.config.coolantDrop, flow);
  }

  override scaleResistance(factor: number): void {
    this.resistanceFactor *= factor;
  }

  protected leaving(inlet: number): number {
    return inlet;
  }
}
