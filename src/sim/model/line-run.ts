import { type LineConfig, type LinePlace, PART_WORDS } from '../scenario/config/loop.ts';
import type { Stage } from '../solver/stage-system.ts';
import { type BlockRates, CellBlock, type Extremes } from './cell-block.ts';
import { emptyRates, type LoopElement, type LoopSurroundings } from './loop-element.ts';
import { type FlowResistance, segmentDrop } from './loop-flow.ts';
import { segmentVolume } from './loop-volume.ts';

/** One line cell is at most this long [m]; a stretch has at least {@link FEWEST_LINE_CELLS}. Own choice. */
const LINE_CELL_LENGTH = 0.07;
const FEWEST_LINE_CELLS = 4;

/** One stretch of line of one bore: a row of cells, wall beside coolant. */
export interface LineStretch {
  readonly block: CellBlock;
  readonly rates: BlockRates;
  readonly resistance: FlowResistance;
  readonly coolantConductance: number;
  readonly wallToBay: number;
  /** m3 and m */
  readonly volume: number;
  readonly length: number;
  /** Pa s, of its coolant */
  viscosity: number;
}

/** A line: its stretches one after the other. */
export class LineRun implements LoopElement {
  readonly place: LinePlace;
  readonly isLine = true;
  readonly stretches: readonly LineStretch[];
  /** numbers in the state, from `offset` on */
  readonly size: number;
  /** W from the bay into the walls, after a sweep or a march */
  heat = 0;
  private readonly density: number;
  private rate = 0;
  private resistanceFactor = 1;

  /** @param perVolume - heat capacity of the coolant [J/(m3 K)] */
  constructor(line: LineConfig, offset: number, density: number, perVolume: number) {
    let end = offset;
    this.place = line.after;
    this.density = density;
    this.stretches = line.segments.map((segment) => {
      const cells = Math.max(FEWEST_LINE_CELLS, Math.ceil(segment.length / LINE_CELL_LENGTH));
      const volume = segmentVolume(segment);
      const block = new CellBlock(1, cells, end, line.wallHeatCapacity * segment.length, volume * perVolume);
      end += block.size;
      return {
        block,
        rates: emptyRates(),
        resistance: { ...segment, roughness: line.roughness },
        coolantConductance: line.coolantToWall * segment.length,
        wallToBay: line.wallToBay * segment.length,
        volume,
        length: segment.length,
        viscosity: 0,
      };
    });
    this.size = end - offset;
  }

  setFlow(_flow: number, rate: number): void {
    this.rate = rate;
  }

  fillMetal(state: Float64Array, temperature: number): void {
    for (const { block } of this.stretches) block.fillMetal(state, temperature);
  }

  sweep(stage: Stage, inlet: number, { bay }: LoopSurroundings): number {
    let temperature = inlet;
    this.heat = 0;
    for (const stretch of this.stretches) {
      this.setRates(stretch, bay);
      stretch.block.sweep(stretch.rates, stage, bay, temperature);
      temperature = this.leave(stretch, bay);
    }
    return temperature;
  }

  march(state: Float64Array, inlet: number, { bay }: LoopSurroundings): number {
    let temperature = inlet;
    this.heat = 0;
    for (const stretch of this.stretches) {
      this.setRates(stretch, bay);
      stretch.block.march(stretch.rates, state, bay, temperature);
      temperature = this.leave(stretch, bay);
    }
    return temperature;
  }

  rise(flow: number): number {
    let drop = 0;
    for (const { resistance, viscosity } of this.stretches) {
      drop += segmentDrop(resistance, flow, this.density, viscosity);
    }
    return -this.resistanceFactor * drop;
  }

  scaleResistance(factor: number): void {
    this.resistanceFactor *= factor;
  }

  get watchedPlaces(): Int32Array[] {
    return this.stretches.map(({ block }) => block.watchedPlaces());
  }

  watchFront(state: Float64Array, duration: number): void {
    for (const { block } of this.stretches) block.watchFront(state, this.rate * duration);
  }

  survey(state: Float64Array, reference: number, extremes: Extremes): number {
    let heat = 0;
    for (const { block } of this.stretches) heat += block.survey(state, reference, extremes);
    return heat;
  }

  placeOf(state: Float64Array, temperature: number): string {
    const isHere = this.stretches.some(({ block }) => block.holdsCoolantAt(state, temperature));
    return isHere ? `in the line after the ${PART_WORDS[this.place]}` : '';
  }

  private setRates({ rates, coolantConductance, wallToBay }: LineStretch, bay: number): void {
    rates.coolantRate = this.rate;
    rates.coolantConductance = coolantConductance;
    rates.metalLoss = wallToBay;
    rates.metalSource = wallToBay * bay;
  }

  private leave({ wallToBay, block }: LineStretch, bay: number): number {
    this.heat += wallToBay * (bay - block.metalMean);
    return block.coolantOut;
  }
}
