import { describe, expect, it } from 'vitest';
import { triageLayout } from '../../../../src/viewer/questions/triage/triage-layout.ts';
import { IMPERIAL, METRIC } from '../../../../src/viewer/state/display.ts';
import { triageOf } from './hand-made-triage.ts';

const TRIAGE = triageOf(
  [3, 40],
  [
    ['low flow', 6, 50],
    ['low voltage', 3, 60],
    ['healthy', 0, 20],
    ['low coolant', 0.1, 20.5],
    ['pump off', 17, 70],
  ],
  2,
);

// Axes run from 0 to 6 K over 300 of paper, from 43 on: 50 a kelvin; and from 20 to 60 K over 224, upwards from 255: 5.6.
describe('the picture of triage', () => {
  const { across, up, ring, marks, numbers, said } = triageLayout(TRIAGE, METRIC);
  const near = (value: number) => expect.closeTo(value, 6);

  it('has round axes that hold the causes but the one far out', () => {
    expect([across.range, up.range]).toEqual([
      [0, 6],
      [20, 60],
    ]);
    expect(across.ticks).toEqual([0, 1, 2, 3, 4, 5, 6].map(near));
    expect(up.ticks).toEqual([20, 30, 40, 50, 60]);
  });

  it('has the ring where the distance is 1 round the reading', () => {
    expect(ring).toEqual({ x: near(193), y: near(143), width: near(100), height: near(33.6) });
  });

  it('has each cause at its two figures, and the one far out at the edge, pointed to', () => {
    expect(marks).toEqual([
      { x: near(343), y: near(87) },
      { x: near(193), y: near(31) },
      { x: near(43), y: near(255) },
      { x: near(48), y: near(252.2) },
      { x: near(343), y: near(31), turn: -45 },
    ]);
  });

  it.each([
    [20, 40, 0],
    [-20, 40, 180],
    [3, 90, -90],
    [3, -30, 90],
    [-20, -30, 135],
  ])('points from the edge to %i, %i', (rise, approach, turn) => {
    const { candidates } = TRIAGE;
    const far = { ...TRIAGE, candidates: [...candidates.slice(0, 4), { ...candidates[4], rise, approach }] };
    expect(triageLayout(far, METRIC).marks[4].turn).toBe(turn);
  });

  it('has every number, those of marks that cover each other together', () => {
    expect(numbers.map(({ text, group, x, y }) => ({ text, group, x, y }))).toEqual([
      // The first and the last have no room at their right.
      { text: '1', group: [0], x: near(343 - 12), y: near(87) },
      { text: '2', group: [1], x: near(193 + 12), y: near(31) },
      { text: '3, 4', group: [2, 3], x: near(45.5 + 2.5 + 9 + 12), y: near(253.6) },
      { text: '5', group: [4], x: near(343 - 12), y: near(31) },
    ]);
    expect(said).toEqual({ text: 'measured', x: near(193 + 50 + 9 + 24), y: near(143) });
  });

  it('is in the chosen units: 0 to 10.8 and 36 to 108 degF', () => {
    const shown = triageLayout(TRIAGE, IMPERIAL);
    expect([shown.across.range, shown.up.range]).toEqual([
      [0, 12],
      [20, 120],
    ]);
    // 300 over 12 degF, of which 1.8 are a kelvin.
    expect(shown.ring.width).toBeCloseTo(2 * 1.8 * 25, 6);
  });
});
