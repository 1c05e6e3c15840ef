import { AIR_HEAT_CAPACITY } from '../fluids/moist-air.ts';
import type { Config } from '../scenario/config.ts';
import type { Compressor } from './compressor.ts';

/** What the gas meets on its way at one instant. Temperatures in K. */
export interface GasInputs {
  /** air at the intake, pick-up included */
  freshAir: number;
  /** air leaving the core */
  coreOutlet: number;
  /** the casing is at (casingHeat + g T_rotor)/(casingConductance + g), g = its exchange with the air; W and W/K */
  casingHeat: number;
  casingConductance: number;
  /** the plenum metal likewise, with the air that enters the plenum */
  plenumHeat: number;
  plenumConductance: number;
}

/**
 * Temperatures of the air from mixing to engine, for known flows and pressures; the air leaving the core is given.
 *
 *     T1 = (m T0 + x_b T2 + x_a T4)/(m + x)     fresh air m, returned before the core x_b and behind the plenum x_a
 *     T_rotor = A T1 + w,   T2 = alpha + beta T_rotor          casing in closed form
 *     T3 = (1 - leak) T_core,out + leak T2,   T4 = a + b T3    plenum in closed form
 *
 * All linear in T2, so solved at once. Where air passes forward round the compressor (x < 0) it is at T0 and joins
 * before the core or behind the plenum.
 */
export class GasPath {
  /** kg/s into the engine */
  airFlow = 0;
  /** kg/s from discharge or plenum back to the compressor inlet; negative where air passes forward round it */
  recirculatedFlow = 0;
  compressorFlow = 0;
  /** kg/s through core, its leak and plenum */
  plenumFlow = 0;
  /** kg/s through the core itself */
  coreFlow = 0;
  inletTemperature = 0;
  rotorOutlet = 0;
  /** after the casing */
  dischargeTemperature = 0;
  coreInlet = 0;
  casingTemperature = 0;
  plenumTemperature = 0;
  /** behind the plenum, where the bypass may take it */
  plenumOutlet = 0;
  /** into the engine */
  chargeTemperature = 0;
  gasPower = 0;
  /** of the air that was taken behind the plenum for {@link inletTemperature} */
  private takenTemperature = 0;
  /** what the charge gives the plenum metal per K of difference, m cp (1 - exp[-UA/(m cp)]) [W/K] */
  plenumExchange = 0;
  private readonly shareAfterCore: number;
  private readonly leakPast: number;
  private readonly casingConductance: number;
  private readonly plenumConductance: number;

  constructor({ bypass, core, casing, plenum }: Config) {
    this.shareAfterCore = bypass.shareAfterCore;
    this.leakPast = core.leakPast;
    this.casingConductance = casing.toDischargeAir;
    this.plenumConductance = plenum.toChargeAir;
  }

  /** Air at rest takes its metal's temperature. */
  standStill({ freshAir, casingHeat, casingConductance, plenumHeat, plenumConductance }: GasInputs): void {
    this.airFlow = 0;
    this.recirculatedFlow = 0;
    this.compressorFlow = 0;
    this.plenumFlow = 0;
    this.coreFlow = 0;
    this.plenumExchange = 0;
    this.inletTemperature = freshAir;
    this.casingTemperature = casingHeat / casingConductance;
    this.rotorOutlet = this.casingTemperature;
    this.dischargeTemperature = this.casingTemperature;
    this.coreInlet = this.casingTemperature;
    this.plenumTemperature = plenumHeat / plenumConductance;
    this.plenumOutlet = this.plenumTemperature;
    this.chargeTemperature = this.plenumTemperature;
    this.gasPower = 0;
  }

  /** Takes the flows [kg/s]: into the engine, and recirculated. */
  setFlows(airFlow: number, recirculated: number): void {
    this.airFlow = airFlow;
    this.recirculatedFlow = recirculated;
    this.compressorFlow = airFlow + recirculated;
    const plenumFlow = airFlow + this.shareAfterCore * recirculated;
    if (plenumFlow === this.plenumFlow) return;
    const rate = plenumFlow * AIR_HEAT_CAPACITY;
    this.plenumFlow = plenumFlow;
    this.coreFlow = (1 - this.leakPast) * plenumFlow;
    this.plenumExchange = -rate * Math.expm1(-this.plenumConductance / rate);
  }

  /**
   * Temperatures for the flows that were set.
   *
   * @param compressor - at its speed
   * @param inletPressure - Pa
   * @param pressureRatio - of the compressor
   * @returns false where the recirculated air would heat itself without end
   */
  pass(inputs: GasInputs, compressor: Compressor, inletPressure: number, pressureRatio: number): boolean {
    const { freshAir, coreOutlet, casingHeat, casingConductance } = inputs;
    const { compressorFlow: total, recirculatedFlow: returned, plenumFlow, leakPast } = this;
    const rate = total * AIR_HEAT_CAPACITY;
    const passed = Math.exp(-this.casingConductance / rate);
    const exchange = rate * (1 - passed);
    const alpha = ((1 - passed) * casingHeat) / (casingConductance + exchange);
    const beta = passed + ((1 - passed) * exchange) / (casingConductance + exchange);
    const rise = compressor.temperatureRatio(pressureRatio);
    const idle = compressor.idlePower(inletPressure) / rate;
    const after = this.shareAfterCore * returned;
    const before = returned - after;

    if (returned <= 0) {
      this.inletTemperature = freshAir;
    } else {
      const kept = this.plenumShareOfAir(inputs);
      const known = this.airFlow * freshAir + after * (this.plenumGift(inputs) + kept * (1 - leakPast) * coreOutlet);
      const throughDischarge = before + after * kept * leakPast;
      const loop = 1 - (beta * rise * throughDischarge) / total;
      if (loop <= 0) return false;
      const discharge = (alpha + beta * ((rise * known) / total + idle)) / loop;
      this.inletTemperature = (known + throughDischarge * discharge) / total;
      const plenumInlet = coreOutlet + leakPast * (discharge - coreOutlet);
      this.takenTemperature = this.plenumGift(inputs) + kept * plenumInlet;
    }
    this.rotorOutlet = rise * this.inletTemperature + idle;
    this.casingTemperature = (casingHeat + exchange * this.rotorOutlet) / (casingConductance + exchange);
    this.dischargeTemperature = this.casingTemperature + (this.rotorOutlet - this.casingTemperature) * passed;
    this.gasPower = rate * (this.rotorOutlet - this.inletTemperature);
    this.coreInlet =
      before < 0 ? (total * this.dischargeTemperature - before * freshAir) / plenumFlow : this.dischargeTemperature;
    return true;
  }

  /** Plenum and charge, for the flows and the air entering the core. */
  passPlenum({ freshAir, coreOutlet, plenumHeat, plenumConductance }: GasInputs): void {
    const exchange = this.plenumExchange;
    const inlet = this.plenumInlet(coreOutlet);
    this.plenumTemperature = (plenumHeat + exchange * inlet) / (plenumConductance + exchange);
    this.leavePlenum(freshAir, coreOutlet, this.plenumTemperature);
  }

  /** Charge behind a plenum whose metal is known [K]. */
  leavePlenum(freshAir: number, coreOutlet: number, plenumMetal: number): void {
    const inlet = this.plenumInlet(coreOutlet);
    const rate = this.plenumFlow * AIR_HEAT_CAPACITY;
    const share = rate > 0 ? this.plenumExchange / rate : 1;
    this.plenumOutlet = inlet + share * (plenumMetal - inlet);
    const forward = this.airFlow - this.plenumFlow;
    this.chargeTemperature =
      forward > 0 ? (this.plenumFlow * this.plenumOutlet + forward * freshAir) / this.airFlow : this.plenumOutlet;
  }

  /** Air entering the plenum: from the core, and past it [K]. */
  plenumInlet(coreOutlet: number): number {
    return this.plenumFlow > 0 ? coreOutlet + this.leakPast * (this.coreInlet - coreOutlet) : coreOutlet;
  }

  /** Heat that leaves with the charge [W], above 0 K: what leaves the plenum less what was taken from there. */
  get outflow(): number {
    const after = this.plenumFlow - this.airFlow;
    const charge =
      after > 0
        ? this.plenumFlow * this.plenumOutlet - after * this.takenTemperature
        : this.airFlow * this.chargeTemperature;
    return charge * AIR_HEAT_CAPACITY;
  }

  /** T4 = gift + share T3, the metal in closed form. */
  private plenumGift({ plenumHeat, plenumConductance }: GasInputs): number {
    const exchange = this.plenumExchange;
    const share = exchange / (this.plenumFlow * AIR_HEAT_CAPACITY);
    return (share * plenumHeat) / (plenumConductance + exchange);
  }

  private plenumShareOfAir({ plenumConductance }: GasInputs): number {
    const exchange = this.plenumExchange;
    const share = exchange / (this.plenumFlow * AIR_HEAT_CAPACITY);
    return 1 - share + (share * exchange) / (plenumConductance + exchange);
  }
}
