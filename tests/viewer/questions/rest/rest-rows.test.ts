import { expect, it } from 'vitest';
import { restRows } from '../../../../src/viewer/questions/rest/rest-rows.ts';

const STUDY = {
  pulls: 8,
  now: 90,
  countNow: 3,
  curve: [
    { rest: 9, count: 1 },
    { rest: 90, count: 3 },
    { rest: 180, count: 6 },
    { rest: 1800, count: 8 },
  ],
};
const write = (seconds: number) => `${seconds} s`;

it('lists rests by their length, with the pulls that each makes', () => {
  expect(restRows({ ...STUDY, needed: 240 }, write)).toEqual([
    ['9 s', '1 of 8', ''],
    ['90 s', '3 of 8', 'as in the cycle'],
    ['180 s', '6 of 8', ''],
    ['240 s', '8 of 8', 'shortest that does'],
    ['1800 s', '8 of 8', ''],
  ]);
});

it('has no shortest where none does', () => {
  expect(restRows(STUDY, write).map(([, , name]) => name)).toEqual(['', 'as in the cycle', '', '']);
});
