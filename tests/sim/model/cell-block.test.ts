import { describe, expect, test } from 'vitest';
import { CellBlock } from '../../../src/sim/model/cell-block.ts';

/**
 * Rows along the air and columns along the coolant that have a watched cell, and whether metal and coolant both are.
 */
function watchedOf(nx: number, ny: number, offset: number) {
  const places = [...new CellBlock(nx, ny, offset, 1, 1).watchedPlaces()];
  const cells = new Set(places.map((place) => (place - offset) >> 1));
  return {
    rows: new Set([...cells].map((cell) => Math.floor(cell / ny))).size,
    columns: new Set([...cells].map((cell) => cell % ny)).size,
    cells: cells.size,
    isPaired: places.length === 2 * cells.size,
    isInside: Math.min(...places) >= offset && Math.max(...places) < offset + 2 * nx * ny,
  };
}

describe('the cells that the step control watches', () => {
  test.each([
    [48, 24],
    [24, 12],
    [16, 10],
    [20, 35],
    [30, 385],
  ])('lie in every row and every column of %i x %i cells', (nx, ny) => {
    const watched = watchedOf(nx, ny, 6);
    expect(watched.rows).toBe(nx);
    expect(watched.columns).toBe(ny);
    expect(watched.isPaired && watched.isInside).toBe(true);
  });

  test('are a fifth of a core of 48 x 24, and all of a line', () => {
    expect(watchedOf(48, 24, 0).cells).toBe(Math.ceil((48 * 24) / 5));
    expect(watchedOf(1, 28, 4).cells).toBe(28);
  });
});
