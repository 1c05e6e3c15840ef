import { describe, expect, it } from 'vitest';
import { changedInputs } from '../../../src/sim/scenario/differences.ts';
import type { JsonObject } from '../../../src/sim/scenario/issue.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import type { Scenario } from '../../../src/sim/scenario/scenario.ts';
import { applyChanges, applyVariant } from '../../../src/sim/scenario/variants.ts';
import { shippedDocument } from '../../support/shipped.ts';

function scenarioOf(document: JsonObject): Scenario {
  const { scenario, issues } = parseScenario(JSON.stringify(document));
  if (scenario === undefined) throw new Error(issues[0].message);
  return scenario;
}
const ESTATE = scenarioOf(shippedDocument('rolling-road-estate'));

function afterwards(changes: JsonObject) {
  const { scenario, issues } = applyChanges(ESTATE, 'other', changes);
  if (scenario === undefined) throw new Error(issues[0].message);
  return changedInputs(ESTATE, scenario);
}

describe('inputs that differ', () => {
  it('are listed with both values and the unit, a default where the first file has none', () => {
    expect(afterwards({ 'core.airConductance': 585, 'core.airLockedShare': 0.5 })).toEqual([
      { path: 'core.airConductance', unit: 'W/K', from: 390, to: 585 },
      { path: 'core.airLockedShare', unit: 'share', from: 0, to: 0.5 },
    ]);
  });

  it('are compared as values, in the unit of the key: another spelling is no difference', () => {
    expect(afterwards({ 'cycle.0.duration': 300, 'lines.bore': '16.5 mm' })).toEqual([]);
    expect(afterwards({ 'cycle.1.phases.1.duration': '4 min', 'cycle.1.phases.0.engineSpeed': [2500, 6000] })).toEqual([
      { path: 'cycle.1.phases.0.engineSpeed', unit: 'rpm', from: [2500, 6600], to: [2500, 6000] },
      { path: 'cycle.1.phases.1.duration', unit: 's', from: 90, to: 240 },
    ]);
  });

  it('are found in a segment that stands without its brackets, and in a part that is new', () => {
    expect(afterwards({ 'lines.afterCore': { length: 2.5, lossCoefficient: 6 } })).toEqual([
      { path: 'lines.afterCore.0.length', unit: 'm', from: 1.9, to: 2.5 },
    ]);
    const loop = ['pump', 'core', 'heatSink', 'exchanger', 'reservoir'];
    const curve = [
      { coolant: 20, heat: 0 },
      { coolant: 40, heat: 900 },
    ];
    const sink = afterwards({ loop, 'heatSink.curve': curve, 'lines.afterHeatSink': [] });
    expect(sink).toContainEqual({ path: 'loop', to: loop });
    expect(sink).toContainEqual({ path: 'heatSink.curve.1.heat', unit: 'W', to: 900 });
  });

  it('are not the schema that an editor reads', () => {
    const elsewhere = scenarioOf({ ...shippedDocument('rolling-road-estate'), $schema: './other.json' });
    expect(changedInputs(ESTATE, elsewhere)).toEqual([]);
  });

  it('are those of a variant and of no other, and never its name', () => {
    const { scenario } = applyVariant(ESTATE, 'stock + pump only');
    expect(scenario && changedInputs(ESTATE, scenario)).toEqual([
      { path: 'pump.shutOffPressure', unit: 'kPa', from: 28, to: 62 },
      { path: 'pump.freeFlow', unit: 'L/min', from: 26, to: 60 },
      { path: 'pump.electricalPower', unit: 'W', from: 50, to: 120 },
    ]);
  });

  it('leave out what only follows from others', () => {
    const { scenario } = applyVariant(ESTATE, 'core by its measures, 120 mm deep');
    const wider = scenario && applyChanges(scenario, 'wider', { 'coreGeometry.width': 218 }).scenario;
    expect(scenario && wider && changedInputs(scenario, wider)).toEqual([
      { path: 'coreGeometry.width', unit: 'mm', from: 200, to: 218 },
    ]);
  });
});
