import { describe, expect, it } from 'vitest';
import { CoolantRing, meterSetting } from '../../../src/sim/model/coolant-ring.ts';
import type { JsonObject } from '../../../src/sim/scenario/issue.ts';
import { onDay } from '../../../src/sim/scenario/other-day.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import type { ScenarioResult } from '../../../src/sim/scenario/scenario.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { applyUpgrades } from '../../../src/sim/scenario/upgrade-list.ts';
import { applyChanges, applyVariant } from '../../../src/sim/scenario/variants.ts';
import { estateWith } from './estate.ts';

const PUMP = { 'pump.freeFlow': 52, 'pump.shutOffPressure': 56 };

/** The estate, whose curves make 13.2 L/min, with 10 measured at 40 degC. */
function metered(edits: JsonObject = {}) {
  const { scenario, issues } = parseScenario(
    estateWith({ 'pump.measuredFlow': 10, 'pump.measuredFlowAt': 40, ...edits }),
  );
  if (scenario === undefined) throw new Error(JSON.stringify(issues));
  return scenario;
}

/** What a meter reads on a car at 40 degC and rated voltage [L/min], and the factor on its resistances. */
function meter({ scenario, issues }: ScenarioResult): { reading: number; factor: number } {
  if (scenario === undefined) throw new Error(JSON.stringify(issues));
  const ring = new CoolantRing(toConfig(scenario));
  return { reading: 60000 * ring.flowAt(meterSetting(1), 313.15), factor: ring.resistanceFactor };
}

const car = metered();
const stock = meter({ scenario: car, issues: [] });

describe('a flow that was measured', () => {
  it('is met on its own car', () => {
    expect(stock.reading).toBeCloseTo(10, 6);
    expect(stock.factor).toBeGreaterThan(1.2);
  });

  it.each([
    ['a stronger pump', PUMP, 13, 20],
    ['wider lines', { 'lines.bore': 25 }, 10.2, 20],
    ['a core of more resistance', { 'core.coolantDropFactor': 60 }, 7, 9.8],
    ['half the core full of air', { 'core.airLockedShare': 0.5 }, 7, 9.8],
    ['a pump that could not make it', { 'pump.freeFlow': 9 }, 3, 8],
    ['thicker coolant', { 'coolant.glycolByVolume': 55 }, 8, 9.99],
    [
      'the whole pump with the same flow',
      { pump: { ...(car.document.pump as JsonObject), freeFlow: 52, shutOffPressure: 56 } },
      13,
      20,
    ],
  ])('keeps its resistances with %s', (_, changes, least, most) => {
    const { reading, factor } = meter(applyChanges(car, 'changed', changes));
    expect(factor).toBeCloseTo(stock.factor, 12);
    expect(reading).toBeGreaterThan(least);
    expect(reading).toBeLessThan(most);
  });

  it.each([
    ['flow', { ...PUMP, 'pump.measuredFlow': 12 }, 12],
    ['flow, the same by chance', { ...PUMP, 'pump.measuredFlow': 10 }, 10],
    [
      'flow, with the whole pump',
      { pump: { freeFlow: 52, shutOffPressure: 56, electricalPower: 50, measuredFlow: 12, measuredFlowAt: 40 } },
      12,
    ],
    ['temperature', { ...PUMP, 'pump.measuredFlowAt': '313.15 K' }, 10],
  ])('is a new one where a change gives its %s', (_, changes, expected) => {
    expect(meter(applyChanges(car, 'changed', changes)).reading).toBeCloseTo(expected, 6);
  });

  it('is a new one where a change gives its voltage', () => {
    const { scenario } = applyChanges(car, 'changed', { ...PUMP, 'pump.measuredFlowVoltage': 0.9 });
    const ring = new CoolantRing(toConfig(scenario ?? car));
    expect(60000 * ring.flowAt(meterSetting(0.9), 313.15)).toBeCloseTo(10, 6);
  });

  it('leaves the curves where a change takes it out', () => {
    const pump = { freeFlow: 26, shutOffPressure: 28, electricalPower: 50 };
    expect(meter(applyChanges(car, 'changed', { pump })).factor).toBe(1);
  });

  it('is refused where a change gives one that the changed pump cannot make', () => {
    const { scenario, issues } = applyChanges(car, 'changed', { 'pump.freeFlow': 9, 'pump.measuredFlow': 9.5 });
    expect(scenario).toBeUndefined();
    expect(issues[0].message).toContain('9.5 L/min was measured, but the pump gives 9 L/min');
  });

  it('is that of the variant that gives it, in those based on it', () => {
    const variants = [
      { name: 'strong', changes: { ...PUMP, 'pump.measuredFlow': 12 } },
      { name: 'strong and wide', basedOn: 'strong', changes: { 'lines.bore': 25 } },
      { name: 'weak', basedOn: 'strong', changes: { 'pump.freeFlow': 11 } },
    ];
    const file = metered({ variants });
    const [strong, wide, weak] = variants.map(({ name }) => meter(applyVariant(file, name)));
    expect(strong.reading).toBeCloseTo(12, 6);
    for (const { factor } of [wide, weak]) expect(factor).toBeCloseTo(strong.factor, 12);
    expect(wide.reading).toBeGreaterThan(12.1);
  });

  it('stays that of its car through upgrades, of a variant too, and on another day', () => {
    const upgrades = [
      { name: 'pump', price: undefined, hours: undefined, changes: PUMP },
      { name: 'lines', price: undefined, hours: undefined, changes: { 'lines.bore': 25 } },
    ];
    const [pump, both] = [[0], [0, 1]].map((chosen) => applyUpgrades(car, upgrades, chosen));
    expect(meter(both).reading).toBeGreaterThan(meter(pump).reading + 0.2);
    expect(meter(pump).reading).toBeGreaterThan(13);
    const onVariant = pump.scenario && applyUpgrades(pump.scenario, upgrades, [1]);
    expect(onVariant && meter(onVariant)).toEqual(meter(both));
    const hot = pump.scenario && onDay(pump.scenario, { temperature: 40 });
    expect(hot && meter(hot)).toEqual(meter(pump));
  });

  it('crosses to another thread with the loop that it was measured on', () => {
    const { scenario } = applyChanges(car, 'changed', PUMP);
    const config = toConfig(scenario ?? car);
    expect(config.measuredFlow?.on?.pump).toEqual(toConfig(car).pump);
    expect(structuredClone(config)).toEqual(config);
  });
});
