import { countPulls, explainLateReturn, type PullSummary, soonestReturn } from '../../sim/index.ts';
import { degrees, kelvins, signed, wordingIn } from '../format.ts';
import type { Car } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';

/** Peaks that move by less than this count as no effect worth naming [K]: own judgement. */
const WORTH_NAMING = 1;

/** The numbers, and the reason where there is one to tell. */
interface NoEffect {
  readonly numbers: string;
  readonly reason?: string;
}

/**
 * Says plainly that a change buys nothing, with the numbers; undefined where it buys something.
 *
 * @param changes - paths in which After differs from Before
 */
export function describeNoEffect(
  after: Car,
  changes: readonly string[],
  beforePulls: readonly PullSummary[],
  afterPulls: readonly PullSummary[],
  units: UnitChoice,
): NoEffect | undefined {
  const last = Math.min(beforePulls.length, afterPulls.length) - 1;
  if (last < 0 || countPulls(beforePulls) !== countPulls(afterPulls)) return undefined;
  const moved = (k: number) => afterPulls[k].peak - beforePulls[k].peak;
  if (Math.min(moved(0), moved(last)) < -WORTH_NAMING) return undefined;
  const said = (k: number) => {
    const change = moved(k);
    return `pull ${k + 1} at ${degrees(afterPulls[k].peak, units)}, ${signed(kelvins(change, units))}`;
  };
  const numbers = last === 0 ? said(0) : `${said(0)}; ${said(last)}`;
  const verdict = Math.max(moved(0), moved(last)) > WORTH_NAMING ? 'Worse' : 'No gain';
  const isTank = changes.length > 0 && changes.every((path) => path.startsWith('reservoir.coolantVolume'));
  const { atEnd, duration } = afterPulls[0];
  const soonest = soonestReturn(after.config, atEnd.coolantFlow);
  const reason = isTank && verdict === 'No gain' ? explainLateReturn(soonest, duration, wordingIn(units)) : undefined;
  return { numbers: `${verdict}: ${numbers}.`, ...(reason === undefined ? {} : { reason }) };
}
