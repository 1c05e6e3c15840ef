import { AIR_GAS_CONSTANT } from '../fluids/moist-air.ts';
import { findRoot } from '../kernels/root-finding.ts';
import { Secant } from '../kernels/secant.ts';
import { heldPressure } from '../scenario/config/compressor.ts';
import type { Config } from '../scenario/config.ts';
import { type Sentence, sentence } from '../sentence.ts';
import { AirPressures } from './air-pressures.ts';
import { CentrifugalCompressor } from './centrifugal-compressor.ts';
import type { Compressor } from './compressor.ts';
import { DisplacementCompressor } from './displacement-compressor.ts';
import { type GasInputs, GasPath } from './gas-path.ts';
import { Swallowing } from './swallowing.ts';

/** What the air path is asked with. Temperatures in K. */
export interface AirPathInputs extends GasInputs {
  /**
   * 'wide open': valve closed, manifold pressure floats or is held. 'part load': valve open, manifold pressure given
   */
  mode: 'wide open' | 'part load' | 'engine off';
  /** rpm of the engine */
  engineSpeed: number;
  /** Pa; part load only */
  manifoldPressure: number;
  /** Pa */
  outsidePressure: number;
  /** air entering the core, for the density in the core's drop only */
  coreInletGuess: number;
}

const ROOT_TOLERANCE = 1e-11;
const MOST_FLOW_ROUNDS = 60;
/** Air this hot behind the rotors means a mistyped compressor: aluminium melts at 933.473 K (fixed point of ITS-90). */
const HOTTEST_ROTOR_OUTLET = 933.473;
/** The root search for the pressure ratio begins here, far below what an engine draws; own judgement. */
const LOWEST_RATIO = 0.3;

/**
 * Ambient to engine at one instant: intake, mixing with recirculated air, compressor, casing, core drop, plenum,
 * engine. Air stays for milliseconds, so everything is algebraic; the circle of flow, pressures and temperatures is
 * one bracketed root: in the pressure ratio or the air flow wide open, in the recirculated flow at part load.
 *
 * What cooling does depends on the compressor. Displacement on a pulley: the mass hardly moves and the manifold
 * pressure falls. Centrifugal: the pressure is given by head, so a cooler charge is more mass. Pressure held: likewise.
 *
 * Results stand in the public fields after {@link solve}.
 */
export class AirPath {
  /** flows and temperatures */
  readonly gas: GasPath;
  readonly pressures: AirPressures;
  /**
   * how far the compressor falls short of its target pressure, as a share; negative while it holds it or has none, 1
   * where the intake passes none of what the target takes. Stands from one pull to the next
   */
  shortfall = -1;
  readonly compressor: Compressor;
  private readonly displacement: DisplacementCompressor | undefined;
  private readonly centrifugal: CentrifugalCompressor | undefined;
  private readonly config: Config;
  private readonly swallowing: Swallowing;
  /** whether the engine's air depends on what is returned */
  private readonly seesReturn: boolean;
  private readonly flowSecant = new Secant(-0.9, 0.9, 0.1);
  private inputs!: AirPathInputs;
  /** recirculated flow being tried [kg/s] */
  private trial = 0;
  private readonly atPressureRatio = (ratio: number) => this.floatingExcess(ratio);
  private readonly atFlow = (flow: number) => this.centrifugalExcess(flow);
  private readonly atReturn = (flow: number) => this.partLoadExcess(flow);
  private readonly atHeldReturn = (flow: number) => this.heldExcess(flow);

  constructor(config: Config) {
    const { compressor, bypass, core } = config;
    this.config = config;
    this.gas = new GasPath(config);
    this.pressures = new AirPressures(config);
    this.swallowing = new Swallowing(config.engine);
    if (compressor.kind === 'displacement') {
      this.displacement = new DisplacementCompressor(compressor);
      this.compressor = this.displacement;
    } else {
      this.centrifugal = new CentrifugalCompressor(compressor);
      this.compressor = this.centrifugal;
    }
    this.seesReturn = bypass.shareAfterCore > 0 || core.leakPast > 0;
  }

  /** @returns why the circle has no answer; undefined where it has one */
  solve(inputs: AirPathInputs): Sentence | undefined {
    const { config, displacement, centrifugal } = this;
    this.inputs = inputs;
    this.pressures.setInstant(inputs);
    if (inputs.mode === 'engine off') {
      this.compressor.setSpeed(0);
      this.gas.standStill(inputs);
      this.pressures.standStill();
      return undefined;
    }
    const { compressor } = config;
    const isDriven = compressor.kind !== 'turbine-driven';
    // A turbine that is asked for no pressure leaves its compressor idling.
    this.compressor.setSpeed(isDriven ? inputs.engineSpeed * compressor.driveRatio : 0);
    const isWideOpen = inputs.mode === 'wide open';
    if (displacement) return isWideOpen ? this.openDisplacement(displacement) : this.returnByDisplacement(displacement);
    if (centrifugal) return isWideOpen ? this.openCentrifugal(centrifugal) : this.returnStated();
    return undefined;
  }

  private openDisplacement(machine: DisplacementCompressor): Sentence | undefined {
    const { config, gas, pressures } = this;
    const target = heldPressure(config.compressor);
    if (target !== undefined) {
      // With nothing returned: what the compressor lacks for the engine at its target.
      this.shortfall = this.heldExcess(0) / gas.airFlow;
      if (this.shortfall < 0) return this.holdByBypass(machine, target);
    }
    const highest = machine.highestPressureRatio();
    const ratio = findRoot(this.atPressureRatio, LOWEST_RATIO, highest, ROOT_TOLERANCE, pressures.ratio);
    if (Number.isNaN(ratio)) {
      return sentence`the engine and the compressor find no common air flow ${this.atSpeed} wide open (pressure ratios ${LOWEST_RATIO} to ${highest.toPrecision(3)} tried): check swept volume and drive ratio against the engine's displacement`;
    }
    this.floatingExcess(ratio);
    return this.isTooHot
      ? this.tooHot(`wide open, pressure ratio ${ratio.toPrecision(3)}: check swept volume and drive ratio`)
      : undefined;
  }

  /** Compressor flow less what the engine swallows, kg/s; falls as the pressure ratio rises. */
  private floatingExcess(ratio: number): number {
    const { gas, inputs, pressures, displacement } = this;
    if (!displacement) return Number.NaN;
    const flow = pressures.openAt(displacement.volumeFlow(ratio) / (AIR_GAS_CONSTANT * inputs.freshAir), ratio);
    gas.setFlows(flow, 0);
    gas.pass(inputs, this.compressor, pressures.inlet, ratio);
    gas.passPlenum(inputs);
    pressures.dropBehind(gas.coreFlow, gas.coreInlet);
    pressures.manifold = pressures.coreOutlet;
    return flow - this.swallowed(pressures.manifold);
  }

  /** The valve opens just so far that the surplus goes round. */
  private holdByBypass(machine: DisplacementCompressor, target: number): Sentence | undefined {
    const { gas } = this;
    const most = this.mostReturn(machine, gas.airFlow, this.inputs.outsidePressure);
    const root = findRoot(this.atHeldReturn, 0, most, ROOT_TOLERANCE, gas.recirculatedFlow);
    if (Number.isNaN(root)) {
      return sentence`no recirculated flow holds the manifold at ${{ pressure: target }}, ${this.atSpeed}: check swept volume, drive ratio and target pressure`;
    }
    this.heldExcess(root);
    return this.isTooHot
      ? this.tooHot(
          sentence`with the manifold held at ${{ pressure: target }}: check swept volume, drive ratio and target pressure`,
        )
      : undefined;
  }

  /** As {@link partLoadExcess} with the manifold at its target. */
  private heldExcess(recirculated: number): number {
    const target = heldPressure(this.config.compressor);
    if (target === undefined) return Number.NaN;
    this.trial = recirculated;
    return this.settleEngine(target, true) ? this.inletExcess() : this.gas.compressorFlow;
  }

  private openCentrifugal(machine: CentrifugalCompressor): Sentence | undefined {
    const { inputs, pressures, gas } = this;
    const { compressor } = this.config;
    if (compressor.kind === 'turbine-driven') {
      this.trial = 0;
      const isSettled = this.settleEngine(compressor.targetManifoldPressure, true);
      if (!(pressures.inlet > 0)) this.shortfall = 1;
      else if (isSettled) {
        this.shortfall = machine.speedFor(pressures.ratio, inputs.freshAir) / compressor.highestSpeed - 1;
      } else return this.noFlow('at the target pressure');
      if (this.shortfall <= 0) return this.isTooHot ? this.tooHot('wide open: check the target pressure') : undefined;
      this.compressor.setSpeed(compressor.highestSpeed);
    }
    const ratio = machine.pressureRatioAt(inputs.freshAir);
    const most = 2 * this.swallowing.flowAt(inputs.engineSpeed, ratio * inputs.outsidePressure, inputs.coreOutlet);
    const flow = findRoot(this.atFlow, 1e-6 * most, most, ROOT_TOLERANCE, gas.airFlow);
    if (Number.isNaN(flow)) return this.noFlow('wide open');
    this.centrifugalExcess(flow);
    return this.isTooHot ? this.tooHot('wide open: check drive ratio, typed boost and idle power') : undefined;
  }

  /** What the engine swallows less the flow, kg/s; falls as the flow rises. */
  private centrifugalExcess(flow: number): number {
    const { gas, inputs, pressures, centrifugal } = this;
    if (!centrifugal || !pressures.openWith(flow, centrifugal.pressureRatioAt(inputs.freshAir))) return -flow;
    gas.setFlows(flow, 0);
    gas.pass(inputs, this.compressor, pressures.inlet, pressures.ratio);
    gas.passPlenum(inputs);
    pressures.dropBehind(gas.coreFlow, gas.coreInlet);
    pressures.manifold = pressures.coreOutlet;
    return this.swallowed(pressures.manifold) - flow;
  }

  private returnByDisplacement(machine: DisplacementCompressor): Sentence | undefined {
    const { config, gas, inputs, pressures } = this;
    const { manifoldPressure } = inputs;
    const flow = this.settleEngineAlone(manifoldPressure);
    const beforeThrottle = pressures.behindIntake(flow);
    if (!(beforeThrottle > 0)) {
      return sentence`the intake drop is more than the ${{ pressure: inputs.outsidePressure }} outside at ${flow.toPrecision(3)} kg/s, ${this.atSpeed}: check intake drop and its flow`;
    }
    const isUpstream = config.bypass.throttle === 'upstream';
    const taken = isUpstream ? pressures.takenAtManifold(gas.coreFlow, manifoldPressure) : beforeThrottle;
    const bySwept = this.mostReturn(machine, flow, taken);
    const most = isUpstream ? Math.min(pressures.bypassFlowAt(0.99 * taken), bySwept) : bySwept;
    // Forward round the compressor passes no more than the engine takes, and no pressure falls to nothing.
    const least = isUpstream ? -0.99 * flow : -Math.min(0.99 * flow, pressures.bypassFlowAt(0.99 * beforeThrottle));
    const root = findRoot(this.atReturn, least, most, ROOT_TOLERANCE, gas.recirculatedFlow);
    if (Number.isNaN(root)) {
      return sentence`no recirculated flow satisfies compressor, bypass and engine, ${this.atSpeed}: check swept volume, drive ratio and bypass drop, and the manifold pressure of the phase`;
    }
    this.partLoadExcess(root);
    return this.finishPartLoad();
  }

  /** Flow that the compressor inlet gets less what the compressor takes in, kg/s; rises with the recirculated flow. */
  private partLoadExcess(recirculated: number): number {
    const { gas, inputs, pressures } = this;
    this.trial = recirculated;
    if (this.seesReturn) {
      return this.settleEngine(inputs.manifoldPressure, false) ? this.inletExcess() : gas.compressorFlow;
    }
    gas.setFlows(gas.airFlow, recirculated);
    pressures.returning(gas);
    if (!(pressures.inlet > 0 && pressures.ratio > 0)) return gas.compressorFlow;
    const hasPassed = gas.pass(inputs, this.compressor, pressures.inlet, pressures.ratio);
    return hasPassed ? this.inletExcess() : gas.compressorFlow;
  }

  private inletExcess(): number {
    const { gas, pressures, displacement } = this;
    if (!displacement) return Number.NaN;
    const taken =
      (displacement.volumeFlow(pressures.ratio) * pressures.inlet) / (AIR_GAS_CONSTANT * gas.inletTemperature);
    return gas.compressorFlow - taken;
  }

  /** A compressor that makes no pressure with its valve open, and sends a stated share round. */
  private returnStated(): Sentence | undefined {
    return this.settleEngine(this.inputs.manifoldPressure, false) ? this.finishPartLoad() : this.noFlow('at part load');
  }

  private finishPartLoad(): Sentence | undefined {
    const { gas, inputs, pressures } = this;
    gas.passPlenum(inputs);
    pressures.dropBehind(gas.coreFlow, gas.coreInlet);
    pressures.manifold = inputs.manifoldPressure;
    const refusal = pressures.refusal(gas.airFlow, this.atSpeed);
    if (refusal !== undefined || !this.isTooHot) return refusal;
    return this.tooHot(
      `part load, ${(gas.recirculatedFlow / gas.airFlow).toPrecision(3)} times the engine's air recirculated: check the bypass drop and its flow`,
    );
  }

  /**
   * Bound on the recirculated flow: the compressor takes in no more than it sweeps, half of it spare for the leak that
   * turns round below pressure ratio 1; a tenth of the engine's air at least, so that the search has room. Own
   * judgement.
   */
  private mostReturn(machine: DisplacementCompressor, flow: number, inletPressure: number): number {
    const { freshAir, coreOutlet, casingHeat, casingConductance, plenumHeat, plenumConductance } = this.inputs;
    const coldest = Math.min(freshAir, coreOutlet, casingHeat / casingConductance, plenumHeat / plenumConductance);
    const swept = (machine.volumeFlow(1) * inletPressure) / (AIR_GAS_CONSTANT * coldest);
    return Math.max(1.5 * swept - flow, 0.1 * flow);
  }

  /** Flow that the engine takes at a given manifold pressure, nothing returned; left in `gas`. */
  private settleEngineAlone(manifoldPressure: number): number {
    const { gas, inputs } = this;
    let flow = this.firstFlow(manifoldPressure);
    // What leaks past the core is not known yet.
    gas.coreInlet = inputs.coreInletGuess;
    this.flowSecant.start();
    for (let round = 0; round < MOST_FLOW_ROUNDS; round++) {
      gas.setFlows(flow, 0);
      gas.passPlenum(inputs);
      const swallowed = this.swallowed(manifoldPressure);
      if (Math.abs(swallowed - flow) <= ROOT_TOLERANCE * flow) break;
      flow = this.flowSecant.next(flow, swallowed);
    }
    return flow;
  }

  /** Flow, pressures and temperatures at a given manifold pressure for the recirculated flow being tried. */
  private settleEngine(manifoldPressure: number, isHeld: boolean): boolean {
    const { gas, inputs, pressures, config, centrifugal } = this;
    const { compressor, bypass } = config;
    const isStated = centrifugal !== undefined && !isHeld;
    let flow = this.firstFlow(manifoldPressure);
    this.flowSecant.start();
    for (let round = 0; round < MOST_FLOW_ROUNDS; round++) {
      gas.setFlows(flow, isStated ? bypass.recirculation * flow : this.trial);
      if (isHeld) {
        if (!pressures.held(gas, manifoldPressure)) return false;
      } else if (isStated) pressures.idling(gas);
      else pressures.returning(gas);
      if (compressor.kind === 'turbine-driven' && isHeld && centrifugal) {
        const needed = centrifugal.speedFor(pressures.ratio, inputs.freshAir);
        centrifugal.setSpeed(Math.min(needed, compressor.highestSpeed));
      }
      if (!(pressures.inlet > 0 && pressures.ratio > 0)) return false;
      if (!gas.pass(inputs, this.compressor, pressures.inlet, pressures.ratio)) return false;
      gas.passPlenum(inputs);
      const swallowed = this.swallowed(manifoldPressure);
      if (Math.abs(swallowed - flow) <= ROOT_TOLERANCE * flow) return true;
      flow = this.flowSecant.next(flow, swallowed);
    }
    return false;
  }

  private firstFlow(manifoldPressure: number): number {
    const { gas, inputs } = this;
    return gas.airFlow > 0
      ? gas.airFlow
      : this.swallowing.flowAt(inputs.engineSpeed, manifoldPressure, inputs.coreOutlet);
  }

  private swallowed(manifoldPressure: number): number {
    return this.swallowing.flowAt(this.inputs.engineSpeed, manifoldPressure, this.gas.chargeTemperature);
  }

  private get isTooHot(): boolean {
    return this.gas.rotorOutlet > HOTTEST_ROTOR_OUTLET;
  }

  private tooHot(cause: string | Sentence): Sentence {
    return sentence`air leaves the compressor rotors at ${{ temperature: this.gas.rotorOutlet }}, ${this.atSpeed} ${cause}`;
  }

  private noFlow(when: string): Sentence {
    return sentence`the engine finds no air flow ${this.atSpeed} ${when}: check displacement, core pressure drop and intake drop`;
  }

  private get atSpeed(): string {
    return `at ${Math.round(this.inputs.engineSpeed)} rpm`;
  }
}
