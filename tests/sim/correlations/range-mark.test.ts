import { expect, test } from 'vitest';
import { joinedMark, markOf } from '../../../src/sim/correlations/range-mark.ts';

test('a value on its limits is inside', () => {
  expect(
    markOf([
      ['a [-]', 2, 2, 5],
      ['b [-]', 5, 2, 5],
    ]),
  ).toBe('inside');
});

test('the distance is a share of the limit that is nearer', () => {
  expect(markOf([['a [-]', 1.5, 2, 5]])).toEqual([{ quantity: 'a [-]', value: 1.5, low: 2, high: 5, beyond: 0.25 }]);
  expect(markOf([['a [-]', 6, 2, 5]])).toEqual([expect.objectContaining({ beyond: expect.closeTo(0.2, 12) })]);
});

test('a joined mark names every quantity once, and is inside only if all are', () => {
  const low = markOf([['a [-]', 1, 2, 5]]);
  const both = markOf([
    ['a [-]', 1, 2, 5],
    ['b [mm]', 6, 2, 5],
  ]);
  expect(joinedMark([low, 'inside', both])).toEqual(both);
  expect(joinedMark(['inside', 'inside'])).toBe('inside');
  // the same quantity against other limits is another breach
  expect(joinedMark([low, markOf([['a [-]', 1, 3, 5]])])).toHaveLength(2);
});
