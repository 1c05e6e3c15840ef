import type { PhaseSpan, TimeSeries } from '../results/time-series.ts';
import { isPartLoad } from '../scenario/config/cycle.ts';
import type { Config } from '../scenario/config.ts';
import { withCoreAirDrop } from './car-changes.ts';
import { summarisePulls } from './pull-summary.ts';
import type { RunJob, Study } from './study.ts';

/** What one route does: figures at the end of the part-load phase before a pull, and that pull's peak. SI. */
export interface RouteFigures {
  readonly route: BypassRoute;
  readonly compressorInlet: number;
  readonly discharge: number;
  readonly casing: number;
  readonly coreOutlet: number;
  readonly charge: number;
  /** recirculated over engine air */
  readonly recirculation: number;
  /** W */
  readonly gasPower: number;
  readonly heatToCore: number;
  readonly coolantIntoCore: number;
  /** share of the way from discharge to coolant inlet that the air goes in the core */
  readonly coreEffectiveness: number;
  /** K; absent where the run has no pull after the phase, or ended before it */
  readonly pullPeak?: number;
}

export type BypassRoute = 'before core' | 'after core';

/** The four places that the trade looks at. */
export const ROUTE_PLACES = ['compressorInlet', 'discharge', 'casing', 'charge'] as const;
export type RoutePlace = (typeof ROUTE_PLACES)[number];

export interface RouteComparison {
  /** the part-load phase that was looked at, and how long it had lasted [s] */
  readonly phase: string;
  readonly lasted: number;
  readonly before: RouteFigures;
  readonly after: RouteFigures;
  /** change of the charge if the core had no air drop: the route alone [K] */
  readonly chargeChangeWithoutDrop: number;
}

/**
 * Recirculated air before the core against behind it, over the part-load phase that comes before the first pull, and
 * that pull. Both routes run from the same start. Absent where the cycle has no such phase.
 */
export function* studyBypassRoutes(config: Config): Study<RouteComparison | undefined> {
  const share = shareBehindCore(config);
  const withoutDrop = withCoreAirDrop(config, 0);
  const runs = yield [
    routeJob(config, 0, 'pull'),
    routeJob(config, share, 'pull'),
    routeJob(withoutDrop, 0, 'part load'),
    routeJob(withoutDrop, share, 'part load'),
  ];
  const phase = phaseBeforePull(runs[0].phases);
  if (phase === undefined) return undefined;
  const [before, after, beforeAlone, afterAlone] = runs.map((run, k) =>
    figuresOf(run, config, k % 2 === 0 ? 'before core' : 'after core'),
  );
  if (!before || !after || !beforeAlone || !afterAlone) return undefined;
  return {
    phase: phase.name,
    lasted: phase.end - phase.start,
    before,
    after,
    chargeChangeWithoutDrop: afterAlone.charge - beforeAlone.charge,
  };
}

/** Share of the recirculated air that the route behind the core takes there: the car's own where it has one, else all. */
export const shareBehindCore = ({ bypass: { shareAfterCore } }: Config): number =>
  shareAfterCore > 0 ? shareAfterCore : 1;

/** A run by one route: to the end of the part-load phase before the first pull, or of that pull. */
export function routeJob(config: Config, shareAfterCore: number, end: 'part load' | 'pull'): RunJob {
  const { before, block, repeats, after } = config.cycle;
  const kinds = [...before, ...(repeats > 0 ? block : []), ...after].map(({ kind }) => kind);
  const pull = kinds.findIndex((kind, k) => kind === 'pull' && kinds.slice(0, k).some(isPartLoad));
  const phases = pull < 0 ? kinds.length : end === 'pull' ? pull + 1 : pull;
  return {
    config: { ...config, bypass: { ...config.bypass, shareAfterCore } },
    until: { kind: 'phase', phase: phases },
  };
}

/** The last whole part-load phase before the first pull that has one before it; the last of all where no pull does. */
export function phaseBeforePull(phases: readonly PhaseSpan[]): PhaseSpan | undefined {
  let candidate: PhaseSpan | undefined;
  for (const phase of phases) {
    if (phase.kind === 'pull' && candidate !== undefined) return candidate;
    if (isPartLoad(phase.kind) && phase.isWhole) candidate = phase;
  }
  return candidate;
}

/** Figures of a run by one route; absent where it did not come to the end of its part-load phase. */
export function figuresOf(series: TimeSeries, config: Config, route: BypassRoute): RouteFigures | undefined {
  const phase = phaseBeforePull(series.phases);
  if (phase === undefined) return undefined;
  const { columns } = series;
  const row = phase.lastRow;
  const discharge = columns.dischargeTemperature[row];
  const coreOutlet = columns.coreOutletTemperature[row];
  const coolantIntoCore = columns.coolantIntoCore[row];
  const pull = summarisePulls(series, config.limit.chargeTemperature).find(({ start }) => start >= phase.end);
  return {
    route,
    compressorInlet: columns.compressorInletTemperature[row],
    discharge,
    casing: columns.casingTemperature[row],
    coreOutlet,
    charge: columns.chargeTemperature[row],
    recirculation: columns.recirculation[row],
    gasPower: columns.gasPower[row],
    heatToCore: columns.airToCorePower[row],
    coolantIntoCore,
    coreEffectiveness: (discharge - coreOutlet) / (discharge - coolantIntoCore),
    ...(pull !== undefined && { pullPeak: pull.peak }),
  };
}
