import {
  effectivenessCrossflow,
  effectivenessOfConductance,
  MOST_UNITS,
} from '../correlations/crossflow-effectiveness.ts';
import { AIR_HEAT_CAPACITY } from '../fluids/moist-air.ts';
import { findRoot } from '../kernels/root-finding.ts';
import { fromSi, toSi } from '../units.ts';
import { coolantOf } from './coolant-of.ts';
import type { TestValues, Values } from './shape.ts';

/** Parts of the file that may be given by a test point. */
export const TESTED_PARTS = ['core', 'exchanger', 'secondExchanger'] as const;
export type TestedPart = (typeof TESTED_PARTS)[number];

/** The four keys of a part that a test point stands for. */
export const BY_TEST = [
  'airConductance',
  'airConductanceAtFlow',
  'coolantConductance',
  'coolantConductanceAtFlow',
] as const;
type Conductances = Readonly<Record<(typeof BY_TEST)[number], number>>;

/** Nothing that is called an exchanger has so little. */
const FEWEST_UNITS = 1e-4;

/** Flows of a test: kg/s, and W/K of both sides, the air's and the smaller and larger of the two. */
export interface TestRates {
  readonly airFlow: number;
  readonly coolantFlow: number;
  readonly air: number;
  readonly smaller: number;
  readonly larger: number;
}

/** Undefined where the coolant of the file is at fault; NaN where a flow is. */
export function ratesOfTest(test: TestValues, values: Values): TestRates | undefined {
  const mix = coolantOf(values);
  return mix && ratesOfFlows(test, mix);
}

function ratesOfFlows(
  { airFlow, coolantFlow: volumeFlow }: Pick<TestValues, 'airFlow' | 'coolantFlow'>,
  { density, heatCapacity }: NonNullable<ReturnType<typeof coolantOf>>,
): TestRates {
  const coolantFlow = toSi(volumeFlow, 'L/min') * density;
  const [air, coolant] = [airFlow * AIR_HEAT_CAPACITY, coolantFlow * heatCapacity];
  return {
    airFlow,
    coolantFlow,
    air,
    smaller: Math.min(air, coolant),
    larger: Math.max(air, coolant),
  };
}

/**
 * Heat over the most that could pass, from measured temperatures; undefined where they are not all there.
 *
 *     eps = C_air (T_air,in - T_air,out)/(C_min (T_air,in - T_coolant,in))
 */
export function effectivenessByTemperatures(
  { airIn, airOut, coolantIn }: TestValues,
  { air, smaller }: TestRates,
): number | undefined {
  if (airIn === undefined || airOut === undefined || coolantIn === undefined) return undefined;
  return (air * (airIn - airOut)) / (smaller * (airIn - coolantIn));
}

/** Effectiveness at conductances of both sides [W/K]. */
export function effectivenessAt(air: number, coolant: number, { smaller, larger }: TestRates): number {
  return effectivenessOfConductance(1 / (1 / air + 1 / coolant), smaller, larger);
}

/** The most that any size comes to at these flows. */
export function mostEffectiveness({ smaller, larger }: TestRates): number {
  return effectivenessCrossflow(MOST_UNITS, smaller / larger);
}

/**
 * Conductances of both sides at the flows of a test, from its effectiveness in cross-flow, both fluids unmixed.
 *
 *     eps(UA/C_min, C_min/C_max) = effectiveness,  air side UA/s,  coolant side UA/(1 - s)
 *
 * @param airShare - s, share of the resistance on the air side [-]
 * @returns W/K and kg/s; NaN where no size comes to that effectiveness
 */
function conductancesOfTest(effectiveness: number, airShare: number, rates: TestRates): Conductances {
  const { smaller, larger, airFlow, coolantFlow } = rates;
  const short = (units: number): number => effectivenessCrossflow(units, smaller / larger) - effectiveness;
  const conductance = findRoot(short, FEWEST_UNITS, MOST_UNITS, 1e-12) * smaller;
  return {
    airConductance: conductance / airShare,
    airConductanceAtFlow: airFlow,
    coolantConductance: conductance / (1 - airShare),
    coolantConductanceAtFlow: coolantFlow,
  };
}

/** The values of a file without faults, with the conductances that follow from test points where none are typed. */
export function withTestPoints(values: Values): Values {
  const filled = { ...values };
  for (const part of TESTED_PARTS) {
    const typed = values[part];
    const rates = typed?.test && ratesOfTest(typed.test, values);
    if (typed?.test === undefined || rates === undefined || typed.airConductance !== undefined) continue;
    const { effectiveness = effectivenessByTemperatures(typed.test, rates), airShareOfResistance } = typed.test;
    if (effectiveness === undefined) continue;
    Object.assign(filled, { [part]: { ...typed, ...conductancesOfTest(effectiveness, airShareOfResistance, rates) } });
  }
  return filled;
}

/** The test that the conductances of a part come to at the flows that they are given for, in file units. */
export function testPointOf(values: Values, part: TestedPart): Readonly<Record<string, number>> | undefined {
  const typed = values[part];
  const mix = coolantOf(values);
  if (typed === undefined || mix === undefined) return undefined;
  const { airConductance, coolantConductance, airConductanceAtFlow, coolantConductanceAtFlow } = typed;
  const flows = {
    airFlow: airConductanceAtFlow,
    coolantFlow: fromSi(coolantConductanceAtFlow / mix.density, 'L/min'),
  };
  const rates = ratesOfFlows(flows, mix);
  return {
    ...flows,
    effectiveness: effectivenessAt(airConductance, coolantConductance, rates),
    airShareOfResistance: coolantConductance / (airConductance + coolantConductance),
  };
}
