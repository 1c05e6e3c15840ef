import fc from 'fast-check';
import { expect, it } from 'vitest';
import { parseScenario } from '../../../src/sim/scenario/parse.ts';
import { stepsOf, withValue } from '../../../src/sim/scenario/place.ts';
import { toConfig } from '../../../src/sim/scenario/to-config.ts';
import { applyVariant, variants } from '../../../src/sim/scenario/variants.ts';
import { ESTATE } from './estate.ts';

/** Either a scenario that makes a configuration of numbers, or an error with a place; and sentences fit to be read. */
function answerTo(text: string): 'scenario' | 'error' {
  const { scenario, issues } = parseScenario(text);
  for (const issue of issues) {
    expect(issue.path, text).not.toBe('');
    expect(issue.message, text).toMatch(/^.*[.?]$/su);
    if (!text.includes('NaN')) expect(issue.message, text).not.toMatch(/NaN|undefined|\[object/);
  }
  expect(scenario === undefined, text).toBe(issues.some(({ severity }) => severity === 'error'));
  if (scenario === undefined) return 'error';
  expectNumbers(toConfig(scenario), text);
  for (const name of variants(scenario).slice(-1)) expect(applyVariant(scenario, name).scenario, text).toBeDefined();
  return 'scenario';
}

function expectNumbers(value: unknown, text: string): void {
  if (typeof value === 'object' && value !== null) for (const inner of Object.values(value)) expectNumbers(inner, text);
  else if (typeof value === 'number') expect(Number.isFinite(value), text).toBe(true);
  else expect(['string', 'boolean', 'undefined'], text).toContain(typeof value);
}

it('any text ends in a scenario or an error with a place', () => {
  const start = '{"format":"soakbench-scenario","version":1,';
  const texts = fc.oneof(
    fc.string(),
    fc.string({ unit: 'binary' }),
    fc.json(),
    fc.json().map((json) => `${start}"core":${json}}`),
    fc.json().map((json) => `${start}"cycle":${json},"variants":[${json}]}`),
    fc.nat({ max: ESTATE.length }).map((length) => ESTATE.slice(0, length)),
  );
  const ends = { scenario: 0, error: 0 };
  fc.assert(
    fc.property(texts, (text) => {
      ends[answerTo(text)]++;
    }),
    { numRuns: 2000 },
  );
  expect(ends.error).toBeGreaterThan(1000);
});

function placesOf(value: unknown, place: readonly string[] = []): string[][] {
  const inner = typeof value === 'object' && value !== null ? Object.entries(value) : [];
  return [[...place], ...inner.flatMap(([key, each]) => placesOf(each, [...place, key]))];
}

/** The estate with three of its variants, the last of them based on another, and two of its upgrades. */
function goodFile() {
  const file = JSON.parse(ESTATE);
  return { ...file, variants: file.variants.slice(0, 3), upgrades: file.upgrades.slice(1, 3) };
}

/** The same by test points, with every key that is only held against others. */
function testedFile() {
  const file = goodFile();
  file.core.test = {
    airFlow: 0.3,
    coolantFlow: 12,
    effectiveness: 0.68,
    airIn: 120,
    airOut: 68,
    coolantIn: 44,
    ambient: 27,
  };
  file.exchanger.test = { airFlow: 0.6, coolantFlow: '12 L/min', airIn: 20, airOut: 32, coolantIn: 44 };
  for (const part of [file.core, file.exchanger])
    for (const side of ['airConductance', 'coolantConductance'])
      for (const key of [side, `${side}AtFlow`]) delete part[key];
  Object.assign(file.reservoir, { iceMass: 2, vesselVolume: 6 });
  Object.assign(file.compressor, { highestSpeed: 12000, expectedBoost: 70 });
  file.start.coolant = 2;
  file.variants = file.variants.slice(2);
  delete file.variants[0].basedOn;
  return file;
}

const FILES = [
  ['by conductances', goodFile],
  ['by test points', testedFile],
] as const;
const strange = fc.oneof(
  fc.double(),
  fc.integer({ min: -3, max: 200 }),
  fc.string({ maxLength: 8 }),
  fc.jsonValue({ maxDepth: 2 }),
  fc.constantFrom(
    '',
    '5 psi',
    'AN-8',
    '1,234.5',
    '40 % mass',
    'NaN',
    'off',
    'pull',
    'hot soak',
    0,
    -0,
    Number.MAX_VALUE,
  ),
  fc.constantFrom(null, true, [], {}, [0, 0], [3000, 1000], [[]], { repeat: 1 }, { repeat: 2, phases: [] }),
  fc.constantFrom({ __proto__: null, constructor: 1 }, JSON.parse('{"__proto__": 1}'), { 'core.airDrop': null }),
);
const mutationOf = (file: unknown) => {
  const places = placesOf(file).filter((place) => place.length > 0);
  return fc.record({ place: fc.constantFrom(...places), value: strange, isTakenOut: fc.boolean() });
};

it.each(FILES)('any mutation of a good file %s ends in a scenario or an error with a place', (_, goodFile) => {
  const ends = { scenario: 0, error: 0 };
  const mutations = fc.array(mutationOf(goodFile()), { minLength: 1, maxLength: 4 });
  fc.assert(
    fc.property(mutations, (list) => {
      const file = goodFile();
      for (const { place, value, isTakenOut } of list) {
        const holder = place.slice(0, -1).reduce((inner, step) => inner?.[step], file);
        if (typeof holder !== 'object' || holder === null) continue;
        if (isTakenOut) delete holder[place[place.length - 1]];
        // A copy: later mutations must not reach into the values of other runs.
        else holder[place[place.length - 1]] = structuredClone(value);
      }
      ends[answerTo(JSON.stringify(file))]++;
    }),
    { numRuns: 2000 },
  );
  expect(Math.min(ends.scenario, ends.error)).toBeGreaterThan(50);
});

it.each(FILES)('every fix that is offered in a file %s mends its own issue', (_, goodFile) => {
  let fixes = 0;
  fc.assert(
    fc.property(mutationOf(goodFile()), ({ place, value }) => {
      const file = withValue(goodFile(), place, structuredClone(value));
      for (const issue of parseScenario(JSON.stringify(file)).issues) {
        if (issue.fix === undefined) continue;
        fixes++;
        const mended = withValue(JSON.parse(JSON.stringify(file)), stepsOf(issue.fix.path), issue.fix.value);
        expect(mended, issue.message).toBeDefined();
        const left = parseScenario(JSON.stringify(mended)).issues.map(({ path, message }) => `${path}: ${message}`);
        expect(left).not.toContain(`${issue.path}: ${issue.message}`);
      }
    }),
    { numRuns: 1000 },
  );
  expect(fixes).toBeGreaterThan(50);
});
