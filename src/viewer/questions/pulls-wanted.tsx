import type { Signal } from '@preact/signals';
import { pullsOfCycle, WHY_NO_ANSWER } from '../../sim/index.ts';
import type { Car } from '../state/cars.ts';
import { whyNotWhole } from './typed.ts';
import { WholeBox } from './whole-box.tsx';

const LABEL = 'Pulls wanted';
/** Most pulls that are asked for, as on the command line. */
const MOST = 500;

/** Pulls of the cycle of a car. */
export const pullsOf = (car: Car | undefined): number => (car === undefined ? 0 : pullsOfCycle(car.config.cycle));

/** Why nothing that is counted in pulls can be asked; undefined where it can. */
export const whyNoPulls = (car: Car | undefined): string | undefined =>
  pullsOf(car) === 0 ? WHY_NO_ANSWER.noPull : undefined;

/** Why so many pulls cannot be asked for. */
export const whyNotPulls = (car: Car | undefined, pulls: number): string | undefined =>
  whyNoPulls(car) ?? whyNotWhole(LABEL, pulls, 1, MOST);

/** How many pulls are wanted. */
export const PullsWanted = ({ pulls }: { readonly pulls: Signal<number> }) => (
  <WholeBox label={LABEL} value={pulls} least={1} most={MOST} />
);
