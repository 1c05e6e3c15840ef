import { AIR_GAS_CONSTANT, AIR_HEAT_CAPACITY } from '../fluids/moist-air.ts';
import type { ExchangerConfig } from '../scenario/config/exchangers.ts';
import { PART_WORDS } from '../scenario/config/loop.ts';
import type { Stage } from '../solver/stage-system.ts';
import { CellBlock, type Extremes } from './cell-block.ts';
import { conductanceAt } from './conductance.ts';
import { coolantDropAt } from './drop-laws.ts';
import { type ExchangerAir, emptyRates, type LoopElement, type LoopSurroundings } from './loop-element.ts';

/** A coolant-to-air exchanger as cross-flow cells; its valve may send the coolant past it. */
export class ExchangerRun implements LoopElement {
  readonly place: 'exchanger' | 'secondExchanger';
  readonly isLine = false;
  readonly block: CellBlock;
  readonly config: ExchangerConfig;
  isBypassed = false;
  /** W/K of the cooling air, and its temperature on entering [K] */
  airRate = 0;
  airIn = 0;
  private readonly density: number;
  private readonly rates = emptyRates();
  private flow = 0;
  private resistanceFactor = 1;

  /** @param perVolume - heat capacity of the coolant [J/(m3 K)] */
  constructor(
    config: ExchangerConfig,
    part: 'exchanger' | 'secondExchanger',
    offset: number,
    density: number,
    perVolume: number,
  ) {
    this.config = config;
    this.place = part;
    this.density = density;
    const { cellsAlongAir, cellsAlongCoolant, metalHeatCapacity, coolantVolume } = config;
    this.block = new CellBlock(cellsAlongAir, cellsAlongCoolant, offset, metalHeatCapacity, coolantVolume * perVolume);
  }

  /** W from the cooling air into the metal (negative while it cools). */
  get heat(): number {
    return this.airRate * (this.airIn - this.block.airOut);
  }

  /** Cooling air leaving; its inlet temperature where none flows. */
  get airOut(): number {
    return this.airRate > 0 ? this.block.airOut : this.airIn;
  }

  setFlow(flow: number, rate: number): void {
    this.flow = this.isBypassed ? 0 : flow;
    this.rates.coolantRate = this.isBypassed ? 0 : rate;
  }

  fillMetal(state: Float64Array, temperature: number): void {
    this.block.fillMetal(state, temperature);
  }

  sweep(stage: Stage, inlet: number, near: LoopSurroundings): number {
    this.setRates(near[`${this.place}Air`]);
    this.block.sweep(this.rates, stage, this.airIn, inlet);
    return this.isBypassed ? inlet : this.block.coolantOut;
  }

  march(state: Float64Array, inlet: number, near: LoopSurroundings): number {
    this.setRates(near[`${this.place}Air`]);
    this.block.march(this.rates, state, this.airIn, inlet);
    return this.isBypassed ? inlet : this.block.coolantOut;
  }

  rise(flow: number): number {
    return this.isBypassed ? 0 : -this.resistanceFactor * coolantDropAt(this.config.coolantDrop, flow);
  }

  scaleResistance(factor: number): void {
    this.resistanceFactor *= factor;
  }

  get watchedPlaces(): Int32Array[] {
    return [this.block.watchedPlaces()];
  }

  watchFront(state: Float64Array, duration: number): void {
    this.block.watchFront(state, this.rates.coolantRate * duration);
  }

  survey(state: Float64Array, reference: number, extremes: Extremes): number {
    return this.block.survey(state, reference, extremes);
  }

  placeOf(state: Float64Array, temperature: number): string {
    if (!this.block.holdsCoolantAt(state, temperature)) return '';
    return `in the ${PART_WORDS[this.place]}`;
  }

  private setRates({ speed, temperature, pressure }: ExchangerAir): void {
    const { config, rates } = this;
    const massFlow = (speed * config.faceArea * pressure) / (AIR_GAS_CONSTANT * temperature);
    this.airIn = temperature;
    this.airRate = massFlow * AIR_HEAT_CAPACITY;
    rates.airRate = this.airRate;
    rates.airConductance = massFlow > 0 ? conductanceAt(config.airConductance, massFlow) : 0;
    rates.coolantConductance = conductanceAt(config.coolantConductance, this.flow * this.density);
  }
}
