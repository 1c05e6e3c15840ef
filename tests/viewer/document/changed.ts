import { expect } from 'vitest';
import { type Car, readCar } from '../../../src/viewer/state/cars.ts';
import { type Changes, withChanges } from '../../../src/viewer/state/session.ts';
import { shippedDocument } from '../../support/shipped.ts';

/** A shipped car without its variants: they never come along with a change. */
export function shippedCar(name: string): Car {
  const { variants: _, upgrades: __, ...document } = shippedDocument(name);
  return changed({ label: name, document } as Car, {});
}

/** A car with changes, which the reader takes without a word. */
export function changed(car: Car, changes: Changes): Car {
  const { car: next, issues } = readCar(car.label, withChanges(car.document, changes));
  expect(issues).toEqual([]);
  if (next === undefined) throw new Error('refused');
  return next;
}
