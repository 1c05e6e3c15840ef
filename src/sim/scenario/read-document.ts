import { shapeFor } from './file-shape.ts';
import {
  alternatives,
  capitalised,
  isList,
  isObject,
  type JsonObject,
  type JsonValue,
  quoted,
  type Report,
} from './issue.ts';
import { nearestWord } from './nearest.ts';
import { notModelled } from './not-modelled.ts';
import { readLoop } from './read-loop.ts';
import { blankOf, readValue, reportMissing } from './read-value.ts';
import { GROUPS, type GroupShape, isShapeRequired, type Shape, type Values } from './shape.ts';
import { isNumberRow, isRequired } from './table.ts';

/**
 * Reads a whole file against the parameter table: every key known, in its place, of its kind and in its range.
 *
 * All issues go to `report`. Where something is wrong the values still have their shape, with NaN, '' or empty lists in
 * the place of what could not be read.
 */
export function readDocument(document: JsonObject, report: Report): Values {
  return read(shapeFor(document), document, '', report) as Values;
}

const joined = (path: string, key: string | number): string => (path === '' ? String(key) : `${path}.${key}`);

const silent: Report = () => {};

/** Said where ice is typed anywhere but in the reservoir. */
const NO_TANK = 'Ice needs a tank: give it as reservoir.iceMass, in the coolant of the tank, or take it out.';

function read(shape: Shape, typed: JsonValue | undefined, path: string, report: Report): unknown {
  switch (shape.kind) {
    case 'value': {
      const { row } = shape;
      if (typed !== undefined) return readValue(row, typed, path, report);
      if (!isRequired(row)) return row.default;
      reportMissing(row, path, report);
      return blankOf(row);
    }
    case 'constant':
      return readConstant(shape.value, typed, path, report);
    case 'group':
      return readGroup(shape, typed, path, report);
    case 'list': {
      if (typed === undefined && shape.absent !== undefined) return undefined;
      const items = shape.single && isObject(typed) ? [typed] : typed;
      if (isList(items) && items.length >= shape.least) {
        // One item without brackets has no index in the file.
        return items.map((item, index) => read(shape.item, item, items === typed ? joined(path, index) : path, report));
      }
      const expected = `a list of at least ${shape.least}`;
      const found = quoted(typed);
      const message = `${capitalised(shape.label)}: found ${found}; expected ${expected}.`;
      report({ severity: 'error', path, message, found, expected });
      return [];
    }
    case 'loop':
      return readLoop(typed, path, report);
    case 'either': {
      const isKeyed = isObject(typed) && Object.hasOwn(typed, shape.key);
      return read(isKeyed ? shape.keyed : shape.other, typed, path, report);
    }
    case 'changes': {
      if (isObject(typed) && Object.keys(typed).length > 0) return typed;
      const expected = 'paths of the file with their new values, such as { "pump.freeFlow": 60 }';
      const found = quoted(typed);
      report({
        severity: 'error',
        path,
        message: `${shape.owner} changes ${found}; expected ${expected}.`,
        found,
        expected,
      });
      return {};
    }
  }
}

function readConstant(value: string | number, typed: JsonValue | undefined, path: string, report: Report): unknown {
  if (typed === value) return value;
  const [found, expected] = [quoted(typed), quoted(value)];
  const message =
    typed === undefined
      ? `${capitalised(path)} is missing; expected ${expected}.`
      : `${capitalised(path)} is ${found}; expected ${expected}.`;
  const fix = { path, value, label: `Write ${expected}` };
  report({ severity: 'error', path, message, found, expected, fix });
  return value;
}

function readGroup(shape: GroupShape, typed: JsonValue | undefined, path: string, report: Report): unknown {
  if (typed === undefined && shape.isOptional) return undefined;
  const needed = Object.keys(shape.keys).filter((key) => isShapeRequired(shape.keys[key]));
  const isUsable = isObject(typed) || (typed === undefined && needed.length === 0);
  if (!isUsable) reportNoGroup(shape, typed, path, needed, report);
  const keys = isObject(typed) ? typed : {};
  // The one issue about the group stands for all its keys.
  const reportKey = isUsable ? report : silent;

  for (const [key, value] of Object.entries(keys)) {
    if (!Object.hasOwn(shape.keys, key)) reportUnknownKey(shape, key, value, joined(path, key), reportKey);
  }
  const values = Object.entries(shape.keys).map(([key, inner]) => {
    const value = Object.hasOwn(keys, key) ? keys[key] : undefined;
    return [key, read(inner, value, joined(path, key), reportKey)] as const;
  });
  for (const [key, inner] of Object.entries(shape.keys)) {
    const other = inner.kind === 'value' && isNumberRow(inner.row) ? inner.row.needs : undefined;
    if (other === undefined || !Object.hasOwn(keys, key) || keys[key] === 0 || Object.hasOwn(keys, other)) continue;
    const otherShape = shape.keys[other];
    if (otherShape.kind === 'value') reportMissing(otherShape.row, joined(path, other), reportKey);
  }
  return Object.fromEntries(values);
}

function reportNoGroup(
  shape: GroupShape,
  typed: JsonValue | undefined,
  path: string,
  needed: readonly string[],
  report: Report,
): void {
  const found = quoted(typed);
  const expected = needed.length === 0 ? 'an object' : `an object with ${needed.join(', ')}`;
  const said = `${capitalised(shape.title)} is ${typed === undefined ? 'missing' : found}; expected ${expected}.`;
  const isLoop = path === 'coolant' || path === 'reservoir';
  const isSeveral = path === 'exchanger' && isList(typed);
  const message = isLoop
    ? `No coolant in the loop: nothing to carry the heat. ${said}`
    : isSeveral
      ? `${said} A second one is the group secondExchanger.`
      : said;
  report({ severity: 'error', path: path || 'file', message, found, expected });
}

function reportUnknownKey(shape: GroupShape, key: string, value: JsonValue, path: string, report: Report): void {
  const known = Object.keys(shape.keys);
  const near = nearestWord(key, known);
  const elsewhere = Object.entries(GROUPS).find(
    ([, group]) => group.title !== shape.title && Object.hasOwn(group.keys, key),
  );
  const hint =
    notModelled(key) ??
    (near && `Did you mean ${quoted(near)}?`) ??
    notModelled(key, value) ??
    (/^ice/i.test(key) ? NO_TANK : undefined) ??
    (elsewhere && `That key belongs in ${quoted(elsewhere[0])}.`) ??
    `The keys here are ${alternatives(known)}.`;
  const place = path === key ? 'a scenario file' : path.slice(0, -key.length - 1);
  const message = `${quoted(key)} is not a key of ${place}. ${hint}`;
  const expected = near ? quoted(near) : 'a known key';
  report({ severity: 'error', path: path || 'file', message, found: quoted(key), expected });
}
