import { findRoot } from '../kernels/root-finding.ts';
import type { LinePlace } from '../scenario/config/loop.ts';
import type { Stage } from '../solver/stage-system.ts';
import type { Extremes } from './cell-block.ts';
import type { LoopElement, LoopSurroundings } from './loop-element.ts';

const TOLERANCE = 1e-11;

/** Elements one after the other. */
export type Row = readonly LoopElement[];

/** Pressure that a row of elements gains at a flow [Pa]. */
export function riseOf(row: Row, flow: number): number {
  let rise = 0;
  for (let k = 0; k < row.length; k++) rise += row[k].rise(flow);
  return rise;
}

/**
 * Two ways between which the coolant divides, so that both gain or lose the same pressure; what leaves them mixes.
 *
 * Assumes a non-return valve where one way would push the other backwards: a weak pump beside a strong one is held
 * shut.
 */
export class ParallelWays implements LoopElement {
  readonly place: LinePlace;
  readonly isLine = false;
  readonly first: Row;
  readonly second: Row;
  /** share of the flow that goes the first way */
  share = 0.5;

  constructor(first: Row, second: Row, place: 'ways' | 'secondWays') {
    this.place = place;
    this.first = first;
    this.second = second;
  }

  get watchedPlaces(): Int32Array[] {
    return this.all.flatMap(({ watchedPlaces }) => watchedPlaces);
  }

  setFlow(flow: number, rate: number): void {
    if (flow > 0) this.divide(flow);
    for (const element of this.first) element.setFlow(this.share * flow, this.share * rate);
    for (const element of this.second) element.setFlow((1 - this.share) * flow, (1 - this.share) * rate);
  }

  fillMetal(state: Float64Array, temperature: number): void {
    for (const element of this.all) element.fillMetal(state, temperature);
  }

  sweep(stage: Stage, inlet: number, near: LoopSurroundings): number {
    let first = inlet;
    let second = inlet;
    for (const element of this.first) first = element.sweep(stage, first, near);
    for (const element of this.second) second = element.sweep(stage, second, near);
    return this.mixed(first, second);
  }

  march(state: Float64Array, inlet: number, near: LoopSurroundings): number {
    let first = inlet;
    let second = inlet;
    for (const element of this.first) first = element.march(state, first, near);
    for (const element of this.second) second = element.march(state, second, near);
    return this.mixed(first, second);
  }

  rise(flow: number): number {
    if (flow === 0) return Math.max(riseOf(this.first, 0), riseOf(this.second, 0));
    this.divide(flow);
    return this.share > 0 ? riseOf(this.first, this.share * flow) : riseOf(this.second, flow);
  }

  scaleResistance(factor: number): void {
    for (const element of this.all) element.scaleResistance(factor);
  }

  watchFront(state: Float64Array, duration: number): void {
    for (const element of this.all) element.watchFront(state, duration);
  }

  survey(state: Float64Array, reference: number, extremes: Extremes): number {
    let heat = 0;
    for (const element of this.all) heat += element.survey(state, reference, extremes);
    return heat;
  }

  placeOf(state: Float64Array, temperature: number): string {
    return this.all.map((element) => element.placeOf(state, temperature)).find((place) => place !== '') ?? '';
  }

  private get all(): LoopElement[] {
    return [...this.first, ...this.second];
  }

  private divide(flow: number): void {
    const gap = (share: number): number => riseOf(this.first, share * flow) - riseOf(this.second, (1 - share) * flow);
    if (gap(0) <= 0) this.share = 0;
    else if (gap(1) >= 0) this.share = 1;
    else this.share = findRoot(gap, 0, 1, TOLERANCE, this.share);
  }

  private mixed(first: number, second: number): number {
    return this.share * first + (1 - this.share) * second;
  }
}
