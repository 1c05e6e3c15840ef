import { AIR_HEAT_CAPACITY, dewPoint } from '../fluids/moist-air.ts';
import type { Config } from '../scenario/config.ts';
import type { AirPath } from './air-path.ts';
import { conductanceAt } from './conductance.ts';
import type { CoolantRing } from './coolant-ring.ts';
import type { CoreRates } from './core.ts';
import { CoreVapour } from './core-vapour.ts';
import { emptyRates } from './loop-element.ts';

/** Metal this far above the charge's dew point may still wet within a step [K]; own choice. */
const NEARLY_WET = 3;

/** What air path and coolant loop bring to the core: flows with their conductances, heat at its metal, vapour. */
export class CoreFeed {
  readonly rates: CoreRates = { ...emptyRates(), airFlow: 0, coolantFlow: 0 };
  /** humidity ratio outside [kg/kg] */
  humidity = 0;
  private readonly vapour = new CoreVapour();
  private readonly config: Config;
  private readonly air: AirPath;
  private readonly ring: CoolantRing;

  constructor(config: Config, air: AirPath, ring: CoolantRing) {
    this.config = config;
    this.air = air;
    this.ring = ring;
  }

  /** Dew point of the charge where it leaves the core [K]. */
  get chargeDewPoint(): number {
    return dewPoint(this.humidity, this.air.pressures.coreOutlet);
  }

  /** @param bay - air round the core [K] */
  setRates(bay: number): void {
    const { core, casing } = this.config;
    const { air, ring, rates } = this;
    const { coreFlow, casingTemperature } = air.gas;
    rates.airRate = coreFlow * AIR_HEAT_CAPACITY;
    rates.airConductance = coreFlow > 0 ? conductanceAt(core.airConductance, coreFlow) : 0;
    rates.coolantRate = ring.coolantRate;
    rates.airFlow = coreFlow;
    rates.coolantFlow = ring.flow * ring.density;
    rates.metalLoss = core.toBay + casing.toCoreFlange;
    rates.metalSource = core.toBay * bay + casing.toCoreFlange * casingTemperature;
  }

  /** The vapour that reaches the core; undefined where no metal can be cold enough to wet. */
  wetting(coldestMetal: number): CoreVapour | undefined {
    const { vapour, ring, humidity } = this;
    const { gas, pressures } = this.air;
    if (!this.config.core.condensation || gas.coreFlow <= 0) return undefined;
    const returned = Math.max(0, gas.plenumFlow - gas.airFlow);
    const content =
      gas.airFlow > 0 ? (gas.airFlow * humidity + returned * ring.core.vapourOut) / (gas.airFlow + returned) : humidity;
    vapour.set(content, gas.coreFlow, 0.5 * (pressures.ratio * pressures.inlet + pressures.coreOutlet));
    return vapour.dewPointOf(content) > coldestMetal - NEARLY_WET ? vapour : undefined;
  }
}
