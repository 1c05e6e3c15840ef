import { ALLOYS } from '../correlations/alloys.ts';
import { airPoint, coolantPoint } from '../correlations/core-curves.ts';
import { type CoreGeometry, type CoreShape, coreGeometry } from '../correlations/core-geometry.ts';
import { effectivenessOfConductance } from '../correlations/crossflow-effectiveness.ts';
import { createCoolant } from '../fluids/coolant.ts';
import { airConductivity, airHeatCapacity, airViscosity } from '../fluids/dry-air.ts';
import { AIR_HEAT_CAPACITY } from '../fluids/moist-air.ts';
import { findRoot } from '../kernels/root-finding.ts';
import { toSi } from '../units.ts';
import type { CoreGeometryConfig } from './config/exchangers.ts';
import { airFlowOf, coolantFlowOf } from './core-laws.ts';
import { reachOfAir, reachOfCoolant } from './core-reach.ts';
import { isObject, type JsonObject } from './issue.ts';
import type { GeometryValues, Values } from './shape.ts';

/** Charge air in the core is taken at this temperature, K: between discharge and charge of a pull, own choice. */
const AIR_TEMPERATURE = 353.15;
/** A factor on the air side beyond this is no calibration of a geometry but another core; own judgement. */
const LARGEST_FACTOR = 10;

/** Keys of the group core that follow from a geometry and stand over it where they are typed. */
const FOLLOWING = [
  'airConductance',
  'airConductanceAtFlow',
  'coolantConductance',
  'coolantConductanceAtFlow',
  'airDrop',
  'airDropAtFlow',
  'metalHeatCapacity',
  'coolantVolume',
  'coolantDropFactor',
] as const satisfies readonly (keyof Values['core'])[];
export type TypedCore = Readonly<Partial<Record<(typeof FOLLOWING)[number], number>>>;

/** Those of them that stand in the file, in file units. */
export function typedCore(values: Values, { core }: JsonObject): TypedCore {
  const isTyped = (key: string): boolean => isObject(core) && Object.hasOwn(core, key);
  return Object.fromEntries(FOLLOWING.filter(isTyped).map((key) => [key, values.core[key]]));
}

/** Layers of fins that fill the height best beside the layers of tubes: one fewer to one more than those. */
export function finLayersOf({ height, coolantLayers, tubeHeight, finHeight }: GeometryValues): number {
  const room = Math.round((height - coolantLayers * tubeHeight) / finHeight);
  return Math.max(1, Math.min(coolantLayers + 1, Math.max(coolantLayers - 1, room)));
}

/** The shape of a core, its measures in SI. */
function shapeOf(geometry: GeometryValues, passes: number): CoreShape {
  const mm = (value: number): number => toSi(value, 'mm');
  return {
    depth: mm(geometry.depth),
    length: mm(geometry.width),
    coolantLayers: geometry.coolantLayers,
    finLayers: finLayersOf(geometry),
    rows: geometry.rows,
    passes,
    tubeHeight: mm(geometry.tubeHeight),
    tubeWall: mm(geometry.tubeWall),
    tubes: tubesOf(geometry),
    finHeight: mm(geometry.finHeight),
    finPitch: toSi(geometry.finPitch, 'mm/fin'),
    finThickness: mm(geometry.finThickness),
    fins: finsOf(geometry),
    headerVolume: toSi(geometry.headerVolume, 'L'),
    portBore: mm(geometry.portBore),
    alloy: ALLOYS[geometry.alloy],
  };
}

function finsOf(geometry: GeometryValues): CoreShape['fins'] {
  const { fins, louvrePitch, louvreLength, louvreAngle, stripLength } = geometry;
  const mm = (value = Number.NaN): number => toSi(value, 'mm');
  if (fins === 'plain') return { kind: 'plain' };
  if (fins === 'offset strip') return { kind: 'offset strip', stripLength: mm(stripLength) };
  return {
    kind: 'louvred',
    louvrePitch: mm(louvrePitch),
    louvreLength: mm(louvreLength),
    louvreAngle: ((louvreAngle ?? Number.NaN) * Math.PI) / 180,
  };
}

function tubesOf(geometry: GeometryValues): CoreShape['tubes'] {
  const { tubes, ports = Number.NaN, webThickness, tubeWall } = geometry;
  if (tubes === 'plain') return { kind: 'plain' };
  if (tubes === 'multi-port') return { kind: 'multi-port', ports, webThickness: toSi(webThickness ?? tubeWall, 'mm') };
  return {
    kind: 'turbulated',
    heatTransferFactor: geometry.turbulatorHeat,
    frictionFactor: geometry.turbulatorFriction,
    exponent: geometry.turbulatorExponent,
    atReynolds: geometry.turbulatorAtReynolds,
  };
}

/**
 * A core by its measures with all that its laws follow from, calibrated by what is typed.
 *
 * @param values - a file without faults in coreGeometry and core
 * @param geometry - its group coreGeometry
 * @param typed - what the file has typed over the geometry
 */
export function geometryConfig(values: Values, geometry: GeometryValues, typed: TypedCore): CoreGeometryConfig {
  const { glycol, glycolByVolume, propertiesAt } = values.coolant;
  const coolant = createCoolant(toSi(glycolByVolume, '%'), glycol);
  const coolantTemperature = toSi(propertiesAt, 'degC');
  const uncalibrated: CoreGeometryConfig = {
    shape: shapeOf(geometry, values.core.passes),
    sheets: geometry.sheets,
    arrangement: geometry.portsAt === 'same end' ? 'U' : 'Z',
    airFlows: reachOfAir(values),
    coolantFlows: reachOfCoolant(values),
    airTemperature: AIR_TEMPERATURE,
    coolantTemperature,
    air: {
      heatCapacity: airHeatCapacity(AIR_TEMPERATURE),
      viscosity: airViscosity(AIR_TEMPERATURE),
      conductivity: airConductivity(AIR_TEMPERATURE),
    },
    coolant: {
      density: coolant.density(coolantTemperature),
      heatCapacity: coolant.heatCapacity(coolantTemperature),
      viscosity: coolant.viscosity(coolantTemperature),
      conductivity: coolant.conductivity(coolantTemperature),
    },
    factors: { airConductance: 1, coolantConductance: 1, airDrop: 1, metalHeatCapacity: 1, coolantVolume: 1 },
    exposedShare: values.core.exposedShare,
  };
  const { coolantDropFactor } = typed;
  return {
    ...uncalibrated,
    factors: factorsOf(uncalibrated, values, typed),
    ...(coolantDropFactor !== undefined && { coolantDropFactor: toSi(coolantDropFactor, 'Pa/(L/min)^1.8') }),
  };
}

function factorsOf(geometry: CoreGeometryConfig, values: Values, typed: TypedCore): CoreGeometryConfig['factors'] {
  const core = coreGeometry(geometry.shape);
  const { airConductance, airConductanceAtFlow, coolantConductance, coolantConductanceAtFlow } = typed;
  const { airDrop, airDropAtFlow, metalHeatCapacity, coolantVolume } = typed;
  const air = (flow: number) => airPoint(core, airFlowOf(geometry, flow));
  const { density } = geometry.coolant;
  const onCoolant =
    coolantConductance === undefined || coolantConductanceAtFlow === undefined
      ? 1
      : coolantConductance /
        coolantPoint(core, coolantFlowOf(geometry, coolantConductanceAtFlow / density), geometry.arrangement)
          .conductance;
  const byHeat = measuredAirConductance(geometry, core, values, onCoolant);
  return {
    airConductance:
      byHeat !== undefined
        ? byHeat.conductance / air(byHeat.atFlow).conductance
        : airConductance === undefined || airConductanceAtFlow === undefined
          ? 1
          : airConductance / air(airConductanceAtFlow).conductance,
    coolantConductance: onCoolant,
    airDrop:
      airDrop === undefined || airDropAtFlow === undefined
        ? 1
        : (toSi(airDrop, 'kPa') * values.core.airDropAtDensity) / air(airDropAtFlow).dropTimesDensity,
    metalHeatCapacity: metalHeatCapacity === undefined ? 1 : toSi(metalHeatCapacity, 'kJ/K') / core.metal.heatCapacity,
    coolantVolume: coolantVolume === undefined ? 1 : toSi(coolantVolume, 'L') / core.coolant.volume,
  };
}

/** Air conductance with which the core gives its measured heat: W/K at kg/s; NaN where no core gives that much. */
function measuredAirConductance(
  geometry: CoreGeometryConfig,
  core: CoreGeometry,
  { core: typed }: Values,
  onCoolant: number,
): { readonly conductance: number; readonly atFlow: number } | undefined {
  const { measuredHeat, measuredAirFlow: atFlow, measuredAirInlet, measuredCoolantFlow, measuredCoolantInlet } = typed;
  if (measuredHeat === undefined || atFlow === undefined || measuredAirInlet === undefined) return undefined;
  if (measuredCoolantFlow === undefined || measuredCoolantInlet === undefined) return undefined;
  const flow = coolantFlowOf(geometry, toSi(measuredCoolantFlow, 'L/min'));
  const [air, coolant] = [atFlow * AIR_HEAT_CAPACITY, flow.volumeFlow * flow.density * flow.heatCapacity];
  const share = toSi(measuredHeat, 'kW') / (Math.min(air, coolant) * (measuredAirInlet - measuredCoolantInlet));
  const onOther = onCoolant * coolantPoint(core, flow, geometry.arrangement).conductance;
  const effectiveness = (conductance: number): number =>
    effectivenessOfConductance(1 / (1 / conductance + 1 / onOther), air, coolant);
  const own = airPoint(core, airFlowOf(geometry, atFlow)).conductance;
  const [low, high] = [own / LARGEST_FACTOR, own * LARGEST_FACTOR];
  const conductance = findRoot((value) => effectiveness(value) - share, low, high, 1e-12);
  return { conductance, atFlow };
}
