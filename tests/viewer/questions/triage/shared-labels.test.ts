import { describe, expect, it } from 'vitest';
import { boxOf, placedLabels, sharing } from '../../../../src/viewer/questions/triage/shared-labels.ts';

const spot = (x: number, y: number) => ({ x, y });
const dot = (x: number, y: number) => ({ x, y, width: 0, height: 0 });
/** From -100 to 100 both ways. */
const PAPER = { x: 0, y: 0, width: 200, height: 200 };

describe('marks that share a label', () => {
  it('are those near the first of their group; nearness is not handed on', () => {
    expect(sharing([spot(0, 0), spot(8, 0), spot(16, 0)], 9)).toEqual([[0, 1], [2]]);
    expect(sharing([spot(0, 0), spot(50, 0), spot(0, 9), spot(3, 4)], 9)).toEqual([[0, 3], [1], [2]]);
  });

  it('have it beside the box that holds them', () => {
    expect(boxOf([spot(2, 10), spot(8, 6), spot(4, 9)])).toEqual({ x: 5, y: 8, width: 6, height: 4 });
  });
});

// A letter is 6 wide and a line 12 high; a mark keeps a square of 13 free; the text begins 9 from the middle of its mark.
describe('a label', () => {
  it('is right of its mark, or left of it at the edge of the paper', () => {
    expect(placedLabels([{ text: '1, 2', of: dot(10, 20) }], [spot(10, 20)], PAPER)).toEqual([
      { text: '1, 2', x: 10 + 9 + 12, y: 20 },
    ]);
    expect(placedLabels([{ text: '1', of: dot(85, 0) }], [spot(85, 0)], PAPER)).toEqual([{ text: '1', x: 97, y: 0 }]);
    expect(placedLabels([{ text: '1', of: dot(86, 0) }], [spot(86, 0)], PAPER)).toEqual([{ text: '1', x: 74, y: 0 }]);
  });

  it('is beside the whole of several marks', () => {
    const of = { x: 0, y: 0, width: 8, height: 4 };
    expect(placedLabels([{ text: '1, 2', of }], [spot(-4, -2), spot(4, 2)], PAPER)).toEqual([
      { text: '1, 2', x: 9 + 4 + 12, y: 0 },
    ]);
  });

  it('covers no other mark and no label before it', () => {
    const marks = [spot(0, 0), spot(14, 0), spot(-14, 0)];
    expect(placedLabels([{ text: '1', of: dot(0, 0) }], marks, PAPER)).toEqual([{ text: '1', x: 0, y: -15 }]);
    const pair = [dot(0, 0), dot(0, 10)];
    const labels = pair.map((of, k) => ({ text: String(k + 1), of }));
    expect(placedLabels(labels, pair, PAPER)).toEqual([
      { text: '1', x: 12, y: 0 },
      { text: '2', x: -12, y: 10 },
    ]);
  });

  it('is across where all four sides are taken', () => {
    const marks = [spot(0, 0), spot(14, 0), spot(-14, 0), spot(0, -14), spot(0, 14)];
    // Three quarters of 9 to the corner of the text, which the mark at the right reaches down to -6.5.
    expect(placedLabels([{ text: '1', of: dot(0, 0) }], marks, PAPER)).toEqual([{ text: '1', x: 9.75, y: -12.75 }]);
  });

  it('stands apart, joined by a line, where there is no room near its mark', () => {
    const around = [-14, 0, 14].flatMap((x) => [-14, 0, 14].map((y) => spot(x, y)));
    // At 20 it would still touch the mark at 14, which reaches to 20.5; at 32 it is free.
    expect(placedLabels([{ text: '1', of: dot(0, 0) }], around, PAPER)).toEqual([
      { text: '1', x: 35, y: 0, leader: { from: { x: 0, y: 0 }, to: { x: 32, y: 0 } } },
    ]);
  });

  it('is inside what leaves no room around it', () => {
    const narrow = { x: 0, y: 0, width: 120, height: 40 };
    const ring = { x: 0, y: 0, width: 110, height: 30 };
    expect(placedLabels([{ text: 'measured', of: ring }], [spot(0, 0)], narrow)).toEqual([
      { text: 'measured', x: 9 + 24, y: 0 },
    ]);
  });
});
