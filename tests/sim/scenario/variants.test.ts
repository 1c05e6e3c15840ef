import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { stepsOf, withValue } from '../../../src/sim/scenario/place.ts';
import type { Scenario } from '../../../src/sim/scenario/scenario.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { applyChanges, applyVariant, variants } from '../../../src/sim/scenario/variants.ts';
import { powerOf } from '../../support/power-law.ts';
import { ESTATE, estateWith } from './estate.ts';

const parsed = (text: string): Scenario => {
  const { scenario, issues } = parseScenario(text);
  if (scenario === undefined) throw new Error(JSON.stringify(issues));
  return scenario;
};
const estate = parsed(ESTATE);
const configOf = (name: string) => toConfig(parsed(JSON.stringify(applyVariant(estate, name).scenario?.document)));
const issuesOf = (...list: unknown[]) => parseScenario(estateWith({ variants: list })).issues;

describe('a variant', () => {
  it('changes what it names and nothing else', () => {
    const stock = toConfig(estate);
    expect(configOf('stock + pump only')).toEqual({
      ...stock,
      name: 'Rolling-road estate: stock + pump only',
      pump: {
        ...stock.pump,
        curve: { kind: 'parabola', shutOffPressure: 62000, freeFlow: expect.closeTo(1e-3, 12) },
        electricalPower: 120,
      },
    });
  });

  it('reaches into lists and takes units', () => {
    expect(configOf('stock, rest 240 s').cycle.block.map(({ duration }) => duration)).toEqual([12, 240]);
  });

  it('stands on the changes of those it is based on', () => {
    const { core, exchanger, lines, pump, reservoir } = configOf('+ 10 L tank');
    expect(powerOf(core.airConductance).reference).toBe(585);
    expect(lines.map(({ segments }) => segments[0].bore)).toEqual([0.022, 0.022, 0.022, 0.022]);
    expect(pump.electricalPower).toBe(120);
    expect(exchanger?.faceArea).toBe(0.18);
    expect(reservoir.coolantVolume).toBeCloseTo(0.0123, 15);
  });

  it('is a scenario of its own, without variants', () => {
    const { scenario } = applyVariant(estate, 'bigger core');
    expect(Object.keys(scenario?.document ?? {})).not.toContain('variants');
    expect(scenario && variants(scenario)).toEqual([]);
  });

  it('its own changes come after those of its base', () => {
    const file = parsed(
      estateWith({
        variants: [
          { name: 'child', basedOn: 'parent', changes: { 'core.airDrop': 5 } },
          { name: 'parent', changes: { 'core.airDrop': 7, 'lines.bore': 19 } },
        ],
      }),
    );
    const { scenario } = applyVariant(file, 'child');
    expect(scenario?.values.core.airDrop).toBe(5);
    expect(scenario?.values.lines.bore).toBe(19);
    expect(variants(file)).toEqual(['child', 'parent']);
  });

  it('may put a whole group or list in place', () => {
    const curve = [
      { flow: 0, pressure: 60 },
      { flow: 40, pressure: 10 },
    ];
    const changes = {
      pump: { curve, electricalPower: 90 },
      'lines.afterPump': [{ length: 1 }, { length: 2, bore: 12 }],
    };
    const { scenario, issues } = applyVariant(parsed(estateWith({ variants: [{ name: 'v', changes }] })), 'v');
    expect(issues).toEqual([]);
    expect(scenario?.values.pump).toMatchObject({ curve, shutOffPressure: undefined });
    expect(scenario?.values.lines.afterPump).toHaveLength(2);
  });

  it('leaves the scenario it came from as it was', () => {
    applyVariant(estate, 'bigger core');
    expect(estate.document).toEqual(JSON.parse(ESTATE));
    expect(estate.values.core.airConductance).toBe(390);
    expect(Object.isFrozen(estate.document.core)).toBe(true);
  });
});

describe('values that no file holds', () => {
  it('are told of where the file has them', () => {
    const [issue] = applyChanges(estate, 'changed values', { 'core.airDrop': 99 }).issues;
    expect(issue).toMatchObject({ severity: 'error', path: 'core.airDrop', fix: { path: 'core.airDrop' } });
    expect(issue.message).toMatch(/^Core pressure drop is 99 kPa; expected 0 to 60 kPa\./);
    const [none] = applyChanges(estate, 'changed values', { 'coer.airDrop': 1 }).issues;
    expect(none).toMatchObject({ path: 'coer.airDrop' });
    expect(none.message).toMatch(/^"coer\.airDrop" is no place that can be changed\. Did you mean "core"\?/);
  });
});

describe('a faulty variant', () => {
  it('is reported when the file is read, at the place of the change', () => {
    const [issue, ...rest] = issuesOf({ name: 'v', changes: { 'core.airDrop': 99 } });
    expect(rest).toEqual([]);
    expect(issue).toMatchObject({ severity: 'error', path: 'variants.0.changes.core.airDrop' });
    expect(issue.message).toBe(
      'In variant "v": Core pressure drop is 99 kPa; expected 0 to 60 kPa. Did you mean 99 mbar (9.9 kPa)?',
    );
  });

  it('is mended by its fix', () => {
    const file = estateWith({ variants: [{ name: 'v', changes: { 'core.airDrop': 99 } }] });
    const { fix } = parseScenario(file).issues[0];
    const mended = withValue(JSON.parse(file), stepsOf(fix?.path ?? ''), fix?.value ?? null);
    const { scenario, issues } = parseScenario(JSON.stringify(mended));
    expect(issues).toEqual([]);
    expect(scenario && applyVariant(scenario, 'v').scenario?.values.core.airDrop).toBeCloseTo(9.9, 12);
  });

  it('is mended beside its changes where the fault lies in what it did not change', () => {
    const file = estateWith({ variants: [{ name: 'winter', changes: { 'ambient.temperature': -30 } }] });
    const [issue] = parseScenario(file).issues;
    expect(issue.path).toBe('variants.0.changes');
    expect(issue.fix).toMatchObject({ path: 'variants.0.changes.coolant.glycolByVolume', value: 50 });
    const mended = withValue(JSON.parse(file), stepsOf(issue.fix?.path ?? ''), issue.fix?.value ?? null);
    expect(parseScenario(JSON.stringify(mended)).issues).toEqual([]);
  });

  it.each([
    [{ 'core.airConductnace': 1 }, 'variants.0.changes.core.airConductnace', 'Did you mean "airConductance"?'],
    [{ 'coer.airDrop': 1 }, 'variants.0.changes.coer.airDrop', 'Did you mean "core"?'],
    [{ 'cycle.7.duration': 1 }, 'variants.0.changes.cycle.7.duration', 'items of a list are counted from 0'],
    [{ 'cycle.x.duration': 1 }, 'variants.0.changes.cycle.x.duration', 'items of a list are counted from 0'],
    [{ 'core.airDrop.x': 1 }, 'variants.0.changes.core.airDrop.x', 'The file has nothing at that place'],
    [{ version: 2 }, 'variants.0.changes.version', 'is no place that can be changed'],
    [{ '__proto__.polluted': 1 }, 'variants.0.changes.__proto__.polluted', 'is no place that can be changed'],
    [{ 'core.__proto__.polluted': 1 }, 'variants.0.changes.core.__proto__', '"__proto__" is not a key of core'],
    [{ 'lines.bore': 'AN-12' }, 'variants.0.changes.lines.bore', 'Dash 12 is about 17 to 19 mm inside'],
    [{}, 'variants.0.changes', 'A variant changes {}; expected paths of the file'],
  ])('%j', (changes, path, message) => {
    const issue = issuesOf({ name: 'v', changes }).find((each) => each.path === path);
    expect(issue?.message).toContain(message);
    expect(issue?.severity).toBe('error');
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
  });

  it('names the variant that made the change, once, however many are based on it', () => {
    const issues = issuesOf(
      { name: 'a', changes: { 'core.airDrop': 99 } },
      { name: 'b', basedOn: 'a', changes: { 'lines.bore': 19 } },
      { name: 'c', basedOn: 'b', changes: { 'lines.bore': 22 } },
    );
    expect(issues.map(({ path }) => path)).toEqual(['variants.0.changes.core.airDrop']);
  });

  it('is blamed for its own change, not for that of its base', () => {
    const issues = issuesOf(
      { name: 'a', changes: { 'core.airDrop': 99 } },
      { name: 'b', basedOn: 'a', changes: { 'core.airDrop': 98 } },
    );
    expect(issues.map(({ path }) => path)).toEqual([
      'variants.0.changes.core.airDrop',
      'variants.1.changes.core.airDrop',
    ]);
  });

  it('that is based on itself, on nothing known, or has a name twice is refused', () => {
    const changes = { 'core.airDrop': 5 };
    const messages = issuesOf(
      { name: 'a', basedOn: 'c', changes },
      { name: 'b', basedOn: 'a', changes },
      { name: 'c', basedOn: 'b', changes },
      { name: 'd', basedOn: 'stok', changes },
      { name: 'd', changes },
      { name: 'e', basedOn: 'e', changes },
    ).map(({ message }) => message);
    expect(messages).toContain('"a" is based on itself, by way of "b".');
    expect(messages).toContain('"e" is based on itself, by way of "e".');
    expect(messages).toContain('There are two variants "d". Give each its own name.');
    expect(messages.join('\n')).toContain('There is no variant "stok". The file has "a", "b"');
  });

  it('does not repeat what is wrong with the file itself', () => {
    const file = estateWith({ 'ambient.temperature': 55, variants: [{ name: 'v', changes: { 'core.airDrop': 5 } }] });
    expect(parseScenario(file).issues.map(({ path }) => path)).toEqual(['ambient.temperature']);
  });
});

it('an unknown variant is answered with the nearest', () => {
  const { scenario, issues } = applyVariant(estate, 'biger core');
  expect(scenario).toBeUndefined();
  expect(issues[0].message).toBe('There is no variant "biger core". Did you mean "bigger core"?');
});
