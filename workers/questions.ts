import { type Config, type StoreKind, type Study, studyCoreDrop, studyRest, studyStore } from '../src/sim/index.ts';

/** Answers of many runs that a page asks for by name: each takes a car and what it is asked with. */
export const QUESTIONS = {
  store: (config: Config, { kind, pulls }: { readonly kind: StoreKind; readonly pulls: number }) =>
    studyStore(config, kind, pulls),
  rest: (config: Config, { pulls }: { readonly pulls: number }) => studyRest(config, pulls),
  drop: (config: Config, _asked: Record<never, never>) => studyCoreDrop(config),
};

export type Question = keyof typeof QUESTIONS;
export type AskedOf<Q extends Question> = Parameters<(typeof QUESTIONS)[Q]>[1];
export type AnswerOf<Q extends Question> =
  ReturnType<(typeof QUESTIONS)[Q]> extends Study<infer Result> ? Result : never;
