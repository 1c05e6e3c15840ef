import { applyVariant, variants } from '../../sim/index.ts';
import { type Car, changedPaths } from '../state/cars.ts';
import { slotPaths } from './slots.ts';

/** What a letter asks about: the car as it stands (perhaps on another day), a variant of its file, or own changes. */
export type Asked = { readonly kind: 'as it stands' } | { readonly kind: 'variant' | 'own'; readonly name: string };

/**
 * Which change is asked about. What the question itself sets (limit, pulls, rest, day) is no change of the car: with
 * nothing else changed the car is asked about as it stands, and a variant stays that variant.
 */
export function askedChange(before: Car, after: Car | undefined): Asked {
  if (after === undefined) return { kind: 'as it stands' };
  const conditions = new Set(Object.values(slotPaths(before.document)));
  const isAlike = (other: Car['document']) => changedPaths(other, after.document).every((path) => conditions.has(path));
  const names = variants(before.scenario);
  if (names.includes(after.label)) return { kind: 'variant', name: after.label };
  if (isAlike(before.document)) return { kind: 'as it stands' };
  const name = names.find((each) => {
    const { scenario } = applyVariant(before.scenario, each);
    return scenario !== undefined && isAlike(scenario.document);
  });
  return name === undefined ? { kind: 'own', name: after.label } : { kind: 'variant', name };
}

/** As a sentence names it. The name of a variant is the shop's own and stands as it was typed. */
export function labelOf(asked: Asked): string {
  if (asked.kind === 'as it stands') return 'as it stands';
  return asked.kind === 'variant' ? `with \u201c${asked.name}\u201d` : `with ${asked.name}`;
}
