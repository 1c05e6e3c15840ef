import { describe, expect, it } from 'vitest';
import { evenScale, pullsOnlyScale } from '../../../src/viewer/time/time-scale.ts';
import { minutePhases } from './hand-made.ts';

describe('the line of time', () => {
  it('runs evenly and ends at the end', () => {
    const { length, placeOf, timeOf } = evenScale(240);
    expect([length, placeOf(72), timeOf(72), placeOf(300), timeOf(-1)]).toEqual([240, 72, 72, 240, 0]);
  });

  // Pulls of 12 s keep their length, all else is folded to a quarter of one: 3 + 12 + 3 + 12 + 3.
  it('folds everything between pulls when only they are wanted', () => {
    const { length, placeOf, timeOf } = pullsOnlyScale(minutePhases(2));
    expect(length).toBe(33);
    expect([0, 60, 66, 72, 96, 120, 132, 180].map(placeOf)).toEqual([0, 3, 9, 15, 16.5, 18, 30, 33]);
    expect([0, 3, 9, 15, 16.5, 18, 30, 33].map(timeOf)).toEqual([0, 60, 66, 72, 96, 120, 132, 180]);
    expect([placeOf(-5), placeOf(500)]).toEqual([0, 33]);
  });

  it('leaves a cycle without pulls as it is', () => {
    const { length, placeOf } = pullsOnlyScale(minutePhases(0));
    expect([length, placeOf(30)]).toEqual([60, 30]);
  });
});
