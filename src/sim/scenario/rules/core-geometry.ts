import { THINNEST_SHARE } from '../../correlations/louvred-fin.ts';
import { figure } from '../../units.ts';
import { finLayersOf } from '../core-geometry.ts';
import { capitalised, counted, isObject, type JsonObject, type Report } from '../issue.ts';
import { COOLANT_LOOP } from '../parameters/coolant-loop.ts';
import { CORE_GEOMETRY } from '../parameters/core-geometry.ts';
import { reportMissing } from '../read-value.ts';
import type { GeometryValues, Values } from '../shape.ts';

const ROWS = CORE_GEOMETRY.coreGeometry;
const MEASURED = Object.keys(CORE_GEOMETRY.measured) as (keyof typeof CORE_GEOMETRY.measured)[];

/**
 * Height that tubes and fins may differ from the typed one, as a share, own judgement: side plates, a ruler, solder.
 */
const HEIGHT_WITHIN = 0.05;

/** Keys that only one kind of fins or tubes has. */
export const KEYS_BY_KIND = [
  ['fins', 'louvred', ['louvrePitch', 'louvreLength', 'louvreAngle'], true],
  ['fins', 'offset strip', ['stripLength'], true],
  ['tubes', 'multi-port', ['ports'], true],
  ['tubes', 'multi-port', ['webThickness'], false],
  [
    'tubes',
    'turbulated',
    ['turbulatorHeat', 'turbulatorFriction', 'turbulatorExponent', 'turbulatorAtReynolds'],
    false,
  ],
] as const;

/** Laws of test points that a geometry brings itself. */
const OWN_CURVES = [
  'airConductanceExponent',
  'coolantConductanceExponent',
  'coolantConductanceFloor',
  'airDropExponent',
] as const;

const PAIRS = [
  ['airConductance', 'airConductanceAtFlow'],
  ['coolantConductance', 'coolantConductanceAtFlow'],
  ['airDrop', 'airDropAtFlow'],
] as const;

type Refuse = (path: string, message: string, found: string, expected: string) => void;

/** Whether a key of a group stands in the file. */
const isTyped = (document: JsonObject, group: 'core' | 'coreGeometry', key: string): boolean => {
  const typed = document[group];
  return isObject(typed) && Object.hasOwn(typed, key);
};

/** A core by its measures: each part has room, and what is typed beside it has its sense. */
export function checkCoreGeometry(values: Values, document: JsonObject, report: Report): void {
  const refuse: Refuse = (path, message, found, expected) =>
    report({ severity: 'error', path, message, found, expected });
  const { coreGeometry } = values;
  checkMeasuredHeat(values, document, report, refuse);
  if (coreGeometry === undefined) return;
  checkKinds(coreGeometry, document, report, refuse);
  checkFins(coreGeometry, refuse);
  checkTubes(coreGeometry, values.core.passes, refuse);
  checkStack(coreGeometry, refuse);
  checkSheets(coreGeometry, values.core.passes, refuse);
  for (const key of OWN_CURVES) {
    if (!isTyped(document, 'core', key)) continue;
    const { label } = COOLANT_LOOP.core[key];
    const message = `${capitalised(label)} says nothing beside coreGeometry, which brings its own curve. Leave it out, or leave coreGeometry out.`;
    refuse(`core.${key}`, message, 'both', `no ${key}`);
  }
  for (const [value, flow] of PAIRS) {
    const [hasValue, hasFlow] = [value, flow].map((key) => isTyped(document, 'core', key));
    if (hasValue === hasFlow) continue;
    const missing = hasValue ? flow : value;
    reportMissing(COOLANT_LOOP.core[missing], `core.${missing}`, report);
  }
}

function checkKinds(geometry: GeometryValues, document: JsonObject, report: Report, refuse: Refuse): void {
  for (const [part, kind, keys, areNeeded] of KEYS_BY_KIND) {
    const own: string = geometry[part];
    if (own === '') continue;
    for (const key of keys) {
      const isThere = isTyped(document, 'coreGeometry', key);
      if (own === kind && areNeeded && !isThere) reportMissing(ROWS[key], `coreGeometry.${key}`, report);
      if (own === kind || !isThere) continue;
      const message = `${capitalised(ROWS[key].label)} says nothing about ${own} ${part}. Leave it out, or set ${part} to "${kind}".`;
      refuse(`coreGeometry.${key}`, message, `${part} "${own}"`, `${part} "${kind}"`);
    }
  }
}

/** Refuses a measure that has to stay below another. Faulty values, NaN, are left alone. */
function requireBelow(
  refuse: Refuse,
  geometry: GeometryValues,
  key: keyof GeometryValues,
  limit: number,
  why: string,
): void {
  const value = geometry[key];
  if (typeof value !== 'number' || !(value >= limit)) return;
  const message = `${capitalised(ROWS[key].label)} is ${figure(value)} mm; expected below ${figure(limit)} mm: ${why}.`;
  refuse(`coreGeometry.${key}`, message, `${figure(value)} mm`, `below ${figure(limit)} mm`);
}

function checkFins(geometry: GeometryValues, refuse: Refuse): void {
  const { fins, finPitch, finHeight, finThickness, depth } = geometry;
  requireBelow(
    refuse,
    geometry,
    'finThickness',
    finPitch,
    'the air needs room between two fins; is the pitch in fins per inch?',
  );
  requireBelow(refuse, geometry, 'finThickness', finHeight / 2, 'a fin is higher than its sheet is thick');
  if (fins === 'louvred') {
    requireBelow(refuse, geometry, 'louvreLength', finHeight, 'a louvre is cut inside the height of the fin');
    requireBelow(refuse, geometry, 'louvrePitch', depth, 'louvres stand one behind the other in the depth of the core');
    if (finThickness <= THINNEST_SHARE * finPitch) {
      const least = figure(THINNEST_SHARE * finPitch);
      const message = `Fin thickness is ${figure(finThickness)} mm; expected above ${least} mm at this pitch: thinner louvred fins have no published friction.`;
      refuse('coreGeometry.finThickness', message, `${figure(finThickness)} mm`, `above ${least} mm`);
    }
  }
  if (fins === 'offset strip')
    requireBelow(
      refuse,
      geometry,
      'stripLength',
      depth * (1 + Number.EPSILON),
      'strips stand one behind the other in the depth of the core',
    );
}

function checkTubes(geometry: GeometryValues, passes: number, refuse: Refuse): void {
  const { tubes, tubeHeight, tubeWall, depth, rows, ports, webThickness = tubeWall } = geometry;
  requireBelow(refuse, geometry, 'tubeWall', tubeHeight / 2, 'the tube needs room for coolant between its two walls');
  if (rows % passes > 0) {
    const message = `${counted(rows, 'tube')} along the air cannot be shared by ${passes} passes of the coolant: each pass takes as many rows. Set rows to a multiple of ${passes}, or core.passes to 1.`;
    refuse('coreGeometry.rows', message, String(rows), `a multiple of ${passes}`);
  }
  const inside = depth / rows - 2 * tubeWall;
  if (inside <= 0) {
    const message = `There is no room for ${counted(rows, 'tube')} along the air in a core ${figure(depth)} mm deep with walls of ${figure(tubeWall)} mm. Count only tubes along the air; those across the stack are coolantLayers.`;
    refuse('coreGeometry.rows', message, String(rows), 'fewer tubes, or thinner walls');
  } else if (tubes === 'multi-port' && ports !== undefined && inside <= (ports - 1) * webThickness) {
    const message = `${ports} ports have no room in a tube ${figure(inside)} mm wide inside, with webs of ${figure(webThickness)} mm between them. Are the ports of all rows counted?`;
    refuse('coreGeometry.ports', message, String(ports), `fewer than ${Math.ceil(inside / webThickness) + 1}`);
  }
}

/** Tubes and fin layers against the height: a ruler finds a core a plate or two higher, no more. */
function checkStack(geometry: GeometryValues, refuse: Refuse): void {
  const { height, coolantLayers, tubeHeight, finHeight } = geometry;
  const finLayers = finLayersOf(geometry);
  const stack = coolantLayers * tubeHeight + finLayers * finHeight;
  if (!(Math.abs(stack / height - 1) > HEIGHT_WITHIN)) return;
  const parts = `${counted(coolantLayers, 'tube')} of ${figure(tubeHeight)} mm and ${counted(finLayers, 'fin layer')} of ${figure(finHeight)} mm`;
  const message = `Core height is ${figure(height)} mm, but ${parts} are ${figure(stack)} mm. Fin layers lie between the tubes, one fewer to one more than those: count the coolant layers again, or measure tubes and fins apart.`;
  refuse('coreGeometry.height', message, `${figure(height)} mm`, `within 5 % of ${figure(stack)} mm`);
}

function checkSheets({ sheets, coolantLayers }: GeometryValues, passes: number, refuse: Refuse): void {
  if (sheets > coolantLayers) {
    const message = `${sheets} groups are too many for ${counted(coolantLayers, 'coolant layer')}.`;
    refuse('coreGeometry.sheets', message, String(sheets), `1 to ${coolantLayers}`);
  } else if (sheets > 1 && passes > 1) {
    const message = `The split of the coolant over the layers is worked out for one pass; the headers of ${passes} passes are not known. Set sheets to 1, or core.passes to 1.`;
    refuse('coreGeometry.sheets', message, String(sheets), '1');
  }
}

function checkMeasuredHeat(values: Values, document: JsonObject, report: Report, refuse: Refuse): void {
  const there = MEASURED.filter((key) => isTyped(document, 'core', key));
  if (there.length === 0) return;
  if (values.coreGeometry === undefined) {
    const message = `${capitalised(CORE_GEOMETRY.measured[there[0]].label)} calibrates a core by its measures, and the file has no coreGeometry. Give airConductance at its flow instead, or add coreGeometry.`;
    refuse(`core.${there[0]}`, message, 'no coreGeometry', 'coreGeometry');
    return;
  }
  if (values.core.passes === 2) {
    const message =
      'A measured heat is worked out for coolant that crosses the air once, and this core has two passes. Type airConductance at its flow instead, or set core.passes to 1.';
    refuse('core.measuredHeat', message, '2 passes', '1 pass, or airConductance');
    return;
  }
  for (const key of MEASURED)
    if (!there.includes(key)) reportMissing(CORE_GEOMETRY.measured[key], `core.${key}`, report);
  if (isTyped(document, 'core', 'airConductance')) {
    const message = 'The air side is calibrated twice: by measuredHeat and by airConductance. Keep one.';
    refuse('core.measuredHeat', message, 'both', 'measuredHeat or airConductance');
  }
  const { measuredAirInlet, measuredCoolantInlet } = values.core;
  if (measuredAirInlet === undefined || measuredCoolantInlet === undefined) return;
  if (!(measuredAirInlet <= measuredCoolantInlet)) return;
  const message = `The air of the measured heat enters at ${figure(measuredAirInlet)} degC, not above its coolant at ${figure(measuredCoolantInlet)} degC: no heat would pass. Are the two exchanged?`;
  refuse(
    'core.measuredAirInlet',
    message,
    `${figure(measuredAirInlet)} degC`,
    `above ${figure(measuredCoolantInlet)} degC`,
  );
}
