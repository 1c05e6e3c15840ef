import type { Triage } from '../../../../src/sim/index.ts';

type Cause = Triage['candidates'][number]['cause'];

/** An answer with the first causes leading; a cause is its name, its rise and its charge less coolant, K. */
export function triageOf(
  [rise, approach]: readonly [number, number],
  causes: readonly (readonly [Cause, number, number])[],
  leads = 1,
): Triage {
  const candidates = causes.map(([cause, itsRise, itsApproach]) => ({
    cause,
    words: cause,
    rise: itsRise,
    approach: itsApproach,
    distance: Number.NaN,
  }));
  return {
    reading: { rise, approach, riseDoubt: 1, approachDoubt: 3 },
    phase: 'idle',
    pull: 1,
    candidates,
    leading: candidates.slice(0, leads),
    notRun: [],
  };
}
