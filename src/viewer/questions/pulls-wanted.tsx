import type { Signal } from '@preact/signals';
import type { Car } from '../state/cars.ts';
import { plannedPhases } from '../time/phases.ts';

/** Most pulls that are asked for. */
const MOST = 60;

/** Pulls of the cycle of a car. */
export const pullsOf = (car: Car | undefined): number =>
  car === undefined ? 0 : (plannedPhases(car.config.cycle).at(-1)?.pull ?? 0);

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
