import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { stepsOf, withValue } from '../../../src/sim/scenario/place.ts';
import type { Scenario } from '../../../src/sim/scenario/scenario.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { applyUpgrades, upgradeClashes } from '../../../src/sim/scenario/upgrade-list.ts';
import { shippedConfig, shippedDocument } from '../../support/shipped.ts';
import { estateWith } from './estate.ts';

const parsed = (text: string): Scenario => {
  const { scenario, issues } = parseScenario(text);
  if (scenario === undefined) throw new Error(JSON.stringify(issues));
  return scenario;
};
const withUpgrades = (...upgrades: unknown[]): string => estateWith({ upgrades });
const issuesOf = (...upgrades: unknown[]) => parseScenario(withUpgrades(...upgrades)).issues;
const made = (scenario: Scenario, chosen: readonly number[]) =>
  applyUpgrades(scenario, scenario.values.upgrades ?? [], chosen).scenario;

const TANK = { name: 'tank', price: 540, hours: '90 min', changes: { 'reservoir.coolantVolume': 12.3 } };

describe('upgrades of a file', () => {
  it('carry a price and hours, either of which may be left out', () => {
    const { values } = parsed(withUpgrades(TANK, { name: 'pump', changes: { 'pump.freeFlow': 60 } }));
    expect(values.upgrades?.[0]).toMatchObject({ name: 'tank', price: 540, hours: 1.5 });
    expect(values.upgrades?.[1]).toMatchObject({ price: undefined, hours: undefined });
  });

  // The cumulative rows of the two cars: what each "+" variant says is what the upgrades until there come to.
  it.each(['rolling-road-estate', 'ridge-roadster'])('of the %s make its "+" variants, in their order', (file) => {
    const scenario = parsed(JSON.stringify(shippedDocument(file)));
    const names = (scenario.values.upgrades ?? []).map(({ name }) => name);
    expect(names).toHaveLength(5);
    names.forEach((name, last) => {
      const upTo = made(scenario, [...names.keys()].slice(0, last + 1));
      const variant = shippedConfig(file, last === 0 ? name : `+ ${name}`);
      expect(upTo && { ...toConfig(upTo), name: '' }).toEqual({ ...variant, name: '' });
    });
  });

  it('lead a scenario to one without variants and upgrades, named after them in the order of the file', () => {
    const scenario = parsed(withUpgrades(TANK, { name: 'pump', changes: { 'pump.freeFlow': 60 } }));
    const both = made(scenario, [1, 0]);
    expect(both?.values.name).toBe('Rolling-road estate: tank + pump');
    expect(Object.keys(both?.document ?? {})).not.toContain('upgrades');
    expect(scenario.values.reservoir.coolantVolume).toBe(2.3);
  });

  it('that change the same key: the later in the file counts, in whatever order they are named', () => {
    const scenario = parsed(
      withUpgrades(TANK, { name: 'big tank', changes: { 'reservoir.coolantVolume': 20, 'pump.freeFlow': 60 } }, PUMP),
    );
    for (const chosen of [
      [0, 1],
      [1, 0],
    ])
      expect(made(scenario, chosen)?.values.reservoir.coolantVolume).toBe(20);
    expect(upgradeClashes(scenario.values.upgrades ?? [])).toEqual([
      { earlier: 0, later: 1, path: 'reservoir.coolantVolume' },
      { earlier: 1, later: 2, path: 'pump' },
    ]);
  });

  it('clash where one puts a whole group in place and the next changes a key of it', () => {
    const speed = { name: 'speed', changes: { 'pump.freeFlow': 65 } };
    expect(upgradeClashes(parsed(withUpgrades(PUMP, speed)).values.upgrades ?? [])).toEqual([
      { earlier: 0, later: 1, path: 'pump.freeFlow' },
    ]);
  });

  it('that say the same of a key do not clash', () => {
    expect(upgradeClashes(parsed(withUpgrades(TANK, { ...TANK, name: 'same' })).values.upgrades ?? [])).toEqual([]);
  });
});

const PUMP = { name: 'pump', changes: { pump: { shutOffPressure: 62, freeFlow: 60, electricalPower: 120 } } };

describe('faulty upgrades', () => {
  it('are reported at the place of the change, and mended there', () => {
    const [issue, ...rest] = issuesOf(TANK, { name: 'core', changes: { 'core.airDrop': 99 } });
    expect(rest).toEqual([]);
    expect(issue).toMatchObject({ severity: 'error', path: 'upgrades.1.changes.core.airDrop' });
    expect(issue.message).toContain('In upgrade "core": Core pressure drop is 99 kPa; expected 0 to 60 kPa.');
    const file = JSON.parse(withUpgrades(TANK, { name: 'core', changes: { 'core.airDrop': 99 } }));
    const mended = withValue(file, stepsOf(issue.fix?.path ?? ''), issue.fix?.value ?? null);
    expect(parseScenario(JSON.stringify(mended)).issues).toEqual([]);
  });

  it.each([
    [{ name: 'u', changes: {} }, 'upgrades.0.changes', 'An upgrade changes {}; expected paths of the file'],
    [{ ...TANK, price: -1 }, 'upgrades.0.price', 'Price of the upgrade is -1; expected 0 to'],
    [{ ...TANK, price: '540 euro' }, 'upgrades.0.price', '"euro" is not a unit for it; expected no unit'],
    [{ ...TANK, hours: true }, 'upgrades.0.hours', 'Hours to fit the upgrade is true'],
    [{ ...TANK, prise: 1 }, 'upgrades.0.prise', 'Did you mean "price"?'],
    [{ name: 'u', changes: { version: 2 } }, 'upgrades.0.changes.version', 'is no place that can be changed'],
    [{ changes: TANK.changes }, 'upgrades.0.name', 'Name of the upgrade is missing'],
  ])('%j', (upgrade, path, message) => {
    const issue = issuesOf(upgrade).find((each) => each.path === path);
    expect(issue?.severity).toBe('error');
    expect(issue?.message).toContain(message);
  });

  it('may not share a name', () => {
    expect(issuesOf(TANK, TANK)).toMatchObject([
      { path: 'upgrades.1.name', message: 'There are two upgrades "tank". Give each its own name.' },
    ]);
  });

  // 13 L of coolant and 2 kg of ice (0.917 kg/L) need 15.18 L; either alone has room in 14 L.
  it('that go alone but not all together are refused', () => {
    const edits = { 'reservoir.vesselVolume': 14, 'start.coolant': 2, 'start.reservoir': 2 };
    const ice = { name: 'ice', changes: { 'reservoir.iceMass': 2, 'reservoir.coolantVolume': 8 } };
    const more = { name: 'more', changes: { 'reservoir.coolantVolume': 13 } };
    const alone = [[ice], [more]].map((upgrades) => parseScenario(estateWith({ ...edits, upgrades })));
    expect(alone.map(({ scenario }) => scenario !== undefined)).toEqual([true, true]);
    const { issues } = parseScenario(estateWith({ ...edits, upgrades: [ice, more] }));
    const errors = issues.filter(({ severity }) => severity === 'error');
    expect(errors).toHaveLength(1);
    expect(errors[0].path).toMatch(/^upgrades\.[01]\.changes/);
    expect(errors[0].message).toMatch(/^With all upgrades made: In upgrade ".*need 15\.18 L/);
  });
});
