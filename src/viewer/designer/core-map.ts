import { type CoreMap, type CoreMapPoint, listed } from '../../sim/index.ts';
import { type Colour, colourScale } from '../colour-scale.ts';
import { capitalised, fixed, length, scaleOf, temperature } from '../format.ts';
import type { Car } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';
import type { Changes } from '../state/session.ts';
import { finsPerInch } from './shown.ts';

/** What the cells of a map may show. */
export const MAP_SHOWS = ['charge peak', 'core pressure drop', 'drive power', 'air mass'] as const;
export type MapShow = (typeof MAP_SHOWS)[number];

const READ: Readonly<Record<MapShow, (point: CoreMapPoint) => number>> = {
  'charge peak': ({ peak }) => peak,
  'core pressure drop': ({ airDrop }) => airDrop,
  'drive power': ({ drivePower }) => drivePower,
  'air mass': ({ airFlow }) => airFlow,
};

/** Written in a cell: the verdict of the library in one word. */
const WORDS: Readonly<Record<CoreMapPoint['verdict'], string>> = {
  'too open to cool': 'open',
  good: '',
  'too dense to breathe': 'dense',
};

/** One cell of the map as it is drawn. */
export interface MapCell {
  readonly point: CoreMapPoint;
  /** its number without the unit */
  readonly text: string;
  /** open, dense, or nothing */
  readonly word: string;
  /** what a screen reader says of it */
  readonly said: string;
  /** undefined where the colour scale ends */
  readonly colour: Colour | undefined;
  /** the core of the car in hand */
  readonly isOwn: boolean;
  /** goals for which it is the best of the map */
  readonly bestFor: readonly string[];
}

/** Fins of one density, a cell for each depth; undefined where such a core cannot be. */
interface MapRow {
  readonly finPitch: number;
  readonly cells: readonly (MapCell | undefined)[];
}

export interface MapTable {
  readonly depths: readonly number[];
  readonly rows: readonly MapRow[];
  readonly unit: string;
  readonly depthUnit: string;
  /** where the colours begin and end, with the unit */
  readonly ends: readonly [string, string];
}

/** Measures of the core in hand. m */
export interface OwnCore {
  readonly finPitch: number;
  readonly depth: number;
}

/** Two measures that differ by less are one, as a share: what is typed is rounded. */
const SAME_WITHIN = 1e-5;
const isSame = (a: number, b: number): boolean => Math.abs(a / b - 1) < SAME_WITHIN;

/** A number of a map in the reader's units, with the digits that tell one cell from the next. */
function shownIn(show: MapShow, units: UnitChoice): { readonly text: (si: number) => string; readonly unit: string } {
  if (show === 'charge peak') return { text: (si) => temperature(si, units).value, unit: temperature(0, units).unit };
  if (show === 'air mass') return { text: (si) => fixed(si, 4), unit: 'kg/s' };
  const { fromSi, unit, digits } = scaleOf(show === 'core pressure drop' ? 'kPa' : 'kW', units);
  return { text: (si) => fixed(fromSi(si), digits + 1), unit };
}

/**
 * The cores of one width as a table: fin densities down, depths across. Temperatures have the colours of charge air on the page;
 * the colours hold for all widths.
 *
 * @param width - times the width of this car's core
 */
export function mapTable(
  { points, optima }: CoreMap,
  show: MapShow,
  own: OwnCore,
  units: UnitChoice,
  width = 1,
): MapTable {
  const read = READ[show];
  const { text, unit } = shownIn(show, units);
  const ruler = colourScale('air', []);
  const values = points.map(read);
  const [low, high] = show === 'charge peak' ? [ruler.low, ruler.high] : [Math.min(...values), Math.max(...values)];
  const span = ruler.high - ruler.low;
  const colourOf = (value: number) =>
    show === 'charge peak'
      ? ruler.colourAt(value)
      : ruler.colourAt(Math.min(ruler.high, ruler.low + (span * (value - low)) / (high - low || 1)));
  const depths = [...new Set(points.map(({ depth }) => depth))].toSorted((a, b) => a - b);
  const pitches = [...new Set(points.map(({ finPitch }) => finPitch))].toSorted((a, b) => b - a);
  const cellOf = (finPitch: number, depth: number): MapCell | undefined => {
    const place = points.findIndex(
      (each) => each.finPitch === finPitch && each.depth === depth && each.width === width,
    );
    if (place < 0) return undefined;
    const point = points[place];
    const isOwn = width === 1 && isSame(point.finPitch, own.finPitch) && isSame(point.depth, own.depth);
    const bestFor = optima.filter((optimum) => optimum.point === place).map(({ goal }) => goal);
    const value = read(point);
    const said = [
      `${finsPerInch(finPitch)} fins per inch, ${length(depth, units)} deep${wide(width)}: ${show} ${text(value)} ${unit}`,
      ...(point.verdict === 'good' ? [] : [point.verdict]),
      ...bestFor.map((goal) => `best for ${goal}`),
      ...(isOwn ? ['this car'] : []),
    ].join(', ');
    return { point, text: text(value), word: WORDS[point.verdict], said, colour: colourOf(value), isOwn, bestFor };
  };
  return {
    depths,
    rows: pitches.map((finPitch) => ({ finPitch, cells: depths.map((depth) => cellOf(finPitch, depth)) })),
    unit,
    depthUnit: scaleOf('mm', units).unit,
    ends: [`${text(low)} ${unit}`, `${text(high)} ${unit}`],
  };
}

const MEASURES = { finPitch: 'fin density', depth: 'depth', width: 'width' } as const;

/** One sentence for each goal: the best core of the map, and whether a better one may lie beyond it. */
export function optimumSentences({ points, optima }: CoreMap, units: UnitChoice): string[] {
  return optima.map(({ goal, point, atEdgeOf }) => {
    const { finPitch, depth, width } = points[point];
    const edge = listed(atEdgeOf.map((measure) => MEASURES[measure]));
    const beyond = edge === '' ? '' : `; at the edge of the map in ${edge}, so the best may lie beyond`;
    return `${capitalised(goal)}: ${finsPerInch(finPitch)} fins per inch, ${length(depth, units)} deep${wide(width)}${beyond}.`;
  });
}

/** ", ×1.25 wide" of a core that is not as wide as this car's; else ''. */
export const wide = (width: number): string => (width === 1 ? '' : `, ×${width} wide`);

/**
 * What makes a core of the map that of the car in hand.
 *
 * @param ownLength - width of the car's own core [m]
 */
export function pickChanges(
  { finPitch, depth, width }: Pick<CoreMapPoint, 'finPitch' | 'depth' | 'width'>,
  ownLength: number,
): Changes {
  return {
    'coreGeometry.finPitch': `${finsPerInch(finPitch)} fpi`,
    'coreGeometry.depth': Number((1000 * depth).toPrecision(9)),
    ...(width !== 1 && { 'coreGeometry.width': Number((1000 * width * ownLength).toPrecision(9)) }),
  };
}

/** Fins and depth of a car's core; undefined where it has no measures. */
export function ownCore({ config }: Car): OwnCore | undefined {
  const { geometry } = config.core;
  return geometry && { finPitch: geometry.shape.finPitch, depth: geometry.shape.depth };
}
