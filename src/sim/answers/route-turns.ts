import type { Config } from '../scenario/config.ts';
import {
  figuresOf,
  ROUTE_PLACES,
  type RouteComparison,
  type RoutePlace,
  routeJob,
  shareBehindCore,
  studyBypassRoutes,
} from './bypass-routes.ts';
import { withCoreAirDrop, withCoreConductance, withIdlePower } from './car-changes.ts';
import type { RunJob, Study } from './study.ts';

/** One input of the car, and what it is multiplied with or set to, from point to point. */
interface TurnInput {
  readonly name: TurnName;
  readonly meaning: string;
  /** 'factor' multiplies what the car has; 'value' stands instead */
  readonly kind: 'factor' | 'value';
  readonly points: readonly number[];
  readonly change: (config: Config, point: number) => Config;
}

const TURN_NAMES = [
  'idle power',
  'bypass drop',
  'core conductance',
  'core pressure drop',
  'plenum heat',
  'leak past the core',
] as const;
type TurnName = (typeof TURN_NAMES)[number];

const scalePlenum = (config: Config, factor: number): Config => ({
  ...config,
  plenum: {
    ...config.plenum,
    toChargeAir: factor * config.plenum.toChargeAir,
    toEngine: factor * config.plenum.toEngine,
  },
});

const INPUTS: readonly TurnInput[] = [
  {
    name: 'idle power',
    meaning: 'power that churns the air with the bypass open',
    kind: 'factor',
    points: [0.25, 0.5, 1, 2, 4],
    change: withIdlePower,
  },
  {
    name: 'bypass drop',
    meaning: 'sets how much air goes round',
    kind: 'factor',
    points: [0.1, 0.3, 1, 3, 10],
    change: (config, factor) => ({ ...config, bypass: { ...config.bypass, drop: factor * config.bypass.drop } }),
  },
  {
    name: 'core conductance',
    meaning: 'both sides: a better or a poorer core',
    kind: 'factor',
    points: [0.25, 0.5, 1, 2, 4],
    change: (config, factor) => withCoreConductance(config, factor),
  },
  {
    name: 'core pressure drop',
    meaning: 'what the recirculated air has to overcome behind the core',
    kind: 'factor',
    points: [0, 0.25, 0.5, 1, 2],
    change: withCoreAirDrop,
  },
  {
    name: 'plenum heat',
    meaning: 'engine to plenum and plenum to charge: hot castings behind the core',
    kind: 'factor',
    points: [0, 0.5, 1, 2, 4],
    change: scalePlenum,
  },
  {
    name: 'leak past the core',
    meaning: 'share of the air that passes the core without touching it',
    kind: 'value',
    points: [0, 0.1, 0.2, 0.35, 0.5],
    change: (config, leakPast) => ({ ...config, core: { ...config.core, leakPast } }),
  },
];

interface TurnPoint {
  readonly value: number;
  /** with the route behind the core */
  readonly recirculation: number;
  readonly coreEffectiveness: number;
  /** behind the core less before it [K], negative where the route cools */
  readonly change: Readonly<Record<RoutePlace, number>>;
  /** factor on the plenum's heat above which the route cools the charge here; absent where it does not turn */
  readonly plenumTurn?: number;
}

/** How the change of the four places by the route moves with one input, the others as the car has them. */
export interface TurnLine {
  readonly name: TurnName;
  readonly meaning: string;
  readonly kind: TurnInput['kind'];
  /** absent points had no run to the end of the phase */
  readonly points: readonly TurnPoint[];
  /** values between two points at which the charge turns from cooler to warmer or back, by straight line */
  readonly turns: readonly number[];
}

/** Factors on the plenum's heat at which every point is asked: as it is, and three others; own choice. */
const PLENUM_FACTORS = [1, 0, 2, 4];

/**
 * Where the route behind the core turns from cooling the charge to warming it: input by input about the car as it is,
 * and for every point the plenum heat at which it turns there, since hot castings move it most.
 */
function* studyRouteTurns(config: Config): Study<readonly TurnLine[]> {
  const share = shareBehindCore(config);
  const factorsOf = ({ name }: TurnInput) => (name === 'plenum heat' ? [1] : PLENUM_FACTORS);
  const jobs = INPUTS.flatMap((input) =>
    input.points.flatMap((point) =>
      factorsOf(input).flatMap((factor): RunJob[] => {
        const changed = scalePlenum(input.change(config, point), factor);
        return [routeJob(changed, 0, 'part load'), routeJob(changed, share, 'part load')];
      }),
    ),
  );
  const runs = yield jobs;
  let next = 0;
  const pair = () => {
    const before = figuresOf(runs[next], config, 'before core');
    const after = figuresOf(runs[next + 1], config, 'after core');
    next += 2;
    return before && after && { before, after };
  };
  return INPUTS.map((input): TurnLine => {
    const points = input.points.flatMap((value): TurnPoint[] => {
      const pairs = factorsOf(input).map((factor) => ({ factor, found: pair() }));
      const asIs = pairs[0].found;
      if (asIs === undefined) return [];
      const { before, after } = asIs;
      const byFactor = pairs.flatMap(({ factor, found }) =>
        found ? [{ at: factor, charge: found.after.charge - found.before.charge }] : [],
      );
      const [plenumTurn] = turnsOf(byFactor.sort((a, b) => a.at - b.at));
      const change = Object.fromEntries(ROUTE_PLACES.map((place) => [place, after[place] - before[place]]));
      return [
        {
          value,
          recirculation: after.recirculation,
          coreEffectiveness: after.coreEffectiveness,
          change: change as TurnPoint['change'],
          ...(plenumTurn !== undefined && { plenumTurn }),
        },
      ];
    });
    const turns = turnsOf(points.map(({ value, change }) => ({ at: value, charge: change.charge })));
    return { name: input.name, meaning: input.meaning, kind: input.kind, points, turns };
  });
}

/** Everything about the routes of one car. */
export interface RouteStudy {
  /** absent where no part-load phase ran to its end */
  readonly comparison?: RouteComparison;
  readonly turns: readonly TurnLine[];
}

export function* studyRoutes(config: Config): Study<RouteStudy> {
  const comparison = yield* studyBypassRoutes(config);
  return comparison === undefined ? { turns: [] } : { comparison, turns: yield* studyRouteTurns(config) };
}

/** Where the change of the charge passes nothing, between neighbours by straight line. */
function turnsOf(points: readonly { readonly at: number; readonly charge: number }[]): number[] {
  const turns: number[] = [];
  for (let k = 1; k < points.length; k++) {
    const [from, to] = [points[k - 1], points[k]];
    if (from.charge * to.charge >= 0) continue;
    turns.push(from.at + ((to.at - from.at) * from.charge) / (from.charge - to.charge));
  }
  return turns;
}
