import { describe, expect, it } from 'vitest';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { type Day, onDay } from '../../../src/sim/scenario/other-day.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { type Edits, shortDocument } from '../../support/short-session.ts';

function scenarioOf(edits: Edits) {
  const { scenario, issues } = parseScenario(JSON.stringify(shortDocument(edits)));
  if (scenario === undefined) throw new Error(issues[0].message);
  return scenario;
}

function configOn(day: Day, edits: Edits = {}): Config {
  const { scenario, issues } = onDay(scenarioOf(edits), day);
  if (scenario === undefined) throw new Error(issues[0].message);
  return toConfig(scenario);
}

describe('the same car on another day', () => {
  it('is the file as it stands where nothing is different', () => {
    const scenario = scenarioOf({});
    expect(onDay(scenario, {}).scenario).toBe(scenario);
  });

  it('shifts the outside temperatures of phases by as much as that of the file', () => {
    const edits = { 'cycle.0.outsideTemperature': 20, 'cycle.1.phases.1.outsideTemperature': [25, '86 degF'] };
    const { ambient, cycle } = configOn({ temperature: 35 }, edits);
    expect(ambient.temperature).toBeCloseTo(308.15, 9);
    expect(cycle.before[0].outsideTemperature.from).toBeCloseTo(301.15, 9);
    expect(cycle.block[0].outsideTemperature.to).toBeCloseTo(308.15, 9);
    expect(cycle.block[1].outsideTemperature.from).toBeCloseTo(306.15, 9);
    expect(cycle.block[1].outsideTemperature.to).toBeCloseTo(311.15, 9);
  });

  it('lets start temperatures follow that the file leaves to the outside air, and keeps typed ones', () => {
    const { start } = configOn({ temperature: 35 }, { start: { casing: 45 } });
    expect(start.casing).toBeCloseTo(318.15, 9);
    for (const part of ['coolant', 'metal', 'reservoir', 'plenum', 'sensor'] as const) {
      expect(start[part], part).toBeCloseTo(308.15, 9);
    }
  });

  it('takes the pressure of the standard atmosphere in place of a typed one, phases in proportion', () => {
    // ISO 2533: 84.556 kPa at a geopotential 1500 m, 84.560 kPa at a geometric 1500 m.
    const edits = { 'ambient.pressure': 100, 'cycle.1.phases.0.stationPressure': [100, 90] };
    const { ambient, cycle } = configOn({ altitude: 1500 }, edits);
    expect(ambient.pressure / 1e3).toBeCloseTo(84.56, 2);
    expect(cycle.block[0].outsidePressure.from / 1e3).toBeCloseTo(84.56, 2);
    expect(cycle.block[0].outsidePressure.to / 1e3).toBeCloseTo(76.1, 2);
    expect(cycle.block[1].outsidePressure.from / 1e3).toBeCloseTo(84.56, 2);
    expect(ambient.temperature).toBeCloseTo(300.15, 9);
  });

  it('has its humidity in every phase', () => {
    const { ambient, cycle } = configOn({ relativeHumidity: 80 }, { 'cycle.0.relativeHumidity': 20 });
    expect([ambient, cycle.before[0], cycle.block[0]].map((each) => each.relativeHumidity)).toEqual([0.8, 0.8, 0.8]);
  });

  it('is refused with the reason where it cannot be', () => {
    const { scenario, issues } = onDay(scenarioOf({}), { relativeHumidity: 130 });
    expect(scenario).toBeUndefined();
    expect(issues.map(({ message }) => message).join()).toContain('130');
  });
});
