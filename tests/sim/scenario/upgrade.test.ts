import { describe, expect, it } from 'vitest';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { applyVariant, variants } from '../../../src/sim/scenario/variants.ts';
import { shippedDocument } from '../../support/shipped.ts';
import type { LooseDocument } from '../../support/short-session.ts';

/** What the lines were called while they were named by both ends. */
const OLD_NAMES: Readonly<Record<string, string>> = {
  afterPump: 'pumpToCore',
  afterCore: 'coreToExchanger',
  afterExchanger: 'exchangerToReservoir',
  afterReservoir: 'reservoirToPump',
};

const withOldNames = (lines: LooseDocument): LooseDocument =>
  Object.fromEntries(Object.entries(lines).map(([key, value]) => [OLD_NAMES[key] ?? key, value]));

function firstVersion(file: string, more: readonly LooseDocument[] = []): LooseDocument {
  const car = structuredClone(shippedDocument(file)) as LooseDocument;
  return { ...car, version: 1, lines: withOldNames(car.lines), variants: [...car.variants, ...more] };
}

function read(document: LooseDocument) {
  const { scenario, issues } = parseScenario(JSON.stringify(document));
  if (scenario === undefined) throw new Error(JSON.stringify(issues));
  return { scenario, issues };
}

function configsOf(document: LooseDocument): Config[] {
  const { scenario } = read(document);
  const changed = variants(scenario).map((name) => {
    const variant = applyVariant(scenario, name);
    if (variant.scenario === undefined) throw new Error(JSON.stringify(variant.issues));
    return toConfig(variant.scenario);
  });
  return [toConfig(scenario), ...changed];
}

const FILES = ['rolling-road-estate', 'quarter-mile-saloon', 'session-coupe', 'ridge-roadster', 'motorway-wagon'];

describe('a file of version 1', () => {
  it.each(FILES)('of the %s is the car of version 2, every variant with it', (file) => {
    const before = (key: string) => OLD_NAMES[key] ?? key;
    const changes = (name: (key: string) => string) => ({
      [`lines.${name('afterPump')}.length`]: 2.5,
      [`lines.${name('afterCore')}`]: [{ length: 1.1, bore: 19 }, { length: 0.4 }],
      'lines.bore': 18,
    });
    const whole = (names: (lines: LooseDocument) => LooseDocument) => {
      const { lines } = structuredClone(shippedDocument(file)) as LooseDocument;
      return { lines: names({ ...lines, afterPump: { length: 9 } }) };
    };
    const old = firstVersion(file, [
      { name: 'longer', changes: changes(before) },
      { name: 'all lines anew', changes: whole(withOldNames) },
    ]);
    const now = structuredClone(shippedDocument(file)) as LooseDocument;
    now.variants.push({ name: 'longer', changes: changes((key) => key) });
    now.variants.push({ name: 'all lines anew', changes: whole((lines) => lines) });
    const configs = configsOf(now);
    expect(configsOf(old)).toEqual(configs);
    const last = configs[configs.length - 1];
    expect(last.lines.find(({ after }) => after === 'pump')?.segments[0].length).toBe(9);
  });

  it('is read with one warning that names every key that changed', () => {
    const { issues } = read(firstVersion('rolling-road-estate'));
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ severity: 'warning', path: 'version', found: '1', expected: '2' });
    expect(issues[0].message).toContain('Made with format version 1; converted to version 2: ');
    for (const [now, before] of Object.entries(OLD_NAMES)) {
      expect(issues[0].message).toContain(`${before} is now ${now}`);
    }
    expect(issues[0].message).toContain('No value has changed.');
  });

  it('without any of those keys says so', () => {
    const car = firstVersion('rolling-road-estate');
    car.variants = [];
    car.lines = structuredClone(shippedDocument('rolling-road-estate')).lines;
    expect(read(car).issues.map(({ message }) => message)).toEqual([
      'Made with format version 1; converted to version 2: no key has another name. No value has changed.',
    ]);
  });

  it('keeps a key that every object knows', () => {
    const car = firstVersion('rolling-road-estate');
    car.lines.toString = { length: 1 };
    expect(parseScenario(JSON.stringify(car)).issues.map(({ path }) => path)).toContain('lines.toString');
  });

  it('keeps its faults', () => {
    const car = firstVersion('rolling-road-estate');
    car.lines.pumpToCore.length = -1;
    const { scenario, issues } = parseScenario(JSON.stringify(car));
    expect(scenario).toBeUndefined();
    expect(issues.map(({ path }) => path)).toContain('lines.afterPump.length');
  });
});

it('a file of version 2 with an old name is told the name of today', () => {
  const car = structuredClone(shippedDocument('rolling-road-estate')) as LooseDocument;
  car.lines.pumpToCore = car.lines.afterPump;
  const { scenario, issues } = parseScenario(JSON.stringify(car));
  expect(scenario).toBeUndefined();
  expect(issues.some(({ path }) => path === 'lines.pumpToCore')).toBe(true);
});

it('a file of version 3 is refused', () => {
  const { scenario, issues } = parseScenario(JSON.stringify({ ...shippedDocument('rolling-road-estate'), version: 3 }));
  expect(scenario).toBeUndefined();
  expect(issues.map(({ path, severity }) => [path, severity])).toEqual([['version', 'error']]);
  expect(issues[0].found).toBe('3');
});
