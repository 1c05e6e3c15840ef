import { convert } from '../units.ts';
import { LOOP_PARTS } from './config/loop.ts';
import { shapeFor } from './file-shape.ts';
import { isObject, type JsonObject } from './issue.ts';
import { DOCUMENT, FORMAT, isShapeRequired, type Shape, VERSION } from './shape.ts';
import { isNumberRow, isWordRow, type NumberRow, type Parameter } from './table.ts';
import type { TestedPart } from './test-point.ts';

/**
 * The scenario format as JSON Schema, draft 2020-12, for editors: kinds, ranges of bare numbers, required and unknown
 * keys. Ranges of texts with a unit, and what keys mean together, only the parser can judge.
 */
export function scenarioSchema(): JsonObject {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: `${FORMAT}, version ${VERSION}`,
    description: 'Written from the parameter table; do not edit.',
    ...schemaOf(shapeFor(WIDEST)),
    allOf: [
      { anyOf: [{ required: ['coreGeometry'] }, { ...given('core'), required: ['core'] }] },
      given('exchanger'),
      given('secondExchanger'),
      { anyOf: [HAS_PROPYLENE, withEthylene()] },
    ],
  };
}

const HAS_PROPYLENE: JsonObject = {
  properties: { coolant: { properties: { glycol: { const: 'propylene' } }, required: ['glycol'] } },
  required: ['coolant'],
};

/** The range of a file that does not say propylene. */
function withEthylene(): JsonObject {
  const { properties } = schemaOf(DOCUMENT.keys.coolant);
  const glycolByVolume = isObject(properties) ? properties.glycolByVolume : {};
  return { properties: { coolant: { properties: { glycolByVolume } } }, required: ['coolant'] };
}

/** A document in which most may be left out and ranges are widest. */
const WIDEST: JsonObject = {
  coolant: { glycol: 'propylene' },
  coreGeometry: {},
  exchanger: { test: {} },
  secondExchanger: { test: {} },
};

/** A part with the keys that it needs, or with a test point and what it needs beside that. */
function given(part: TestedPart): JsonObject {
  const requiredIn = (document: JsonObject) => schemaOf(shapeFor(document).keys[part]).required as readonly string[];
  const byTest = ['test', ...requiredIn({ [part]: { test: {} } })];
  return { properties: { [part]: { anyOf: [{ required: requiredIn({}) }, { required: byTest }] } } };
}

function schemaOf(shape: Shape): JsonObject {
  switch (shape.kind) {
    case 'value':
      return valueSchema(shape.row);
    case 'constant':
      return { const: shape.value };
    case 'group': {
      const keys = Object.entries(shape.keys);
      const pairs = keys.flatMap(([key, inner]) =>
        inner.kind === 'value' && isNumberRow(inner.row) && inner.row.needs ? [[key, inner.row.needs] as const] : [],
      );
      return {
        type: 'object',
        properties: Object.fromEntries(keys.map(([key, inner]) => [key, schemaOf(inner)])),
        required: keys.filter(([, inner]) => isShapeRequired(inner)).map(([key]) => key),
        additionalProperties: false,
        // A drop of nothing, or none at all, needs no flow.
        ...(pairs.length > 0 && {
          allOf: pairs.map(([key, other]) => ({
            anyOf: [{ required: [other] }, { properties: { [key]: { const: 0 } } }],
          })),
        }),
      };
    }
    case 'list': {
      const item = schemaOf(shape.item);
      const list = { type: 'array', items: item, minItems: shape.least };
      return shape.single ? { anyOf: [list, item] } : list;
    }
    case 'either':
      // Only one of them has the key, and it requires it.
      return { anyOf: [schemaOf(shape.keyed), schemaOf(shape.other)] };
    case 'changes':
      return { type: 'object', minProperties: 1 };
    case 'loop': {
      const part: JsonObject = { enum: LOOP_PARTS };
      const way: JsonObject = { anyOf: [part, { type: 'array', items: part, minItems: 1 }] };
      const ways: JsonObject = { type: 'array', items: way, minItems: 2, maxItems: 2 };
      return { type: 'array', items: { anyOf: [part, ways] } };
    }
  }
}

function valueSchema(row: Parameter): JsonObject {
  const description = `${row.label}: ${row.meaning}`;
  const preset: JsonObject = row.default === undefined ? {} : { default: row.default };
  if (isWordRow(row)) return { description, enum: row.choices, ...preset };
  if (!isNumberRow(row)) return { description, type: 'string' };
  const number = numberSchema(row);
  const pair = { type: 'array', items: number, minItems: 2, maxItems: 2 };
  return { description: `${description} [${row.unit}]`, ...(row.ramp ? { anyOf: [number, pair] } : number), ...preset };
}

function numberSchema(row: NumberRow): JsonObject {
  const { min, max, misread } = row;
  const bare = { type: row.whole ? 'integer' : 'number', minimum: min, maximum: max };
  // A number, then perhaps its unit.
  const withUnit = { type: 'string', pattern: '^\\s*[-+]?[.,]?\\d' };
  if (misread === undefined) return { anyOf: [bare, withUnit] };
  const perFileUnit = convert(1, misread.unit, row.unit);
  const least = Math.max(min / perFileUnit, misread.above);
  return { anyOf: [bare, { type: 'number', minimum: least, maximum: max / perFileUnit }, withUnit] };
}
