import { describe, expect, it } from 'vitest';
import { type Block, buildBlock, placeOn } from '../../../src/viewer/scene/block.ts';

const SHAPE = { depth: 0.4, height: 0.45, tubeCount: 8 };
const blockOf = (show: 'whole' | 'cut' | 'apart', hasCellLines = false) =>
  buildBlock(SHAPE, 6, 10, { show, hasCellLines, apart: 0.8 });
const levels = ({ faces }: Block) => faces.filter(({ part }) => part === 'level');
const heightOf = ({ faces }: Block) => {
  const heights = faces.flatMap((face) => [placeOn(face, [0, 0])[2], placeOn(face, [1, 1])[2]]);
  return Math.max(...heights) - Math.min(...heights);
};

describe('a drawn block', () => {
  it('has the height of its shape, with fins outside: one more layer of them than tubes', () => {
    const block = blockOf('whole');
    expect(heightOf(block)).toBeCloseTo(0.45, 12);
    // Two sides of each layer can be seen.
    expect(block.faces.filter(({ part }) => part === 'fin').length).toBe(2 * 9);
    expect(block.faces.filter(({ part }) => part === 'tube').length).toBe(2 * 8);
  });

  it('whole, shows every cell once from above', () => {
    const [top, ...others] = levels(blockOf('whole'));
    expect(others).toEqual([]);
    expect([top.i, top.j]).toEqual([
      [0, 6],
      [0, 10],
    ]);
  });

  it('cut, shows every cell once from above, on two levels', () => {
    const [ledge, top, ...others] = levels(blockOf('cut'));
    expect(others).toEqual([]);
    expect(top.j[0]).toBe(0);
    expect(ledge.j[1]).toBe(10);
    expect(top.j[1]).toBe(ledge.j[0]);
    expect(placeOn(ledge, [0, 0])[2]).toBeLessThan(placeOn(top, [0, 0])[2]);
    // The cut stands where the cells on both levels meet.
    expect(placeOn(top, [1, 0])[0]).toBeCloseTo(placeOn(ledge, [0, 0])[0], 12);
    expect(placeOn(top, [1, 0])[0]).toBeCloseTo(top.j[1] / 10 - 0.5, 12);
  });

  it('apart, is higher and shows the field on every layer', () => {
    const block = blockOf('apart');
    expect(heightOf(block)).toBeGreaterThan(1.5 * 0.45);
    expect(levels(block).length).toBe(9);
  });

  it('has lines between cells where they are wanted', () => {
    const count = (block: Block) =>
      levels(block)
        .flatMap(({ strokes }) => strokes)
        .filter(({ weight }) => weight === 'cell');
    expect(count(blockOf('whole')).length).toBe(0);
    // Between 6 cells there are 5 lines, between 10 there are 9.
    expect(count(blockOf('whole', true)).length).toBe(5 + 9);
  });

  it('can be drawn from the first face to the last: later ones are nearer or beside', () => {
    const lowest = blockOf('apart').faces.map((face) => placeOn(face, [0, 0])[2]);
    expect([...lowest].sort((a, b) => a - b)).toEqual(lowest);
  });
});
