import type { Signal } from '@preact/signals';
import { pullsOfCycle } from '../../sim/index.ts';
import type { Car } from '../state/cars.ts';
import { WholeBox } from './whole-box.tsx';

/** Most pulls that are asked for. */
const MOST = 60;

/** Pulls of the cycle of a car. */
export const pullsOf = (car: Car | undefined): number => (car === undefined ? 0 : pullsOfCycle(car.config.cycle));

/** Why nothing that is counted in pulls can be asked; undefined where it can. */
export const whyNoPulls = (car: Car | undefined): string | undefined =>
  pullsOf(car) === 0 ? 'The cycle has no pull: nothing to count.' : undefined;

/** How many pulls are wanted. */
export const PullsWanted = ({ pulls }: { readonly pulls: Signal<number> }) => (
  <WholeBox label="Pulls wanted" value={pulls} least={1} most={MOST} />
);
