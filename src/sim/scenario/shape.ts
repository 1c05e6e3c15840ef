import { LINE_PLACES, type LinePlace, type LoopItem } from './config/loop.ts';
import type { JsonObject } from './issue.ts';
import { AIR_PATH } from './parameters/air-path.ts';
import { COOLANT_LOOP } from './parameters/coolant-loop.ts';
import { CORE_GEOMETRY } from './parameters/core-geometry.ts';
import { SESSION } from './parameters/session.ts';
import { TEST_POINT } from './parameters/test-point.ts';
import { type Group, isRequired, type Parameter, type TextRow, type ValuesOf } from './table.ts';

export const FORMAT = 'soakbench-scenario';
export const VERSION = 2;

/** What may stand where in a scenario file: the parameter table hung on the file's tree. */
export type Shape =
  | { readonly kind: 'value'; readonly row: Parameter }
  | { readonly kind: 'constant'; readonly value: string | number }
  | GroupShape
  /** with `single`, one item may stand without its brackets; `absent` says what an absent list means */
  | {
      readonly kind: 'list';
      readonly label: string;
      readonly item: Shape;
      readonly least: number;
      readonly single?: true;
      readonly absent?: string;
    }
  /** `keyed` where an object has the key `key`, else `other` */
  | { readonly kind: 'either'; readonly key: string; readonly keyed: Shape; readonly other: Shape }
  /** paths of the file with their new values, at least one */
  | { readonly kind: 'changes'; readonly owner: 'A variant' | 'An upgrade' }
  /** parts in flow order, two ways side by side as a list of two */
  | { readonly kind: 'loop' };

export interface GroupShape {
  readonly kind: 'group';
  readonly title: string;
  readonly keys: Readonly<Record<string, Shape>>;
  /** may be left out as a whole, whatever its keys need */
  readonly isOptional?: true;
}

const group = (title: string, rows: Group, more: Readonly<Record<string, Shape>> = {}): GroupShape => ({
  kind: 'group',
  title,
  keys: { ...Object.fromEntries(Object.entries(rows).map(([key, row]) => [key, { kind: 'value', row }])), ...more },
});

const SEGMENT = group('segment of a line', COOLANT_LOOP.segment);
const VELOCITY_POINT = group('point of the air velocity', COOLANT_LOOP.velocityPoint);
const POINT = group('point of the pump curve', COOLANT_LOOP.point);
const CURVE: Shape = {
  kind: 'list',
  label: 'pump curve',
  item: POINT,
  least: 2,
  absent: 'shutOffPressure and freeFlow',
};
const SINK_POINT = group('point of the heat sink', COOLANT_LOOP.sinkPoint);
const TEST: Shape = { ...group('test point', TEST_POINT.test), isOptional: true };
const PHASE = group('phase', SESSION.phase);
const PHASES: Shape = { kind: 'list', label: 'phases', item: PHASE, least: 1 };
const TABLE_ROW = group('row of the charge table', SESSION.tableRow);
const VARIANT = group('variant', SESSION.variant, { changes: { kind: 'changes', owner: 'A variant' } });
const UPGRADE = group('upgrade', SESSION.upgrade, { changes: { kind: 'changes', owner: 'An upgrade' } });

/** Key of the line that leaves a place. */
export const lineAfter = (place: LinePlace): LineKey => `after${place[0].toUpperCase()}${place.slice(1)}` as LineKey;

const lines = Object.fromEntries(
  LINE_PLACES.map((place): [string, Shape] => [
    lineAfter(place),
    {
      kind: 'list',
      label: `segments of ${lineAfter(place)}`,
      item: SEGMENT,
      least: 0,
      single: true,
      absent: `needed where the loop has the part; [] = bolted to the next`,
    },
  ]),
);

/** Groups of the file whose keys are all values, lines and pump with their lists, in the order of the guide. */
export const GROUPS = {
  ambient: group('outside air', AIR_PATH.ambient),
  room: group('test room', SESSION.room),
  intake: group('intake', AIR_PATH.intake),
  engine: group('engine', AIR_PATH.engine),
  compressor: group('compressor', AIR_PATH.compressor),
  bypass: group('bypass and throttle', AIR_PATH.bypass),
  casing: group('compressor casing', AIR_PATH.casing),
  plenum: group('plenum', AIR_PATH.plenum),
  core: group('charge-air core', COOLANT_LOOP.core, {
    airVelocity: { kind: 'list', label: 'air velocity', item: VELOCITY_POINT, least: 2, absent: 'even air' },
    test: TEST,
  }),
  coreGeometry: { ...group('core by its measures', CORE_GEOMETRY.coreGeometry), isOptional: true },
  exchanger: { ...group('front exchanger', COOLANT_LOOP.exchanger, { test: TEST }), isOptional: true },
  secondExchanger: { ...group('second exchanger', COOLANT_LOOP.exchanger, { test: TEST }), isOptional: true },
  heatSink: {
    ...group('extra heat sink', {}, { curve: { kind: 'list', label: 'heat sink curve', item: SINK_POINT, least: 2 } }),
    isOptional: true,
  },
  coolant: group('coolant', COOLANT_LOOP.coolant),
  lines: group('coolant lines', COOLANT_LOOP.lines, lines),
  pump: group('pump', { ...COOLANT_LOOP.pump, ...COOLANT_LOOP.measuredFlow }, { curve: CURVE }),
  secondPump: { ...group('second pump', COOLANT_LOOP.pump, { curve: CURVE }), isOptional: true },
  reservoir: group('tank', COOLANT_LOOP.reservoir),
  sensor: group('charge sensor', SESSION.sensor),
  start: group('start of the run', SESSION.start),
  limit: group('limit', SESSION.limit),
  numerics: group('numerics', SESSION.numerics),
} as const;

const NAME: TextRow = { text: true, label: 'name of the scenario', meaning: 'as results name it' };
const NOTES: TextRow = { text: true, label: 'notes', absent: 'none', meaning: 'where the data come from' };
const SCHEMA: TextRow = { text: true, label: 'schema', absent: 'none', meaning: 'for editors: ./scenario.schema.json' };

/** The whole file. */
export const DOCUMENT: GroupShape = {
  kind: 'group',
  title: 'scenario',
  keys: {
    $schema: { kind: 'value', row: SCHEMA },
    format: { kind: 'constant', value: FORMAT },
    version: { kind: 'constant', value: VERSION },
    name: { kind: 'value', row: NAME },
    notes: { kind: 'value', row: NOTES },
    ...GROUPS,
    loop: { kind: 'loop' },
    chargeTable: {
      kind: 'list',
      label: 'charge table',
      item: TABLE_ROW,
      least: 1,
      absent: 'no table: spark and torque are not said',
    },
    cycle: {
      kind: 'list',
      label: 'cycle',
      least: 1,
      item: {
        kind: 'either',
        key: 'repeat',
        keyed: group('repetition', SESSION.repetition, { phases: PHASES }),
        other: PHASE,
      },
    },
    variants: { kind: 'list', label: 'variants', item: VARIANT, least: 0, absent: 'none' },
    upgrades: { kind: 'list', label: 'upgrades', item: UPGRADE, least: 0, absent: 'none' },
  },
};

/** Whether a key must stand in the file: its own value, or one inside its group, has no stand-in. */
export function isShapeRequired(shape: Shape): boolean {
  if (shape.kind === 'value') return isRequired(shape.row);
  if (shape.kind === 'list') return shape.absent === undefined;
  if (shape.kind === 'loop') return false;
  if (shape.kind !== 'group') return true;
  return !shape.isOptional && Object.values(shape.keys).some(isShapeRequired);
}

type Tables = typeof AIR_PATH & typeof COOLANT_LOOP & typeof SESSION;
/** Groups that stand in the file as they stand in the table. */
type PlainGroup = Exclude<
  keyof typeof GROUPS,
  'lines' | 'pump' | 'secondPump' | 'core' | 'coreGeometry' | 'exchanger' | 'secondExchanger' | 'heatSink'
>;
export type LineKey = `after${Capitalize<LinePlace>}`;

export type GeometryValues = ValuesOf<(typeof CORE_GEOMETRY)['coreGeometry']>;
type SegmentValues = ValuesOf<Tables['segment']>;
export type TestValues = ValuesOf<(typeof TEST_POINT)['test']>;
export type PointValues = ValuesOf<Tables['point']>;
export type PhaseValues = ValuesOf<Tables['phase']>;
export type RepetitionValues = ValuesOf<Tables['repetition']> & { readonly phases: readonly PhaseValues[] };
export type VariantValues = ValuesOf<Tables['variant']> & { readonly changes: JsonObject };
export type UpgradeValues = ValuesOf<Tables['upgrade']> & { readonly changes: JsonObject };

export type ExchangerValues = ValuesOf<Tables['exchanger']> & { readonly test: TestValues | undefined };
export type PumpValues = ValuesOf<Tables['pump']> & { readonly curve: readonly PointValues[] | undefined };

/** Everything a file says, read: numbers in file units, defaults in place, NaN where the file is at fault. */
export type Values = { readonly [Name in PlainGroup]: ValuesOf<Tables[Name]> } & {
  readonly name: string;
  readonly notes: string | undefined;
  readonly core: ValuesOf<Tables['core']> & {
    readonly airVelocity: readonly ValuesOf<Tables['velocityPoint']>[] | undefined;
    readonly test: TestValues | undefined;
  };
  readonly coreGeometry: GeometryValues | undefined;
  readonly exchanger: ExchangerValues | undefined;
  readonly secondExchanger: ExchangerValues | undefined;
  readonly heatSink: { readonly curve: readonly ValuesOf<Tables['sinkPoint']>[] } | undefined;
  /** undefined where the usual order holds */
  readonly loop: readonly LoopItem[] | undefined;
  readonly lines: ValuesOf<Tables['lines']> & { readonly [Key in LineKey]: readonly SegmentValues[] | undefined };
  readonly pump: PumpValues & ValuesOf<Tables['measuredFlow']>;
  readonly secondPump: PumpValues | undefined;
  readonly cycle: readonly (PhaseValues | RepetitionValues)[];
  readonly chargeTable: readonly ValuesOf<Tables['tableRow']>[] | undefined;
  readonly variants: readonly VariantValues[] | undefined;
  readonly upgrades: readonly UpgradeValues[] | undefined;
};
