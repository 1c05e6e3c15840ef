import { OutOfRangeError } from '../errors.ts';
import { readLogTable, slopeOfLogTable } from '../kernels/log-table.ts';
import { figure, fromSi, toSi } from '../units.ts';
import { geometryConfig, typedCore } from './core-geometry.ts';
import { type CoreLaws, coreLaws } from './core-laws.ts';
import type { JsonObject, Report } from './issue.ts';
import type { GeometryValues, Values } from './shape.ts';

/**
 * The values of a file with those of its core that follow from coreGeometry, as they are at the upper end of the flows
 * that the scenario can reach. Without coreGeometry, or with faults in the file, the values stay as they are.
 */
export function withGeometry(values: Values, document: JsonObject, hasErrors: boolean, report: Report): Values {
  const { coreGeometry } = values;
  if (coreGeometry === undefined || hasErrors) return values;
  try {
    const laws = lawsOf(values, coreGeometry, document);
    if (!Number.isNaN(laws.airConductance.kind === 'table' ? laws.airConductance.value[0] : Number.NaN))
      return { ...values, core: { ...values.core, ...followingValues(laws, values), ...typedCore(values, document) } };
    reportHeat(values, report);
  } catch (error) {
    if (!(error instanceof OutOfRangeError)) throw error;
    reportHeaders(coreGeometry, report);
  }
  return values;
}

function lawsOf(values: Values, coreGeometry: GeometryValues, document: JsonObject): CoreLaws {
  return coreLaws(geometryConfig(values, coreGeometry, typedCore(values, document)));
}

/** The laws of the core of a file without faults; absent where it has no coreGeometry. */
export function geometryLaws(values: Values, document: JsonObject): CoreLaws | undefined {
  return values.coreGeometry && lawsOf(values, values.coreGeometry, document);
}

/** What the laws come to at one flow of each side, in file units. */
function followingValues(laws: CoreLaws, { core }: Values): Partial<Values['core']> {
  const { airConductance: air, coolantConductance: coolant, airDrop, coolantDrop } = laws;
  if (air.kind !== 'table' || coolant.kind !== 'table' || airDrop.kind !== 'table') return {};
  const airFlow = Number(air.flow[air.flow.length - 1].toPrecision(3));
  const coolantFlow = Number(coolant.flow[coolant.flow.length >> 1].toPrecision(3));
  const drops = airDrop.dropTimesDensity;
  const hasDrop = drops[0] > 0;
  const factorAt = (flow: number, drop: number): number => drop / flow ** 1.8;
  const middle = coolant.flow.length >> 1;
  const coolantConductance = readLogTable(coolant.flow, coolant.value, coolantFlow);
  return {
    airConductance: readLogTable(air.flow, air.value, airFlow),
    airConductanceAtFlow: airFlow,
    airConductanceExponent: slopeOfLogTable(air.flow, air.value, airFlow),
    coolantConductance,
    coolantConductanceAtFlow: coolantFlow,
    coolantConductanceExponent: slopeOfLogTable(coolant.flow, coolant.value, coolantFlow),
    coolantConductanceFloor: coolant.floor / coolantConductance,
    airDrop: hasDrop ? fromSi(readLogTable(airDrop.flow, drops, airFlow) / core.airDropAtDensity, 'kPa') : 0,
    airDropAtFlow: airFlow,
    airDropExponent: hasDrop ? slopeOfLogTable(airDrop.flow, drops, airFlow) : core.airDropExponent,
    metalHeatCapacity: fromSi(laws.metalHeatCapacity, 'kJ/K'),
    coolantVolume: fromSi(laws.coolantVolume, 'L'),
    coolantDropFactor: fromSi(
      coolantDrop.kind === 'power' ? coolantDrop.factor : factorAt(coolantDrop.flow[middle], coolantDrop.drop[middle]),
      'Pa/(L/min)^1.8',
    ),
  };
}

function reportHeat({ core }: Values, report: Report): void {
  const heat = core.measuredHeat ?? Number.NaN;
  report({
    severity: 'error',
    path: 'core.measuredHeat',
    message: `Measured heat is ${figure(heat)} kW: with the coolant side as it is, no air side between a tenth and ten times what the measures give comes to that. Check flows, inlets and the unit, and whether the core had settled.`,
    found: `${figure(heat)} kW`,
    expected: 'a heat that this core can give at the measured flows and inlets',
  });
}

function reportHeaders({ headerVolume, height, coolantLayers }: GeometryValues, report: Report): void {
  const area = (1e4 * toSi(headerVolume, 'L')) / toSi(height, 'mm');
  report({
    severity: 'error',
    path: 'coreGeometry.headerVolume',
    message: `Headers of ${figure(headerVolume)} L, ${figure(area)} cm2 across, are too small: the coolant finds no steady split over ${coolantLayers} layers. Is this the volume of one whole header?`,
    found: `${figure(headerVolume)} L`,
    expected: 'a larger header',
  });
}
