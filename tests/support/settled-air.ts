import { AirPath, type AirPathInputs } from '../../src/sim/model/air-path.ts';
import type {
  CentrifugalConfig,
  DisplacementConfig,
  TurbineDrivenConfig,
} from '../../src/sim/scenario/config/compressor.ts';
import type { Config } from '../../src/sim/scenario/config.ts';
import { parseScenario } from '../../src/sim/scenario/parse.ts';
import { toConfig } from '../../src/sim/scenario/to-config.ts';
import { shippedDocument } from './shipped.ts';
import { edit, type LooseDocument } from './short-session.ts';

/** Ducts that exchange nothing and a core without drop, so that the closed forms of the air path hold as written. */
const PLAIN_DUCTS = { 'casing.toDischargeAir': 0, 'plenum.toChargeAir': 0, 'core.airDrop': 0 };

function withPlainDucts(file: string): Config {
  const { variants: _, upgrades: __, ...car } = structuredClone(shippedDocument(file)) as LooseDocument;
  for (const [path, value] of Object.entries(PLAIN_DUCTS)) edit(car, path, value);
  const { scenario, issues } = parseScenario(JSON.stringify(car));
  if (scenario === undefined) throw new Error(`${file}: ${issues[0].message}`);
  return toConfig(scenario);
}

type Driven = Config & { readonly compressor: CentrifugalConfig };

/** Invented cars with plain ducts: a displacement compressor on a 3 L engine, a centrifugal one on 3.6 L. */
export const DISPLACED = withPlainDucts('rolling-road-estate') as Config & { readonly compressor: DisplacementConfig };
export const DRIVEN = withPlainDucts('session-coupe') as Driven;

/**
 * The centrifugal car with its compressor on a turbine instead, which holds a manifold pressure [Pa] up to a speed
 * [rpm].
 */
export function onTurbine(car: Driven, targetManifoldPressure: number, highestSpeed: number) {
  const { driveRatio: _, kind: __, ...rest } = car.compressor;
  const compressor: TurbineDrivenConfig = { ...rest, kind: 'turbine-driven', targetManifoldPressure, highestSpeed };
  return { ...car, compressor };
}

/** A core as nothing but an effectiveness against coolant of one temperature [K]. */
interface PlainCore {
  readonly effectiveness: number;
  readonly coolant: number;
}

const INPUTS: AirPathInputs = {
  mode: 'part load',
  engineSpeed: 1200,
  manifoldPressure: 38000,
  coreOutlet: 320,
  coreInletGuess: 340,
  casingHeat: 350,
  casingConductance: 1,
  plenumHeat: 335,
  plenumConductance: 1,
  freshAir: 303.15,
  outsidePressure: 1e5,
};

/** The air path at an instant with the circle through the core closed, as a stage of the model closes it. */
export function settledAir(config: Config, core: PlainCore, inputs: Partial<AirPathInputs>): AirPath {
  const air = new AirPath(config);
  const asked = { ...INPUTS, ...inputs };
  for (let round = 0; round < 400; round++) {
    const failure = air.solve(asked);
    if (failure !== undefined) throw new Error(JSON.stringify(failure));
    const { coreInlet } = air.gas;
    const before = asked.coreOutlet;
    asked.coreInletGuess = coreInlet;
    asked.coreOutlet = coreInlet - core.effectiveness * (coreInlet - core.coolant);
    if (Math.abs(asked.coreOutlet - before) < 1e-12 * before) return air;
  }
  throw new Error('the circle through the core does not close');
}

/** Where a rising or falling function of x takes the value 0, by halving as often as said; x between two ends. */
export function crossing(at: (x: number) => number, from: number, to: number, halvings = 100): number {
  let [low, high] = [from, to];
  const side = Math.sign(at(low));
  if (side * Math.sign(at(high)) > 0) throw new Error('no crossing between the ends');
  for (let round = 0; round < halvings; round++) {
    const middle = 0.5 * (low + high);
    if (Math.sign(at(middle)) === side) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}
