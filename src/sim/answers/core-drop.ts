import type { Config } from '../scenario/config.ts';
import { withCoreAirDrop, withCoreConductance } from './car-changes.ts';
import { type PullSummary, summarisePulls } from './pull-summary.ts';
import { jobToPull, type Study } from './study.ts';

/** One car at the end of its first pull; SI. */
export interface DropFigures {
  /** Pa */
  readonly drop: number;
  readonly pressureRatio: number;
  readonly discharge: number;
  readonly drivePower: number;
  readonly manifold: number;
  readonly airFlow: number;
  /** counted peak of the pull [K] */
  readonly peak: number;
}

/** What the core pressure drop takes, and what its cooling gives. */
export interface CoreDropStudy {
  readonly asItIs: DropFigures;
  /** the same core without any drop */
  readonly free: DropFigures;
  readonly doubled: DropFigures;
  /** no core at all: neither drop nor cooling */
  readonly none: DropFigures;
  /** per Pa of drop, from none to twice it; absent where the core has none */
  readonly perPascal?: Omit<DropFigures, 'drop'>;
}

/** So little that the core cools nothing. */
const NO_CONDUCTANCE = 1e-6;

/**
 * The first pull of the car as it is, without the core's drop, with twice it, and without a core.
 *
 * @returns undefined where one of them does not come to the end of a pull
 */
export function* studyCoreDrop(config: Config): Study<CoreDropStudy | undefined> {
  const withoutDrop = withCoreAirDrop(config, 0);
  const cars = [config, withoutDrop, withCoreAirDrop(config, 2), withCoreConductance(withoutDrop, NO_CONDUCTANCE)];
  const runs = yield cars.map((car) => jobToPull(car, 1));
  const pulls = runs.map((series) => summarisePulls(series, config.limit.chargeTemperature).at(0));
  const [asItIs, free, doubled, none] = pulls.map((pull) => pull && figuresOf(pull));
  if (!asItIs || !free || !doubled || !none) return undefined;
  const slope = (name: keyof DropFigures): number => (doubled[name] - free[name]) / doubled.drop;
  return {
    asItIs,
    free,
    doubled,
    none,
    ...(doubled.drop > 0 && {
      perPascal: {
        pressureRatio: slope('pressureRatio'),
        discharge: slope('discharge'),
        drivePower: slope('drivePower'),
        manifold: slope('manifold'),
        airFlow: slope('airFlow'),
        peak: slope('peak'),
      },
    }),
  };
}

function figuresOf({ peak, atEnd }: PullSummary): DropFigures {
  return {
    drop: atEnd.coreAirDrop,
    pressureRatio: atEnd.pressureRatio,
    discharge: atEnd.dischargeTemperature,
    drivePower: atEnd.drivePower,
    manifold: atEnd.manifoldPressure,
    airFlow: atEnd.airFlow,
    peak,
  };
}
