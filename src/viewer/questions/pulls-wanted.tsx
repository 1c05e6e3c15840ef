import type { Signal } from '@preact/signals';
import type { Car } from '../state/cars.ts';
import { plannedPhases } from '../time/phases.ts';
import { WholeBox } from './whole-box.tsx';

/** Most pulls that are asked for. */
const MOST = 60;

/** Pulls of the cycle of a car. */
export const pullsOf = (car: Car | undefined): number =>
  car === undefined ? 0 : (plannedPhases(car.config.cycle).at(-1)?.pull ?? 0);

/** How many pulls are wanted. */
export const PullsWanted = ({ pulls }: { readonly pulls: Signal<number> }) => (
  <WholeBox label="Pulls wanted" value={pulls} least={1} most={MOST} />
);
