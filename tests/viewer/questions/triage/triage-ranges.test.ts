import { describe, expect, it } from 'vitest';
import { heldIn, triageRanges } from '../../../../src/viewer/questions/triage/triage-ranges.ts';
import { triageOf } from './hand-made-triage.ts';

// The doubts are 1 K and 3 K, so that 12 of them are 12 K across and 36 K up.
describe('what the picture of triage shows', () => {
  it('is the reading with its doubt and the causes', () => {
    const triage = triageOf(
      [6, 25],
      [
        ['pump off', 5, 35],
        ['low flow', 0.8, 30],
        ['healthy', 0.2, 26],
      ],
    );
    expect(triageRanges(triage)).toEqual({ rise: [0.2, 7], approach: [22, 35], isCrowded: false });
  });

  it.each([
    { rise: 12, approach: 41, shown: { rise: [0, 12], approach: [16, 43] } },
    { rise: 12.1, approach: 41, shown: { rise: [0, 2], approach: [16, 43] } },
    { rise: 1, approach: 52, shown: { rise: [0, 2], approach: [16, 52] } },
    { rise: 1, approach: 52.1, shown: { rise: [0, 2], approach: [16, 43] } },
    // Too far out across: it does not make the picture higher either.
    { rise: 12.1, approach: 50, shown: { rise: [0, 2], approach: [16, 43] } },
  ])('leaves out a cause that would make it longer than 12 doubts: $rise, $approach', ({ rise, approach, shown }) => {
    const triage = triageOf(
      [1, 40],
      [
        ['low flow', 1, 38],
        ['healthy', 0.5, 16],
        ['pump off', rise, approach],
      ],
    );
    expect(triageRanges(triage)).toMatchObject(shown);
  });

  it('takes the nearer of two that do not both fit', () => {
    const low = ['pump off', -5, 40] as const;
    const high = ['low flow', 8, 40] as const;
    const healthy = ['healthy', 1, 40] as const;
    expect(triageRanges(triageOf([1, 40], [healthy, low, high])).rise).toEqual([-5, 2]);
    expect(triageRanges(triageOf([1, 40], [healthy, high, low])).rise).toEqual([0, 8]);
  });

  it('has all that lead and the healthy car however far, and what lies between them', () => {
    const triage = triageOf(
      [1, 40],
      [
        ['low flow', 1, 40],
        ['pump off', 20, 40],
        ['low voltage', 15, 46],
        ['healthy', 1, 30],
      ],
      2,
    );
    expect(triageRanges(triage)).toMatchObject({ rise: [0, 20], approach: [30, 46] });
    const beside = triageOf(
      [1, 40],
      [
        ['low flow', 1, 40],
        ['healthy', 20, 40],
        ['pump off', 20.5, 46],
      ],
    );
    expect(triageRanges(beside)).toMatchObject({ rise: [0, 20], approach: [37, 43] });
  });

  it('is crowded where it is 30 doubts long', () => {
    // From -1 to the reading and its doubt: 30 K, and a little less. From 0 up to 87 and its doubt: 90 K.
    const crowdedAt = (rise: number, approach: number) =>
      triageRanges(triageOf([rise, approach], [['healthy', -1, 0]])).isCrowded;
    expect([crowdedAt(28, 0), crowdedAt(27.9, 0), crowdedAt(0, 87), crowdedAt(0, 86.9)]).toEqual([
      true,
      false,
      true,
      false,
    ]);
  });
});

it('puts what is beyond a range on its end, and tells the side', () => {
  const held = [-3, 0, 7, 10, 12].map((value) => heldIn([0, 10], value));
  expect(held.map(({ value }) => value)).toEqual([0, 0, 7, 10, 10]);
  expect(held.map(({ beyond }) => beyond)).toEqual([-1, 0, 0, 0, 1]);
});
