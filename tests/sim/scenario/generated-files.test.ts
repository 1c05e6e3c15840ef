import { readFileSync, writeFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { describeParameters, scenarioGuide } from '../../../src/sim/scenario/guide.ts';
import { isError, type JsonObject } from '../../../src/sim/scenario/issue.ts';
import { parameterGroups } from '../../../src/sim/scenario/parameter-groups.ts';
import { readDocument } from '../../../src/sim/scenario/read-document.ts';
import { scenarioSchema } from '../../../src/sim/scenario/schema.ts';
import { isNumberRow, isRequired, isWordRow } from '../../../src/sim/scenario/table.ts';
import { ESTATE } from './estate.ts';

const GUIDE = new URL('../../../scenarios/README.md', import.meta.url);
const SCHEMA = new URL('../../../scenarios/scenario.schema.json', import.meta.url);

// UPDATE=1 npx vitest run --config tests/vitest.config.ts tests/sim/scenario/generated-files.test.ts
beforeAll(() => {
  if (process.env.UPDATE === undefined) return;
  writeFileSync(GUIDE, scenarioGuide());
  writeFileSync(SCHEMA, `${JSON.stringify(scenarioSchema(), undefined, 2)}\n`);
});

describe('files written from the parameter table', () => {
  it('the guide to the keys is up to date (UPDATE=1 writes it)', () => {
    expect(readFileSync(GUIDE, 'utf8')).toBe(scenarioGuide());
  });

  it('the schema is up to date (UPDATE=1 writes it, npm run format lays it out)', () => {
    expect(JSON.parse(readFileSync(SCHEMA, 'utf8'))).toEqual(JSON.parse(JSON.stringify(scenarioSchema())));
  });

  it('help and guide name every key', () => {
    const keys = parameterGroups().flatMap(({ rows }) => rows.map(({ key }) => key));
    expect(keys.length).toBeGreaterThan(100);
    for (const key of keys) {
      expect(describeParameters()).toContain(`  ${key} `);
      expect(scenarioGuide()).toContain(`| \`${key}\` `);
    }
  });
});

describe('the parameter table', () => {
  const rows = parameterGroups().flatMap(({ title, rows }) =>
    rows.map(({ key, row }) => ({ name: `${title}: ${key}`, row })),
  );

  it.each(rows)('$name holds together', ({ row }) => {
    // A default has a source, and only a default has one.
    expect(row.source !== undefined).toBe(row.default !== undefined);
    expect(isRequired(row)).toBe(row.default === undefined && row.absent === undefined);
    if (isWordRow(row) && row.default !== undefined) expect(row.choices).toContain(row.default);
    if (!isNumberRow(row)) return;
    const [low, high] = row.usual ?? [row.min, row.max];
    expect(row.min).toBeLessThan(row.max);
    expect(low).toBeGreaterThanOrEqual(row.min);
    expect(high).toBeLessThanOrEqual(row.max);
    if (row.default === undefined) return;
    expect(row.default).toBeGreaterThanOrEqual(low);
    expect(row.default).toBeLessThanOrEqual(high);
  });
});

describe('schema and parser', () => {
  const validate = new Ajv2020().compile(scenarioSchema());
  const parserRefuses = (document: JsonObject): boolean => {
    let isRefused = false;
    readDocument(document, (issue) => {
      isRefused ||= isError(issue);
    });
    return isRefused;
  };

  it('both take the shipped file', () => {
    const file = JSON.parse(ESTATE);
    expect(validate(file), JSON.stringify(validate.errors)).toBe(true);
    expect(parserRefuses(file)).toBe(false);
  });

  /** Places of all values, lists and objects in a document. */
  function placesOf(value: unknown, place: readonly string[] = []): string[][] {
    const inner = typeof value === 'object' && value !== null ? Object.entries(value) : [];
    return [[...place], ...inner.flatMap(([key, each]) => placesOf(each, [...place, key]))];
  }

  type Mutation = (holder: Record<string, unknown>, key: string) => void;
  const replace =
    (value: unknown): Mutation =>
    (holder, key) => {
      holder[key] = value;
    };
  const faults: readonly Mutation[] = [
    (holder, key) => {
      if (!Array.isArray(holder)) delete holder[key];
    },
    (holder, key) => {
      if (typeof holder[key] === 'number') holder[key] = -1e-9;
    },
    (holder, key) => {
      if (typeof holder[key] === 'number') holder[key] = (holder[key] as number) * 30 + 0.5;
    },
    (holder) => {
      if (!Array.isArray(holder)) holder.madeUp = 1;
    },
    (holder, key) => {
      if (typeof holder[key] === 'number') holder[key] = `${holder[key]}`;
    },
    ...[null, true, 0, -60, 7, 1e9, 'words', '', [], {}, [1, 2], [1, 2, 3], [1, 'a'], { length: 1 }].map(replace),
  ];

  /** What is changed in the shipped file before it is damaged. */
  const tested = ({ core, exchanger }: ReturnType<typeof JSON.parse>) => {
    core.test = { airFlow: 0.3, coolantFlow: 12, effectiveness: 0.7 };
    exchanger.test = { airFlow: 0.6, coolantFlow: 12, airIn: 20, airOut: 32, coolantIn: 44 };
    for (const key of ['airConductance', 'coolantConductanceAtFlow']) {
      delete core[key];
      delete exchanger[key];
    }
  };

  it.each([
    ['by conductances', () => {}],
    ['by test points', tested],
  ])('refuse the same files %s, for kinds, ranges, missing and unknown keys', (_, change) => {
    const counts = { taken: 0, refused: 0 };
    fc.assert(
      fc.property(fc.nat(), fc.integer({ min: 0, max: faults.length - 1 }), (which, fault) => {
        const file = JSON.parse(ESTATE);
        // Texts with a unit are the parser's alone to judge.
        file.engine.referenceTemperature = 56.85;
        change(file);
        const places = placesOf(file).filter((place) => place.length > 0);
        const place = places[which % places.length];
        const holder = place.slice(0, -1).reduce((inner, step) => inner[step], file);
        faults[fault](holder, place[place.length - 1]);
        const isTaken = validate(file);
        counts[isTaken ? 'taken' : 'refused']++;
        expect(parserRefuses(file), place.join('.')).toBe(!isTaken);
      }),
      { numRuns: 3000 },
    );
    expect(Math.min(counts.taken, counts.refused)).toBeGreaterThan(200);
  });
});
