import { AIR_GAS_CONSTANT, AIR_HEAT_CAPACITY } from '../fluids/moist-air.ts';
import { findRoot } from '../kernels/root-finding.ts';
import { Secant } from '../kernels/secant.ts';
import type { Config } from '../scenario/config.ts';
import { DisplacementCompressor } from './compressor.ts';

/** What the air path is asked with. Temperatures in K. */
export interface AirPathInputs {
  /** 'wide open': valve closed, manifold pressure floats. 'part load': valve open, manifold pressure given */
  mode: 'wide open' | 'part load' | 'engine off';
  /** rpm of the engine */
  engineSpeed: number;
  /** Pa; part load only */
  manifoldPressure: number;
  /** air leaving the core */
  coreOutlet: number;
  /** air entering the core, for the density in the core's drop only */
  coreInletGuess: number;
  /** the casing is at (casingHeat + g T_rotor)/(casingConductance + g), g = its exchange with the air; W and W/K */
  casingHeat: number;
  casingConductance: number;
  /** the plenum metal likewise, with the air that leaves the core */
  plenumHeat: number;
  plenumConductance: number;
}

const ROOT_TOLERANCE = 1e-11;
const MOST_FLOW_ROUNDS = 40;
/** A typed pressure is good to this share of itself. */
const TYPED_PRECISION = 1e-3;
/** Air this hot behind the rotors means a mistyped machine: aluminium melts at 933.473 K (fixed point of ITS-90). */
const HOTTEST_ROTOR_OUTLET = 933.473;

/**
 * Ambient to engine at one instant: intake, mixing with recirculated air, compressor, casing, core drop, plenum,
 * engine. Air stays for milliseconds, so everything is algebraic; the circle of flow, pressures and temperatures is
 * one bracketed root, in the pressure ratio wide open and in the recirculated flow at part load.
 *
 * Results stand in the public fields after {@link solve}.
 */
export class AirPath {
  /** kg/s into the engine */
  airFlow = 0;
  /** kg/s from the discharge back to the compressor inlet; negative where air passes forward round the compressor */
  recirculatedFlow = 0;
  compressorFlow = 0;
  inletTemperature = 0;
  inletPressure = 0;
  pressureRatio = 1;
  rotorOutlet = 0;
  /** after the casing */
  dischargeTemperature = 0;
  coreInlet = 0;
  casingTemperature = 0;
  plenumTemperature = 0;
  chargeTemperature = 0;
  manifoldPressure = 0;
  coreDrop = 0;
  gasPower = 0;
  /** Pa at the core's outlet, where the charge's dew point counts */
  coreOutletPressure = 0;
  readonly compressor: DisplacementCompressor;
  /** intake air after pick-up */
  readonly freshAir: number;
  private readonly config: Config;
  private readonly ambientPressure: number;
  private readonly intakeDrop: number;
  private readonly bypassDrop: number;
  private readonly swallowing: number;
  private inputs!: AirPathInputs;
  private upstreamDischarge = 0;
  private readonly flowSecant = new Secant(-0.9, 0.9, 0.1);
  private readonly atPressureRatio = (ratio: number) => this.wideOpenExcess(ratio);
  private readonly atRecirculation = (flow: number) => this.partLoadExcess(flow);

  constructor(config: Config) {
    this.config = config;
    this.compressor = new DisplacementCompressor(config.compressor);
    this.freshAir = config.ambient.temperature + config.intake.pickUp;
    this.ambientPressure = config.ambient.pressure;
    this.intakeDrop = config.intake.drop / config.intake.dropAtFlow ** 2;
    this.bypassDrop = config.bypass.drop / config.bypass.dropAtFlow ** 2;
    const { volumetricEfficiency, displacement } = config.engine;
    this.swallowing = (volumetricEfficiency * displacement) / 120 / AIR_GAS_CONSTANT;
  }

  /** @returns '' or, where the circle has no answer, the reason in words */
  solve(inputs: AirPathInputs): string {
    this.inputs = inputs;
    if (inputs.mode === 'engine off') return this.standStill();
    this.compressor.setSpeed(inputs.engineSpeed * this.config.compressor.driveRatio);
    return inputs.mode === 'wide open' ? this.solveWideOpen() : this.solvePartLoad();
  }

  private standStill(): string {
    const { casingHeat, casingConductance, plenumHeat, plenumConductance } = this.inputs;
    this.airFlow = 0;
    this.recirculatedFlow = 0;
    this.compressorFlow = 0;
    this.inletTemperature = this.freshAir;
    this.inletPressure = this.ambientPressure;
    this.pressureRatio = 1;
    this.casingTemperature = casingHeat / casingConductance;
    this.rotorOutlet = this.casingTemperature;
    this.dischargeTemperature = this.casingTemperature;
    this.coreInlet = this.casingTemperature;
    this.plenumTemperature = plenumHeat / plenumConductance;
    this.chargeTemperature = this.plenumTemperature;
    this.manifoldPressure = this.ambientPressure;
    this.coreOutletPressure = this.ambientPressure;
    this.coreDrop = 0;
    this.gasPower = 0;
    return '';
  }

  private solveWideOpen(): string {
    const highest = this.compressor.highestPressureRatio();
    const ratio = findRoot(this.atPressureRatio, 0.3, highest, ROOT_TOLERANCE, this.pressureRatio);
    if (Number.isNaN(ratio)) {
      return `the engine and the compressor find no common air flow ${this.atSpeed} wide open (pressure ratios 0.3 to ${highest.toPrecision(3)} tried): check swept volume and drive ratio against the engine's displacement`;
    }
    this.wideOpenExcess(ratio);
    return this.isTooHot
      ? this.tooHot(`wide open, pressure ratio ${ratio.toPrecision(3)}: check swept volume and drive ratio`)
      : '';
  }

  /** Compressor flow less what the engine swallows, kg/s; falls as the pressure ratio rises. */
  private wideOpenExcess(ratio: number): number {
    const { ambientPressure, freshAir, intakeDrop } = this;
    // m = a p1 and p1 = p0 - k m^2
    const a = this.compressor.volumeFlow(ratio) / (AIR_GAS_CONSTANT * freshAir);
    const p1 = (2 * ambientPressure) / (1 + Math.sqrt(1 + 4 * intakeDrop * a * a * ambientPressure));
    const flow = a * p1;
    this.recirculatedFlow = 0;
    this.compressorFlow = flow;
    this.inletPressure = p1;
    this.inletTemperature = freshAir;
    this.pressureRatio = ratio;
    this.heatGas(freshAir * this.compressor.temperatureRatio(ratio) + this.idleRise(flow, p1));
    this.coreInlet = this.dischargeTemperature;
    this.airFlow = flow;
    const discharge = ratio * p1;
    this.dropThroughCore(discharge, flow, this.dischargeTemperature);
    this.manifoldPressure = this.coreOutletPressure;
    this.passPlenum(flow);
    return flow - this.swallowedFlow(this.manifoldPressure);
  }

  private solvePartLoad(): string {
    const flow = this.settleSwallowedFlow();
    this.airFlow = flow;
    const beforeThrottle = this.ambientPressure - this.intakeDrop * flow * flow;
    if (!(beforeThrottle > 0)) {
      return `the intake drop is more than the ${kilopascal(this.ambientPressure)} outside at ${flow.toPrecision(3)} kg/s, ${this.atSpeed}: check intake drop and its flow`;
    }
    const isUpstream = this.config.bypass.throttle === 'upstream';
    this.upstreamDischarge = isUpstream ? this.pressureBeforeCore(flow) : Number.NaN;
    const most = this.mostRecirculation(flow, isUpstream ? this.upstreamDischarge : beforeThrottle);
    // Forward round the compressor passes no more than the engine takes, and no pressure falls to nothing.
    const least = isUpstream ? -0.99 * flow : -Math.min(0.99 * flow, this.bypassFlowAt(0.99 * beforeThrottle));
    const root = findRoot(this.atRecirculation, least, most, ROOT_TOLERANCE, this.recirculatedFlow);
    if (Number.isNaN(root)) {
      return `no recirculated flow satisfies compressor, bypass and engine, ${this.atSpeed}: check swept volume, drive ratio and bypass drop, and the manifold pressure of the phase`;
    }
    this.partLoadExcess(root);
    this.dropThroughCore(this.pressureRatio * this.inletPressure, flow, this.coreInlet);
    this.manifoldPressure = this.inputs.manifoldPressure;
    const refusal = this.refusePressure(isUpstream, beforeThrottle);
    if (refusal !== '' || !this.isTooHot) return refusal;
    return this.tooHot(
      `part load, ${(root / flow).toPrecision(3)} times the engine's air recirculated: check the bypass drop and its flow`,
    );
  }

  /** No bypass takes more pressure than there is, and the compressor takes in no more than it sweeps. */
  private mostRecirculation(flow: number, inletAtMost: number): number {
    const { freshAir, config, compressor } = this;
    const { casingHeat, casingConductance } = this.inputs;
    const coldest = Math.min(freshAir, casingHeat / casingConductance);
    const swept = (compressor.volumeFlow(1) * inletAtMost) / (AIR_GAS_CONSTANT * coldest);
    const bySwept = Math.max(1.5 * swept - flow, 0.1 * flow);
    return config.bypass.throttle === 'upstream' ? Math.min(this.bypassFlowAt(0.99 * inletAtMost), bySwept) : bySwept;
  }

  /** Flow at which the open bypass takes `drop` [kg/s]. */
  private bypassFlowAt(drop: number): number {
    return Math.sqrt(drop / this.bypassDrop);
  }

  /** A throttle only takes pressure: refuses a manifold pressure that it would have to raise. */
  private refusePressure(isUpstream: boolean, beforeThrottle: number): string {
    const { manifoldPressure, inletPressure, coreOutletPressure } = this;
    const needed = isUpstream ? inletPressure : manifoldPressure;
    const there = isUpstream ? beforeThrottle : coreOutletPressure;
    if (needed <= there * (1 + TYPED_PRECISION)) return '';
    const where = isUpstream ? 'at the compressor inlet' : 'before the throttle';
    return `a manifold pressure of ${kilopascal(manifoldPressure)} cannot be reached with the bypass open, ${this.atSpeed}: it needs ${kilopascal(needed)} ${where}, there are ${kilopascal(there)}: lower the manifold pressure of the phase, or check swept volume and bypass drop`;
  }

  private get isTooHot(): boolean {
    return this.rotorOutlet > HOTTEST_ROTOR_OUTLET;
  }

  private tooHot(cause: string): string {
    return `air leaves the compressor rotors at ${Math.round(this.rotorOutlet - 273.15)} degC, ${this.atSpeed} ${cause}`;
  }

  private get atSpeed(): string {
    return `at ${Math.round(this.inputs.engineSpeed)} rpm`;
  }

  /** Flow that compressor inlet gets less what the compressor takes in, kg/s; rises with the recirculated flow. */
  private partLoadExcess(recirculated: number): number {
    const flow = this.airFlow;
    const bypass = this.bypassDrop * recirculated * Math.abs(recirculated);
    let p1: number;
    let p2: number;
    if (this.config.bypass.throttle === 'upstream') {
      p2 = this.upstreamDischarge;
      p1 = p2 - bypass;
    } else {
      p1 = this.ambientPressure - this.intakeDrop * flow * flow;
      p2 = p1 + bypass;
    }
    const ratio = p2 / p1;
    const total = flow + recirculated;
    this.recirculatedFlow = recirculated;
    this.compressorFlow = total;
    this.inletPressure = p1;
    this.pressureRatio = ratio;
    if (!this.mixAndHeat(total, p1, ratio)) return total;
    return total - (this.compressor.volumeFlow(ratio) * p1) / (AIR_GAS_CONSTANT * this.inletTemperature);
  }

  /**
   * Closed form of inlet, rotors and casing when discharge air returns to the inlet:
   * T1 = (T0 + r T2)/(1 + r), T_rotor = A T1 + w, T2 = alpha + beta T_rotor.
   *
   * @returns false where the returned air would heat itself without end
   */
  private mixAndHeat(total: number, p1: number, ratio: number): boolean {
    const { freshAir, airFlow: flow } = this;
    const rise = this.compressor.temperatureRatio(ratio);
    const idle = this.idleRise(total, p1);
    if (this.recirculatedFlow <= 0) {
      this.inletTemperature = freshAir;
      this.heatGas(rise * freshAir + idle);
      // Air that passed round the compressor joins its discharge unheated.
      this.coreInlet = (total * this.dischargeTemperature + (flow - total) * freshAir) / flow;
      return true;
    }
    const { casingHeat, casingConductance } = this.inputs;
    const rate = total * AIR_HEAT_CAPACITY;
    const passed = Math.exp(-this.config.casing.toDischargeAir / rate);
    const exchange = rate * (1 - passed);
    const alpha = ((1 - passed) * casingHeat) / (casingConductance + exchange);
    const beta = passed + ((1 - passed) * exchange) / (casingConductance + exchange);
    const returned = this.recirculatedFlow / total;
    const fresh = flow / total;
    const loop = 1 - rise * returned * beta;
    if (loop <= 0) return false;
    this.heatGas((rise * (fresh * freshAir + returned * alpha) + idle) / loop);
    this.inletTemperature = fresh * freshAir + returned * this.dischargeTemperature;
    this.coreInlet = this.dischargeTemperature;
    return true;
  }

  /** Temperature that the churning adds [K]. */
  private idleRise(flow: number, p1: number): number {
    return this.compressor.idlePower(p1) / (flow * AIR_HEAT_CAPACITY);
  }

  /** Gas leaves the rotors, then exchanges with the casing, whose temperature follows in closed form. */
  private heatGas(rotorOutlet: number): void {
    const { casingHeat, casingConductance } = this.inputs;
    const rate = this.compressorFlow * AIR_HEAT_CAPACITY;
    const passed = Math.exp(-this.config.casing.toDischargeAir / rate);
    const exchange = rate * (1 - passed);
    this.rotorOutlet = rotorOutlet;
    this.casingTemperature = (casingHeat + exchange * rotorOutlet) / (casingConductance + exchange);
    this.dischargeTemperature = this.casingTemperature + (rotorOutlet - this.casingTemperature) * passed;
    this.gasPower = rate * (rotorOutlet - this.inletTemperature);
  }

  /** Drop times mean density [Pa kg/m3]; density at the mean of inlet and outlet gives p2^2 - p3^2 = 2 drop rho R T. */
  private coreDropSquares(flow: number, inlet: number): number {
    const { drop, atFlow, atDensity, exponent } = this.config.core.airDrop;
    const dropTimesDensity = drop * (flow / atFlow) ** exponent * atDensity;
    return dropTimesDensity * AIR_GAS_CONSTANT * (inlet + this.inputs.coreOutlet);
  }

  private dropThroughCore(before: number, flow: number, inlet: number): void {
    const after = Math.sqrt(Math.max(0, before * before - this.coreDropSquares(flow, inlet)));
    this.coreOutletPressure = after;
    this.coreDrop = before - after;
  }

  private pressureBeforeCore(flow: number): number {
    const { manifoldPressure, coreInletGuess } = this.inputs;
    return Math.sqrt(manifoldPressure ** 2 + this.coreDropSquares(flow, coreInletGuess));
  }

  /** What the charge gives the plenum metal per K of difference, m cp (1 - exp[-UA/(m cp)]) [W/K]. */
  plenumExchange(flow: number): number {
    const rate = flow * AIR_HEAT_CAPACITY;
    return rate > 0 ? -rate * Math.expm1(-this.config.plenum.toChargeAir / rate) : 0;
  }

  private passPlenum(flow: number): void {
    const { plenumHeat, plenumConductance, coreOutlet } = this.inputs;
    const exchange = this.plenumExchange(flow);
    this.plenumTemperature = (plenumHeat + exchange * coreOutlet) / (plenumConductance + exchange);
    this.chargeTemperature =
      coreOutlet + (exchange / (flow * AIR_HEAT_CAPACITY)) * (this.plenumTemperature - coreOutlet);
  }

  /** Four-stroke swallowing at `chargeTemperature` and this manifold pressure [kg/s]. */
  private swallowedFlow(manifoldPressure: number): number {
    const { referenceTemperature, temperatureExponent } = this.config.engine;
    const charge = this.chargeTemperature;
    const efficiency = temperatureExponent === 0 ? 1 : (charge / referenceTemperature) ** temperatureExponent;
    return (this.swallowing * efficiency * this.inputs.engineSpeed * manifoldPressure) / charge;
  }

  /** At a given manifold pressure flow and charge temperature settle by repetition. */
  private settleSwallowedFlow(): number {
    this.chargeTemperature = this.inputs.coreOutlet;
    let flow = this.airFlow > 0 ? this.airFlow : this.swallowedFlow(this.inputs.manifoldPressure);
    this.flowSecant.start();
    for (let round = 0; round < MOST_FLOW_ROUNDS; round++) {
      this.passPlenum(flow);
      const swallowed = this.swallowedFlow(this.inputs.manifoldPressure);
      if (Math.abs(swallowed - flow) <= ROOT_TOLERANCE * flow) break;
      flow = this.flowSecant.next(flow, swallowed);
    }
    return flow;
  }
}

function kilopascal(pressure: number): string {
  return `${(pressure / 1e3).toFixed(1)} kPa`;
}
