import { NoSteadySplitError } from '../correlations/header-distribution.ts';
import { OutOfRangeError } from '../errors.ts';
import { readLogTable, slopeOfLogTable } from '../kernels/log-table.ts';
import { figure, fromSi, toSi } from '../units.ts';
import { COOLANT_DROP_EXPONENT, type CoreConfig } from './config/exchangers.ts';
import { geometryConfig, typedCore } from './core-geometry.ts';
import { type CoreLaws, coreLaws, sheetsOf, withLaws } from './core-laws.ts';
import type { JsonObject, Report } from './issue.ts';
import type { GeometryValues, Values } from './shape.ts';

/**
 * The values of a file with those of its core that follow from coreGeometry, as they are at the highest flow of air and
 * in the middle of the flows of coolant that the scenario can reach. They are those of the whole core, as typed ones
 * are: what the opening leaves to the air counts after them. Without coreGeometry, or with faults in the file, the
 * values stay as they are.
 */
export function withGeometry(values: Values, document: JsonObject, hasErrors: boolean, report: Report): Values {
  const { coreGeometry } = values;
  if (coreGeometry === undefined || hasErrors) return values;
  try {
    const geometry = geometryConfig(values, coreGeometry, typedCore(values, document));
    const laws = coreLaws(geometry);
    if (sheetsOf(geometry).some(({ flow }) => flow <= 0)) {
      reportHeaders(coreGeometry, 'some layers run backwards', report);
      return values;
    }
    if (!Number.isNaN(laws.airConductance.kind === 'table' ? laws.airConductance.value[0] : Number.NaN))
      return {
        ...values,
        core: {
          ...values.core,
          ...followingValues(geometry.exposedShare === 1 ? laws : coreLaws({ ...geometry, exposedShare: 1 }), values),
          ...typedCore(values, document),
        },
      };
    reportHeat(values, report);
  } catch (error) {
    if (!(error instanceof OutOfRangeError)) throw error;
    if (error instanceof NoSteadySplitError) {
      reportHeaders(coreGeometry, 'the coolant finds no steady split', report);
    } else reportNoFormula(error, report);
  }
  return values;
}

/** The core of a file without faults with what its coreGeometry gives, where it has one. */
export function coreOfGeometry(core: CoreConfig, values: Values, document: JsonObject): CoreConfig {
  const { coreGeometry } = values;
  return coreGeometry ? withLaws(core, geometryConfig(values, coreGeometry, typedCore(values, document))) : core;
}

/** What the laws come to at one flow of each side, in file units. */
function followingValues(laws: CoreLaws, { core }: Values): Partial<Values['core']> {
  const { airConductance: air, coolantConductance: coolant, airDrop, coolantDrop } = laws;
  if (air.kind !== 'table' || coolant.kind !== 'table' || airDrop.kind !== 'table') return {};
  const airFlow = Number(air.flow[air.flow.length - 1].toPrecision(3));
  const middle = coolant.flow.length >> 1;
  const coolantFlow = Number(coolant.flow[middle].toPrecision(3));
  const drops = airDrop.dropTimesDensity;
  const hasDrop = drops[0] > 0;
  const factorAt = (flow: number, drop: number): number => drop / flow ** COOLANT_DROP_EXPONENT;
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

/** What no rule foresaw: a formula that has no value for such a core. */
function reportNoFormula({ message }: OutOfRangeError, report: Report): void {
  report({
    severity: 'error',
    path: 'coreGeometry.fins',
    message: `The published formulas have no value for a core of these measures: ${message}. Check the measures against each other and their units.`,
    found: message,
    expected: 'measures of a core that can be built',
  });
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

function reportHeaders({ headerVolume, height, coolantLayers }: GeometryValues, what: string, report: Report): void {
  const area = (1e4 * toSi(headerVolume, 'L')) / toSi(height, 'mm');
  report({
    severity: 'error',
    path: 'coreGeometry.headerVolume',
    message: `Headers of ${figure(headerVolume)} L, ${figure(area)} cm2 across, are too small: ${what} over ${coolantLayers} layers. Is this the volume of one whole header?`,
    found: `${figure(headerVolume)} L`,
    expected: 'a larger header',
  });
}
