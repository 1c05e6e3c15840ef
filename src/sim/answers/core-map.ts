import { OutOfRangeError } from '../errors.ts';
import type { CoreGeometryConfig } from '../scenario/config/exchangers.ts';
import type { Config } from '../scenario/config.ts';
import { changedGeometry, withCore } from './core-designer.ts';
import { summarisePulls } from './pull-summary.ts';
import { jobToPull, type RunJob, type Study } from './study.ts';

/** Measures to go through; every one with every other. Pitch and depth in m, width times the core's own. */
export interface CoreMapLists {
  readonly finPitches: readonly number[];
  readonly depths: readonly number[];
  readonly widths: readonly number[];
}

/** Where a core stands among those of its depth and width, against the fins with which the engine gets most air. */
type CoreVerdict = 'too open to cool' | 'good' | 'too dense to breathe';

/** One core of the map and the first pull with it. SI. */
export interface CoreMapPoint {
  readonly finPitch: number;
  readonly depth: number;
  readonly width: number;
  /** K, Pa, W, kg/s; all but the peak at lift */
  readonly peak: number;
  readonly airDrop: number;
  readonly drivePower: number;
  readonly airFlow: number;
  readonly verdict: CoreVerdict;
}

const CORE_GOALS = ['lowest charge', 'most air mass', 'least drive power'] as const;
type CoreGoal = (typeof CORE_GOALS)[number];

const CORE_MEASURES = ['finPitch', 'depth', 'width'] as const;
type CoreMeasure = (typeof CORE_MEASURES)[number];

interface CoreOptimum {
  readonly goal: CoreGoal;
  /** place in `points` */
  readonly point: number;
  /** measures of which the optimum has the smallest or the largest of the map, so that it may lie beyond */
  readonly atEdgeOf: readonly CoreMeasure[];
}

export interface CoreMap {
  /** depth by depth, width by width, from open to dense fins; cores that cannot be, or that end no pull, are left out */
  readonly points: readonly CoreMapPoint[];
  readonly optima: readonly CoreOptimum[];
}

/** Own choice: a charge this much above that of the core with most air counts as not cooled. K */
const NOT_COOLED = 2;
/** Own choice: so much less air than the most of a row, or so much more drive power than the least, is too dense. */
const LOST_AIR = 0.005;
const LOST_POWER = 0.01;

/** Fins per inch that a shop can have, from open to dense, and the depths and widths round a core. */
const FINS_PER_INCH = [4, 6, 8, 10, 12, 14, 16, 18, 20, 24, 28, 32];
const DEPTHS = [0.5, 0.75, 1, 1.25];
const WIDTHS = [0.8, 1, 1.25];

/** Lists round a core: fins from 4 to 32 an inch, depth from a half to a quarter more, width a fifth less to a quarter more. */
export function coreMapLists({ shape }: CoreGeometryConfig): CoreMapLists {
  return {
    finPitches: FINS_PER_INCH.map((count) => 0.0254 / count).filter((pitch) => pitch > 2 * shape.finThickness),
    depths: DEPTHS.map((times) => times * shape.depth),
    widths: WIDTHS,
  };
}

/**
 * Cores of other fin density, depth and width in the same car: what its first pull comes to with each. Absent where the
 * core is given by test points. What is typed over the geometry scales every core of the map alike.
 */
export function* studyCoreMap(config: Config, lists?: CoreMapLists): Study<CoreMap | undefined> {
  const { geometry } = config.core;
  if (geometry === undefined) return undefined;
  const { finPitches, depths, widths } = lists ?? coreMapLists(geometry);
  const openFirst = finPitches.toSorted((a, b) => b - a);
  const wanted = depths.flatMap((depth) =>
    widths.flatMap((width) => openFirst.map((finPitch) => ({ finPitch, depth, width }))),
  );
  const cores = wanted.flatMap((core) => {
    const job = jobOf(config, geometry, core);
    return job === undefined ? [] : [{ core, job }];
  });
  const runs = yield cores.map(({ job }) => job);
  const found = cores.flatMap(({ core }, k) => {
    const pull = summarisePulls(runs[k], config.limit.chargeTemperature).at(0);
    if (pull === undefined) return [];
    const { coreAirDrop, drivePower, airFlow } = pull.atEnd;
    return [{ ...core, peak: pull.peak, airDrop: coreAirDrop, drivePower, airFlow }];
  });
  const points = found.map((point) => ({ ...point, verdict: verdictOf(point, found) }));
  return { points, optima: points.length === 0 ? [] : CORE_GOALS.map((goal) => optimumFor(goal, points)) };
}

type Found = Omit<CoreMapPoint, 'verdict'>;

/** A run to the end of the first pull; absent where the laws have no answer for such a core. */
function jobOf(
  config: Config,
  geometry: CoreGeometryConfig,
  { finPitch, depth, width }: Pick<Found, 'finPitch' | 'depth' | 'width'>,
): RunJob | undefined {
  const changed = changedGeometry(geometry, { finPitch, width, depth: depth / geometry.shape.depth });
  try {
    const car = withCore(config, changed);
    // Layers that would run backwards: a file with such a core is refused.
    if (car.core.layout.sheets.some(({ flow }) => flow <= 0)) return undefined;
    return jobToPull(car, 1);
  } catch (error) {
    if (error instanceof OutOfRangeError) return undefined;
    throw error;
  }
}

const sameRow = (a: Found, b: Found): boolean => a.depth === b.depth && a.width === b.width;

function verdictOf(point: Found, all: readonly Found[]): CoreVerdict {
  const row = all.filter((other) => sameRow(point, other));
  const fullest = row.reduce((best, other) => (other.airFlow > best.airFlow ? other : best));
  if (point.finPitch > fullest.finPitch) return point.peak - fullest.peak >= NOT_COOLED ? 'too open to cool' : 'good';
  const leastPower = Math.min(...row.map(({ drivePower }) => drivePower));
  const isLost = point.airFlow <= (1 - LOST_AIR) * fullest.airFlow || point.drivePower >= (1 + LOST_POWER) * leastPower;
  return isLost && point !== fullest ? 'too dense to breathe' : 'good';
}

const WORTH: Readonly<Record<CoreGoal, (point: Found) => number>> = {
  'lowest charge': ({ peak }) => -peak,
  'most air mass': ({ airFlow }) => airFlow,
  'least drive power': ({ drivePower }) => -drivePower,
};

function optimumFor(goal: CoreGoal, points: readonly CoreMapPoint[]): CoreOptimum {
  const worth = points.map(WORTH[goal]);
  const point = worth.indexOf(Math.max(...worth));
  const atEdgeOf = CORE_MEASURES.filter((measure) => {
    const all = points.map((each) => each[measure]);
    const [least, most] = [Math.min(...all), Math.max(...all)];
    return least < most && (points[point][measure] === least || points[point][measure] === most);
  });
  return { goal, point, atEdgeOf };
}
