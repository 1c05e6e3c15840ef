import { AIR_HEAT_CAPACITY } from '../fluids/moist-air.ts';
import type { Config } from '../scenario/config.ts';
import type { Stage } from '../solver/stage-system.ts';
import type { AirPath } from './air-path.ts';
import type { GasInputs } from './gas-path.ts';
import { sensorTimeConstant } from './sensor.ts';

/** W/K that hold a lump at a known temperature while outlets are only read off */
const HELD = 1e15;

/** What the lumps meet beside the air. K; the neighbours are guesses within a stage. */
export interface LumpNeighbours {
  bay: number;
  oil: number;
  engineMetal: number;
  /** whether the compressor turns */
  isRunning: boolean;
  coreMetal: number;
  casing: number;
  plenum: number;
}

/**
 * Compressor casing, plenum metal and sensor: three lumps in a row of the state, from `index` on.
 *
 * The air path takes casing and plenum in closed form, with their stores and all their other exchanges; what it comes
 * to is booked and taken up here, so that a loose guess of a neighbour never touches the energy.
 */
export class MetalLumps {
  static readonly count = 3;
  /** W, of the stage taken up last */
  mechanical = 0;
  mechanicalToCasing = 0;
  casingBay = 0;
  casingOil = 0;
  casingToPlenum = 0;
  casingToCore = 0;
  plenumBay = 0;
  plenumEngine = 0;
  readonly index: number;
  private readonly config: Config;

  constructor(config: Config, index: number) {
    this.config = config;
    this.index = index;
  }

  fillStart(state: Float64Array): void {
    const { start } = this.config;
    state[this.index] = start.casing;
    state[this.index + 1] = start.plenum;
    state[this.index + 2] = start.sensor;
  }

  casingIn(state: Float64Array): number {
    return state[this.index];
  }
  plenumIn(state: Float64Array): number {
    return state[this.index + 1];
  }
  indicatedIn(state: Float64Array): number {
    return state[this.index + 2];
  }

  /** Heat stored above `reference` [J]; the sensor stores none. */
  heatIn(state: Float64Array, reference: number): number {
    const { casing, plenum } = this.config;
    return (
      casing.heatCapacity * (this.casingIn(state) - reference) +
      plenum.heatCapacity * (this.plenumIn(state) - reference)
    );
  }

  /** Tells the air path what casing and plenum are at in a stage, but for the air's own share. */
  joinAir(s: number, base: Float64Array, near: LumpNeighbours, air: AirPath, inputs: GasInputs): void {
    const { casing, plenum, compressor } = this.config;
    const store = casing.heatCapacity * s;
    const mechanical = near.isRunning ? air.compressor.mechanicalLoss * compressor.mechanicalLoss.toCasing : 0;
    inputs.casingConductance = store + casing.toBay + casing.toPlenum + casing.toCoreFlange + casing.toOil;
    inputs.casingHeat =
      store * base[this.index] +
      casing.toBay * near.bay +
      casing.toPlenum * near.plenum +
      casing.toCoreFlange * near.coreMetal +
      casing.toOil * near.oil +
      mechanical;
    const plenumStore = plenum.heatCapacity * s;
    inputs.plenumConductance = plenumStore + plenum.toEngine + plenum.toBay + casing.toPlenum;
    inputs.plenumHeat =
      plenumStore * base[this.index + 1] +
      plenum.toEngine * near.engineMetal +
      plenum.toBay * near.bay +
      casing.toPlenum * near.casing;
  }

  /** Tells the air path temperatures that are known. */
  holdAir(state: Float64Array, inputs: GasInputs): void {
    inputs.casingConductance = HELD;
    inputs.casingHeat = HELD * this.casingIn(state);
    inputs.plenumConductance = HELD;
    inputs.plenumHeat = HELD * this.plenumIn(state);
  }

  /** What guessed neighbours may move casing and plenum by [K]. */
  gap(s: number, near: LumpNeighbours, { gas }: AirPath, coreMetal: number): number {
    const { casing, plenum } = this.config;
    const onCasing =
      Math.abs(casing.toPlenum * (gas.plenumTemperature - near.plenum)) +
      Math.abs(casing.toCoreFlange * (coreMetal - near.coreMetal));
    const onPlenum = Math.abs(casing.toPlenum * (gas.casingTemperature - near.casing));
    return Math.max(onCasing / casing.heatCapacity, onPlenum / plenum.heatCapacity) / s;
  }

  /** Takes up the fluxes that the air path used, with the air that leaves the core at `coreOutlet` [K]. */
  takeUp(stage: Stage, near: LumpNeighbours, air: AirPath, coreOutlet: number, freshAir: number): void {
    const { s, reach, base, out } = stage;
    const { casing, plenum, compressor } = this.config;
    const { gas } = air;
    const casingMetal = gas.casingTemperature;
    const plenumMetal = gas.plenumTemperature;
    this.mechanical = near.isRunning ? air.compressor.mechanicalLoss : 0;
    this.mechanicalToCasing = this.mechanical * compressor.mechanicalLoss.toCasing;
    this.casingBay = casing.toBay * (near.bay - casingMetal);
    this.casingOil = casing.toOil * (near.oil - casingMetal);
    this.casingToPlenum = casing.toPlenum * (casingMetal - plenumMetal);
    this.casingToCore = casing.toCoreFlange * (casingMetal - near.coreMetal);
    this.plenumBay = plenum.toBay * (near.bay - plenumMetal);
    this.plenumEngine = plenum.toEngine * (near.engineMetal - plenumMetal);
    const airToCasing = gas.compressorFlow * AIR_HEAT_CAPACITY * (gas.rotorOutlet - gas.dischargeTemperature);
    const airToPlenum = gas.plenumExchange * (gas.plenumInlet(coreOutlet) - plenumMetal);
    const intoCasing =
      airToCasing + this.mechanicalToCasing + this.casingBay + this.casingOil - this.casingToPlenum - this.casingToCore;
    const intoPlenum = airToPlenum + this.plenumBay + this.plenumEngine + this.casingToPlenum;
    out[this.index] = base[this.index] + (reach * intoCasing) / (casing.heatCapacity * s);
    out[this.index + 1] = base[this.index + 1] + (reach * intoPlenum) / (plenum.heatCapacity * s);
    gas.leavePlenum(freshAir, coreOutlet, plenumMetal);
    this.followCharge(stage, air, plenumMetal);
  }

  private followCharge({ s, reach, base, out }: Stage, { gas }: AirPath, housing: number): void {
    const { sensor } = this.config;
    const tau = sensorTimeConstant(sensor, gas.airFlow);
    const target = sensor.airShare * gas.chargeTemperature + (1 - sensor.airShare) * housing;
    const index = this.index + 2;
    out[index] = base[index] + (reach * (target - base[index])) / (1 + tau * s);
  }
}
