import type { ComparedCar } from '../../../../workers/questions.ts';
import {
  applyVariant,
  type ChangedInput,
  changedInputs,
  type Scenario,
  toConfig,
  variants,
} from '../../../sim/index.ts';
import { inputName } from '../../document/input-words.ts';
import type { Session } from '../../state/session.ts';

/** Most cars side by side: as many as there are lines to tell apart. */
export const MOST_CARS = 4;

/** Cars picked by name, each with the line that it keeps as long as it is picked: 0 to 3. */
export type Picks = ReadonlyMap<string, number>;

/** Picks a car or lets it go; a new one takes the first line that is free, and there are no more than lines. */
export function withPick(picks: Picks, name: string): Picks {
  const kept = new Map(picks);
  if (kept.delete(name)) return kept;
  const taken = [...kept.values()];
  const free = Array.from({ length: MOST_CARS }, (_, line) => line).find((line) => !taken.includes(line));
  return free === undefined ? picks : kept.set(name, free);
}

/** What is picked before anybody has: the file as it stands with the car in hand, or else with its first variant. */
export function firstPicks(candidates: readonly Pick<Candidate, 'name'>[], inHand: string | undefined): Picks {
  const [file, ...others] = candidates.map(({ name }) => name);
  const second = others.find((name) => name === inHand) ?? others[0];
  return new Map([file, second].flatMap((name, line) => (name === undefined ? [] : [[name, line]])));
}

/** A car that may be picked. */
export interface Candidate {
  readonly name: string;
  readonly scenario: () => Scenario | undefined;
}

/** The file as it stands, what was changed on the page, and the variants of the file. */
export function candidatesOf({ before, after }: Pick<Session, 'before' | 'after'>): Candidate[] {
  const [file, changed] = [before.value, after.value];
  if (file === undefined) return [];
  const names = variants(file.scenario);
  return [
    { name: file.label, scenario: () => file.scenario },
    ...(changed === undefined || [file.label, ...names].includes(changed.label)
      ? []
      : [{ name: changed.label, scenario: () => changed.scenario }]),
    ...names.map((name) => ({ name, scenario: () => applyVariant(file.scenario, name).scenario })),
  ];
}

/** What a car has otherwise than the first, with what the page calls it. */
type NamedChange = ChangedInput & { readonly name: string };

/** A car that is asked about, its changes with their names. */
export interface PickedCar extends ComparedCar {
  readonly changes: readonly NamedChange[];
}

/** The picked cars, in the order of the candidates; the first is the one that the others are held against. */
export function pickedCars(candidates: readonly Candidate[], picks: Picks): PickedCar[] {
  const picked = candidates.flatMap(({ name, scenario }) => {
    const [line, of] = [picks.get(name), picks.has(name) ? scenario() : undefined];
    if (line === undefined || of === undefined) return [];
    return [{ name, line, scenario: of, document: of.document, config: toConfig(of) }];
  });
  return picked.map((car) => ({
    name: car.name,
    line: car.line,
    config: car.config,
    changes: changedInputs(picked[0].scenario, car.scenario).map((change) => ({
      ...change,
      name: inputName(car, change.path) ?? inputName(picked[0], change.path) ?? change.path,
    })),
  }));
}
