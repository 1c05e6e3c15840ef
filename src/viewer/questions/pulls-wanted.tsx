import type { Signal } from '@preact/signals';
import type { Car } from '../state/cars.ts';
import { plannedPhases } from '../time/phases.ts';

/** Most pulls that are asked for. */
const MOST = 60;

/** Pulls of the cycle of a car. */
export const pullsOf = (car: Car | undefined): number =>
  car === undefined ? 0 : (plannedPhases(car.config.cycle).at(-1)?.pull ?? 0);

/** Why nothing that is counted in pulls can be asked; undefined where it can. */
export const whyNoPulls = (car: Car | undefined): string | undefined =>
  pullsOf(car) === 0 ? 'The cycle has no pull: nothing to count.' : undefined;

/** How many pulls are wanted; as typed, so that an odd value is seen and not asked with. */
export function PullsWanted({ pulls }: { readonly pulls: Signal<number> }) {
  return (
    <label class="pulls-wanted">
      Pulls wanted
      <input
        type="number"
        min={1}
        max={MOST}
        step={1}
        value={pulls.value}
        onInput={({ currentTarget: { valueAsNumber } }) => {
          if (Number.isInteger(valueAsNumber) && valueAsNumber >= 1 && valueAsNumber <= MOST)
            pulls.value = valueAsNumber;
        }}
      />
    </label>
  );
}
