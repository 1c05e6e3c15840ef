import type { PhaseValues, RepetitionValues, Values } from './shape.ts';

/** One phase as it stands in the file, and how often it runs. */
export interface PlacedPhase {
  readonly phase: PhaseValues;
  readonly path: string;
  readonly times: number;
}

export const isRepetition = (item: PhaseValues | RepetitionValues): item is RepetitionValues => 'phases' in item;

/** Every phase of the cycle once, in order. */
export function placedPhases({ cycle }: Values): PlacedPhase[] {
  return cycle.flatMap((item, index) =>
    isRepetition(item)
      ? item.phases.map((phase, k) => ({ phase, path: `cycle.${index}.phases.${k}`, times: item.repeat }))
      : [{ phase: item, path: `cycle.${index}`, times: 1 }],
  );
}
