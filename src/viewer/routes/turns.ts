import type { TurnLine } from '../../sim/index.ts';
import { capitalised, difference, fixed, joined, signed } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';

/** One of the values an input is set to, and what the route does to the charge there. */
interface TurnCell {
  readonly value: string;
  /** the car as it is */
  readonly isOwn: boolean;
  readonly change: string;
  /** said beside the sign */
  readonly word: 'cooler' | 'warmer' | 'no change';
  /** what the input comes to, or at which heat of the plenum the change turns; in words */
  readonly asides: readonly string[];
}

export interface TurnRow {
  readonly name: string;
  readonly meaning: string;
  readonly cells: readonly TurnCell[];
  /** "turns at ×0.18"; says so where it does not turn */
  readonly turn: string;
}

/** A change smaller than this shows as nought [K]. */
const NOTHING = 0.005;

/** The change of the charge as one input moves, as the page shows it. */
export function turnRow({ name, meaning, kind, points, turns }: TurnLine, units: UnitChoice): TurnRow {
  const times = kind === 'factor' ? '×' : '';
  const cells = points.map((point): TurnCell => {
    const { charge } = point.change;
    const asides: string[] = [];
    if (name === 'bypass drop') asides.push(`r ${fixed(point.recirculation, 2)}`);
    if (name === 'core conductance') asides.push(`\u03b5 ${fixed(point.coreEffectiveness, 2)}`);
    if (point.plenumTurn !== undefined) asides.push(`plenum ×${fixed(point.plenumTurn, 1)}`);
    return {
      value: `${times}${point.value}`,
      isOwn: kind === 'factor' && point.value === 1,
      change: signed(joined(difference(charge, units, 2))),
      word: Math.abs(charge) < NOTHING ? 'no change' : charge > 0 ? 'warmer' : 'cooler',
      asides,
    };
  });
  const at = turns.map((value) => `${times}${fixed(value, 2)}`).join(' and ');
  return { name: capitalised(name), meaning, cells, turn: at === '' ? 'does not turn here' : `turns at ${at}` };
}

/** Where the charge turns for the car as it is, by the heat of its plenum; undefined where it does not. */
export function plenumSentence(lines: readonly TurnLine[]): string | undefined {
  const [at] = lines.find(({ name }) => name === 'plenum heat')?.turns ?? [];
  if (at === undefined) return undefined;
  return `With this car the charge turns where the plenum is coupled ${fixed(at, 1)} times as hot.`;
}
