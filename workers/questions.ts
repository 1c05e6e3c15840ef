import {
  type Config,
  type StoreKind,
  type Study,
  studyCoreDrop,
  studyRest,
  studyStore,
  studyUpgrades,
  type Upgrade,
} from '../src/sim/index.ts';

/** What upgrades are weighed with: a study asks for its cars by what is fitted to them, and a message holds no function. */
export interface UpgradesAsked {
  readonly upgrades: readonly Upgrade[];
  /** places in the list, ascending and joined by commas, and the car that has them; what cannot be is not in it */
  readonly cars: readonly (readonly [chosen: string, car: Config])[];
  readonly withOrders: boolean;
}

/** Answers of many runs that a page asks for by name: each takes a car and what it is asked with. */
export const QUESTIONS = {
  store: (config: Config, { kind, pulls }: { readonly kind: StoreKind; readonly pulls: number }) =>
    studyStore(config, kind, pulls),
  rest: (config: Config, { pulls }: { readonly pulls: number }) => studyRest(config, pulls),
  drop: (config: Config, _asked: Record<never, never>) => studyCoreDrop(config),
  upgrades: (config: Config, { upgrades, cars, withOrders }: UpgradesAsked) => {
    const upgraded = new Map(cars);
    const carWith = (chosen: readonly number[]) => (chosen.length === 0 ? config : upgraded.get(chosen.join()));
    return studyUpgrades(upgrades, carWith, { withOrders });
  },
};

export type Question = keyof typeof QUESTIONS;
export type AskedOf<Q extends Question> = Parameters<(typeof QUESTIONS)[Q]>[1];
export type AnswerOf<Q extends Question> =
  ReturnType<(typeof QUESTIONS)[Q]> extends Study<infer Result> ? Result : never;
