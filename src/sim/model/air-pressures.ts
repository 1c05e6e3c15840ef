import { AIR_GAS_CONSTANT } from '../fluids/moist-air.ts';
import type { AirDropLaw } from '../scenario/config/exchangers.ts';
import type { Config } from '../scenario/config.ts';
import { type Sentence, sentence } from '../sentence.ts';
import { airDropTimesDensity } from './drop-laws.ts';
import type { GasPath } from './gas-path.ts';

/** What the pressures of one instant follow from. Pa and K. */
interface PressureInputs {
  readonly manifoldPressure: number;
  readonly outsidePressure: number;
  /** air entering and leaving the core, for the density in its drop */
  readonly coreInletGuess: number;
  readonly coreOutlet: number;
}

/** A typed pressure is good to this share of itself; own judgement. */
const TYPED_PRECISION = 1e-3;

/**
 * Pressures along the air path for known flows, absolute in Pa.
 *
 *     intake   p1 = p0 - k m^2
 *     core     drop = (D(m) + a m^2 (T3 - T2)/T_mean)/rho, rho at the means of inlet and outlet:
 *              p2^2 - p3^2 = 2 drop rho R T_mean
 *     bypass   p_taken - p1 = K x |x|,   p_taken = p2 - share (p2 - p3)
 *
 * `share` is that of the recirculated air which is taken behind the plenum. Throttle upstream of the compressor: p3 is the
 * manifold pressure and the throttle makes p1. Downstream: p1 follows from the intake, and the throttle takes what is
 * left above the manifold pressure.
 */
export class AirPressures {
  inlet = 0;
  /** of the compressor */
  ratio = 1;
  coreDrop = 0;
  /** where the charge's dew point counts */
  coreOutlet = 0;
  manifold = 0;
  private readonly isUpstream: boolean;
  private readonly shareAfterCore: number;
  private readonly intakeDrop: number;
  private readonly bypassDrop: number;
  private readonly core: AirDropLaw;
  /** 2 R a, 0 where the law has no acceleration */
  private readonly coreAcceleration: number;
  /** drop times density for the core flow asked last [Pa kg/m3]; most rounds ask for the same flow */
  private dropTimesDensity = 0;
  private dropFlow = 0;
  private inputs: PressureInputs = { manifoldPressure: 0, outsidePressure: 0, coreInletGuess: 0, coreOutlet: 0 };

  constructor({ intake, bypass, core }: Config) {
    this.isUpstream = bypass.throttle === 'upstream';
    this.shareAfterCore = bypass.shareAfterCore;
    this.intakeDrop = intake.drop / intake.dropAtFlow ** 2;
    this.bypassDrop = bypass.drop / bypass.dropAtFlow ** 2;
    this.core = core.airDrop;
    this.coreAcceleration = core.airDrop.kind === 'table' ? 2 * AIR_GAS_CONSTANT * core.airDrop.acceleration : 0;
  }

  setInstant(inputs: PressureInputs): void {
    this.inputs = inputs;
  }

  standStill(): void {
    const { outsidePressure } = this.inputs;
    this.inlet = outsidePressure;
    this.ratio = 1;
    this.manifold = outsidePressure;
    this.coreOutlet = outsidePressure;
    this.coreDrop = 0;
  }

  behindIntake(flow: number): number {
    return this.inputs.outsidePressure - this.intakeDrop * flow * flow;
  }

  /** Valve closed, a compressor that takes in `perPressure` kg/s per Pa of its inlet; returns the flow [kg/s]. */
  openAt(perPressure: number, ratio: number): number {
    const { outsidePressure } = this.inputs;
    // m = a p1 and p1 = p0 - k m^2
    const root = Math.sqrt(1 + 4 * this.intakeDrop * perPressure * perPressure * outsidePressure);
    this.inlet = (2 * outsidePressure) / (1 + root);
    this.ratio = ratio;
    return perPressure * this.inlet;
  }

  /** Valve closed at a given flow; false where the intake takes all there is. */
  openWith(flow: number, ratio: number): boolean {
    this.inlet = this.behindIntake(flow);
    this.ratio = ratio;
    return this.inlet > 0;
  }

  /**
   * Valve closed or partly open, manifold held: the compressor makes what is needed; false where the intake takes all
   * there is.
   */
  held(gas: GasPath, target: number): boolean {
    this.inlet = this.behindIntake(gas.airFlow);
    if (!(this.inlet > 0)) return false;
    this.setBeforeCore(this.beforeCore(gas.coreFlow, target));
    this.coreOutlet = target;
    this.coreDrop = this.inlet * this.ratio - target;
    this.manifold = target;
    return true;
  }

  /** Valve open, compressor between the pressures that bypass and throttle leave it. */
  returning(gas: GasPath): void {
    const { shareAfterCore: share } = this;
    const x = gas.recirculatedFlow;
    const bypass = this.bypassDrop * x * Math.abs(x);
    const { manifoldPressure } = this.inputs;
    if (this.isUpstream) {
      const before = this.beforeCore(gas.coreFlow, manifoldPressure);
      this.inlet = before - share * (before - manifoldPressure) - bypass;
      this.setBeforeCore(before);
      return;
    }
    this.inlet = this.behindIntake(gas.airFlow);
    const taken = this.inlet + bypass;
    const squares = this.coreSquares(gas.coreFlow, this.inputs.coreInletGuess);
    // p_taken = (1 - share) p2 + share p3 with p2^2 - p3^2 known
    const root = Math.sqrt(Math.max(0, taken * taken - (1 - 2 * share) * squares));
    this.setBeforeCore((taken * taken + share * share * squares) / ((1 - share) * taken + share * root));
  }

  /** Valve open, a compressor that makes no pressure. */
  idling(gas: GasPath): void {
    this.inlet = this.isUpstream
      ? this.beforeCore(gas.coreFlow, this.inputs.manifoldPressure)
      : this.behindIntake(gas.airFlow);
    this.ratio = 1;
  }

  /** Pressure at which the bypass takes its air when the core's outlet is at the manifold pressure. */
  takenAtManifold(coreFlow: number, manifoldPressure: number): number {
    return this.shareAfterCore > 0 ? manifoldPressure : this.beforeCore(coreFlow, manifoldPressure);
  }

  /** Flow at which the open bypass takes `drop` [kg/s]. */
  bypassFlowAt(drop: number): number {
    return Math.sqrt(drop / this.bypassDrop);
  }

  /** Drop of the core behind the compressor, with its inlet temperature known [K]. */
  dropBehind(coreFlow: number, coreInlet: number): void {
    const before = this.ratio * this.inlet;
    this.coreOutlet = Math.sqrt(Math.max(0, before * before - this.coreSquares(coreFlow, coreInlet)));
    this.coreDrop = before - this.coreOutlet;
  }

  /** A throttle only takes pressure: refuses a manifold pressure that it would have to raise. */
  refusal(flow: number, when: string): Sentence | undefined {
    const beforeThrottle = this.behindIntake(flow);
    const needed = this.isUpstream ? this.inlet : this.manifold;
    const there = this.isUpstream ? beforeThrottle : this.coreOutlet;
    if (needed <= there * (1 + TYPED_PRECISION)) return undefined;
    const where = this.isUpstream ? 'at the compressor inlet' : 'before the throttle';
    return sentence`a manifold pressure of ${{ pressure: this.manifold }} cannot be reached with the bypass open, ${when}: it needs ${{ pressure: needed }} ${where}, there are ${{ pressure: there }}: lower the manifold pressure of the phase, or check swept volume and bypass drop`;
  }

  private beforeCore(coreFlow: number, after: number): number {
    return Math.sqrt(after * after + this.coreSquares(coreFlow, this.inputs.coreInletGuess));
  }

  private setBeforeCore(pressure: number): void {
    this.ratio = pressure / this.inlet;
  }

  private coreSquares(flow: number, inlet: number): number {
    if (flow !== this.dropFlow) {
      this.dropFlow = flow;
      this.dropTimesDensity = airDropTimesDensity(this.core, flow);
    }
    const { coreOutlet } = this.inputs;
    const atConstantSpeed = this.dropTimesDensity * AIR_GAS_CONSTANT * (inlet + coreOutlet);
    if (this.coreAcceleration === 0) return atConstantSpeed;
    return atConstantSpeed + this.coreAcceleration * flow * flow * (coreOutlet - inlet);
  }
}
