import { expect, it } from 'vitest';
import { restRows } from '../../../src/viewer/questions/rest-rows.ts';

const STUDY = { pulls: 8, now: 90, countNow: 3, longest: 1800, countAtLongest: 8 };
const write = (seconds: number) => `${seconds} s`;

it('lists rests by their length, with the pulls that each makes', () => {
  expect(restRows({ ...STUDY, needed: 240 }, write)).toEqual([
    ['as in the cycle', '90 s', '3 of 8'],
    ['shortest that does', '240 s', '8 of 8'],
    ['longest tried', '1800 s', '8 of 8'],
  ]);
  const [first, second] = restRows({ ...STUDY, countNow: 8, needed: 12 }, write);
  expect([first[0], second[0]]).toEqual(['shortest that does', 'as in the cycle']);
});

it('has no shortest where none does', () => {
  expect(restRows({ ...STUDY, countAtLongest: 5 }, write).map(([name]) => name)).toEqual([
    'as in the cycle',
    'longest tried',
  ]);
});
