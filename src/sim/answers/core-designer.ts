import { type AirFilm, airPressureDrop } from '../correlations/core-air-side.ts';
import type { CoolantFilm, CoolantPressureDrop } from '../correlations/core-coolant-side.ts';
import { accelerationOf, airPoint, coolantPoint } from '../correlations/core-curves.ts';
import { type CoreGeometry, coreGeometry } from '../correlations/core-geometry.ts';
import type { CorePressureDrop } from '../correlations/core-losses.ts';
import { effectivenessOfConductance } from '../correlations/crossflow-effectiveness.ts';
import { AIR_GAS_CONSTANT, AIR_HEAT_CAPACITY } from '../fluids/moist-air.ts';
import type { CoreGeometryConfig, GeometryFactor } from '../scenario/config/exchangers.ts';
import type { Config } from '../scenario/config.ts';
import { airFlowOf, coolantFlowOf, withLaws } from '../scenario/core-laws.ts';
import { flowsOfOneCore } from '../scenario/laws.ts';
import { type PullSummary, summarisePulls } from './pull-summary.ts';
import { jobToPull, type Study } from './study.ts';

/** A core by its measures at the flows of the first pull's end. SI. */
interface CoreDesign {
  /** kg/s, m3/s; K and kg/m3 of the air before and behind the core */
  readonly airFlow: number;
  readonly coolantFlow: number;
  readonly airIn: number;
  readonly airOut: number;
  readonly densityIn: number;
  readonly densityOut: number;
  readonly geometry: CoreGeometry;
  readonly air: AirFilm & { readonly drop: CorePressureDrop };
  readonly coolant: CoolantFilm & { readonly drop: CoolantPressureDrop };
  /** W/K with measured points in: air side, metal to coolant with the wall, and both in series */
  readonly airConductance: number;
  readonly coolantConductance: number;
  readonly conductance: number;
  /** both fluids unmixed, when all has settled; absent with several passes */
  readonly effectiveness?: number;
  /** Pa with measured points in */
  readonly airDrop: number;
  readonly factors: Readonly<Record<GeometryFactor, number>>;
  readonly marks: readonly string[];
}

/** What one more row does: the core as it is over the core with one measure larger, at the flows of the core as it is. */
export interface SizeChange {
  readonly measure: 'width' | 'depth';
  readonly factor: number;
  /** local power of the air conductance over the air flow, fin efficiency in it */
  readonly slope: number;
  /** ratios, changed over as it is */
  readonly airConductance: number;
  /** factor^(1 - slope) for the width, factor for the depth */
  readonly airConductanceByRule: number;
  readonly coolantConductance: number;
  readonly conductance: number;
  readonly airDrop: number;
  /** of the friction alone: what is left out is entry, exit and acceleration */
  readonly airDropOfFriction: number;
  /** the first pull of the changed car less that of the car as it is; K, and shares */
  readonly pull?: { readonly peak: number; readonly airFlow: number; readonly drivePower: number };
}

export interface CoreDesignStudy {
  readonly design: CoreDesign;
  readonly changes: readonly SizeChange[];
}

/** One row wider on a core of eleven: what the trade calls a row. */
const ONE_ROW = 1.09;

/** A slope is taken between flows this factor to either side. */
const ASIDE = 1.001;

/** Times the core that is there; the pitch of its fins in m. */
interface CoreChange {
  readonly width?: number;
  readonly depth?: number;
  readonly finPitch?: number;
}

/** The same geometry with measures changed; whether its parts still have room for one another is not asked here. */
export function changedGeometry(geometry: CoreGeometryConfig, change: CoreChange): CoreGeometryConfig {
  const { shape } = geometry;
  const { width = 1, depth = 1, finPitch = shape.finPitch } = change;
  return { ...geometry, shape: { ...shape, length: shape.length * width, depth: shape.depth * depth, finPitch } };
}

/** The car with another core by measures. */
export function withCore(config: Config, geometry: CoreGeometryConfig): Config {
  return { ...config, core: withLaws(config.core, geometry) };
}

/**
 * A core by its measures at the end of the first pull, and what one more row of width or depth does to it, in the core
 * and in the car. Absent where the core is given by test points, no pull comes to its end, or its coolant stands still.
 */
export function* studyCoreDesign(config: Config): Study<CoreDesignStudy | undefined> {
  const { geometry } = config.core;
  if (geometry === undefined) return undefined;
  const measures = ['width', 'depth'] as const;
  const cars = [
    config,
    ...measures.map((measure) => withCore(config, changedGeometry(geometry, { [measure]: ONE_ROW }))),
  ];
  const runs = yield cars.map((car) => jobToPull(car, 1));
  const [first, ...others] = runs.map((run) => summarisePulls(run, config.limit.chargeTemperature).at(0));
  if (first === undefined || first.atEnd.coolantFlow === 0) return undefined;
  const design = designAt(config, geometry, first);
  const changes = measures.map((measure, k) => {
    const pull = others[k];
    return {
      ...sizeChange(config, geometry, first, measure),
      ...(pull && {
        pull: {
          peak: pull.peak - first.peak,
          airFlow: pull.atEnd.airFlow / first.atEnd.airFlow - 1,
          drivePower: pull.atEnd.drivePower / first.atEnd.drivePower - 1,
        },
      }),
    };
  });
  return { design, changes };
}

/** Films, drops and sizes of one core at the end of a pull, of those that the car has. */
function designAt(config: Config, geometry: CoreGeometryConfig, pull: PullSummary): CoreDesign {
  const { atEnd } = pull;
  const { airFlow, coolantFlow, dischargeTemperature: airIn, coreOutletTemperature: airOut } = atEnd;
  const { factors, exposedShare } = geometry;
  const core = coreGeometry(geometry.shape);
  const before = atEnd.manifoldPressure + atEnd.coreAirDrop;
  const densityIn = before / (AIR_GAS_CONSTANT * airIn);
  const densityOut = atEnd.manifoldPressure / (AIR_GAS_CONSTANT * airOut);
  const { wetShare } = config.core.layout;
  const own = flowsOfOneCore(config.core, airFlow, coolantFlow);
  // All layers hold coolant in the geometry: it is asked at the flows that its wet ones have.
  const coreFlow = own.air / wetShare;
  const ownCoolant = own.coolant / wetShare;
  const air = airPoint(core, airFlowOf(geometry, coreFlow / exposedShare));
  const coolant = coolantPoint(core, coolantFlowOf(geometry, ownCoolant), geometry.arrangement);
  const drop = airPressureDrop(core, air.film, densityIn, densityOut);
  const meanVolume = (1 / densityIn + 1 / densityOut) / 2;
  const cooling = (1 / densityOut - 1 / densityIn) / meanVolume;
  const acceleration = accelerationOf(core) * (coreFlow / exposedShare) ** 2 * cooling;
  const airConductance = factors.airConductance * exposedShare * air.conductance;
  const coolantConductance = factors.coolantConductance * exposedShare * coolant.conductance;
  const conductance = 1 / (1 / airConductance + 1 / coolantConductance);
  const { density, heatCapacity } = geometry.coolant;
  const [airRate, coolantRate] = [coreFlow * AIR_HEAT_CAPACITY, ownCoolant * density * heatCapacity];
  return {
    airFlow,
    coolantFlow,
    airIn,
    airOut,
    densityIn,
    densityOut,
    geometry: core,
    air: { ...air.film, drop },
    coolant: { ...coolant.film, drop: coolant.drop },
    airConductance: wetShare * airConductance,
    coolantConductance: wetShare * coolantConductance,
    conductance: wetShare * conductance,
    ...(geometry.shape.passes === 1 && {
      effectiveness: effectivenessOfConductance(conductance, airRate, coolantRate),
    }),
    airDrop: (factors.airDrop * air.dropTimesDensity + acceleration) * meanVolume,
    factors,
    marks: config.core.marks,
  };
}

function sizeChange(
  config: Config,
  geometry: CoreGeometryConfig,
  pull: PullSummary,
  measure: 'width' | 'depth',
): SizeChange {
  const changed = changedGeometry(geometry, { [measure]: ONE_ROW });
  const [before, after] = [geometry, changed].map((each) => designAt(config, each, pull));
  const core = coreGeometry(geometry.shape);
  const flow = before.air.massVelocity * core.air.freeArea;
  const [less, more] = [1 / ASIDE, ASIDE].map((share) => airPoint(core, airFlowOf(geometry, flow * share)).conductance);
  const slope = Math.log(more / less) / (2 * Math.log(ASIDE));
  return {
    measure,
    factor: ONE_ROW,
    slope,
    airConductance: after.airConductance / before.airConductance,
    airConductanceByRule: measure === 'width' ? ONE_ROW ** (1 - slope) : ONE_ROW,
    coolantConductance: after.coolantConductance / before.coolantConductance,
    conductance: after.conductance / before.conductance,
    airDrop: after.airDrop / before.airDrop,
    airDropOfFriction: after.air.drop.friction / before.air.drop.friction,
  };
}
