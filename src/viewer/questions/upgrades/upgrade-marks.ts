import type { Upgrade, UpgradeStep, UpgradeStudy } from '../../../sim/index.ts';
import { roundRange, ticksOn } from '../../figures/ticks.ts';
import { fixed, scaleOf } from '../../format.ts';
import type { UnitChoice } from '../../state/display.ts';

/** One step: the deciding peak without it and with it, in the shown unit, and what is written beside it. */
export interface Dumbbell {
  readonly without?: number;
  readonly with?: number;
  readonly says: string;
}

export interface UpgradeMarks {
  readonly rows: readonly { readonly name: string; readonly alone: Dumbbell; readonly inOrder: Dumbbell }[];
  readonly range: readonly [number, number];
  readonly ticks: readonly number[];
  readonly limit: number;
  /** absent where the car as it is ends no pull */
  readonly asItIs?: number;
}

const MOST_TICKS = 6;

/**
 * Where the marks of the deciding peaks stand, each upgrade alone and on top of those before it.
 *
 * @param order - of the study: that of the file, or the best
 */
export function upgradeMarks(
  study: UpgradeStudy,
  order: readonly UpgradeStep[],
  upgrades: readonly Upgrade[],
  units: UnitChoice,
): UpgradeMarks {
  const { fromSi } = scaleOf('degC', units);
  const dumbbell = ({ car, change }: UpgradeStep): Dumbbell => {
    if (car === undefined) return { says: 'refused' };
    if (car.deciding === undefined) return { says: 'no whole pull' };
    const { peak } = car.deciding;
    const effect = change?.effect === undefined || change.effect === 'better' ? '' : ` ${change.effect}`;
    return {
      ...(change?.peak !== undefined && { without: fromSi(peak - change.peak) }),
      with: fromSi(peak),
      says: `${fixed(fromSi(peak), 1)}${effect}`,
    };
  };
  const rows = order.map((step) => ({
    name: upgrades[step.upgrade].name,
    alone: dumbbell(study.alone.find(({ upgrade }) => upgrade === step.upgrade) ?? step),
    inOrder: dumbbell(step),
  }));
  const limit = fromSi(study.limit);
  const asItIs = study.base.deciding && fromSi(study.base.deciding.peak);
  const shown = [limit, asItIs, ...rows.flatMap(({ alone, inOrder }) => [alone.with, inOrder.with, inOrder.without])];
  const values = shown.filter((value) => value !== undefined);
  const range = roundRange(Math.min(...values), Math.max(...values), MOST_TICKS);
  return {
    rows,
    range,
    ticks: ticksOn(range, MOST_TICKS),
    limit,
    ...(asItIs !== undefined && { asItIs }),
  };
}
