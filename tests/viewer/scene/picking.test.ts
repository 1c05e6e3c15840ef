import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildBlock } from '../../../src/viewer/scene/block.ts';
import { cellOutline, cellToPixel, levelFaceOf, pickCell, walked } from '../../../src/viewer/scene/picking.ts';
import { type Projection, project, viewOf } from '../../../src/viewer/scene/projection.ts';

const SHAPE = { depth: 0.4, height: 0.45, tubeCount: 8 };
const SHOWS = ['whole', 'cut', 'apart'] as const;
const CAMERAS = ['corner', 'above', 'air side'] as const;
const [NX, NY] = [7, 10];
const blockOf = (show: (typeof SHOWS)[number]) => buildBlock(SHAPE, NX, NY, { show, hasCellLines: false, apart: 0.8 });
const projectionOf = (camera: (typeof CAMERAS)[number]): Projection => ({
  view: viewOf(camera),
  scale: 240,
  middle: [300, 200],
});

const shows = fc.constantFrom(...SHOWS);
const cameras = fc.constantFrom(...CAMERAS);
const cells = fc.record({ i: fc.integer({ min: 0, max: NX - 1 }), j: fc.integer({ min: 0, max: NY - 1 }) });

describe('cells on the screen', () => {
  it('are read back from the pixel in their middle', () => {
    fc.assert(
      fc.property(shows, cameras, cells, (show, camera, cell) => {
        const block = blockOf(show);
        const projection = projectionOf(camera);
        expect(pickCell(block, projection, cellToPixel(block, projection, cell))?.cell).toEqual(cell);
      }),
    );
  });

  it('run to the right along the coolant and away, which is up, along the air', () => {
    for (const camera of CAMERAS) {
      const [block, projection] = [blockOf('whole'), projectionOf(camera)];
      const at = (i: number, j: number) => cellToPixel(block, projection, { i, j });
      expect(at(0, NY - 1)[0]).toBeGreaterThan(at(0, 0)[0] + 100);
      expect(at(NX - 1, 0)[1]).toBeLessThan(at(0, 0)[1] - 20);
      expect(at(NX - 1, 0)[0]).toBeGreaterThan(at(0, 0)[0]);
    }
  });

  it('lie on the cut as well: it shows the same cells, lower down, where the corner is away', () => {
    const [whole, cut, projection] = [blockOf('whole'), blockOf('cut'), projectionOf('corner')];
    const drop = (j: number) =>
      cellToPixel(cut, projection, { i: 3, j })[1] - cellToPixel(whole, projection, { i: 3, j })[1];
    expect(drop(0)).toBeCloseTo(0, 9);
    // The upper half of the stack is away, and the fins that lie outside: at most a layer more.
    const half = (SHAPE.height / 2) * projection.scale * Math.cos(0.56);
    expect(drop(NY - 1)).toBeGreaterThan(half);
    expect(drop(NY - 1)).toBeLessThan(half * (1 + 2 / SHAPE.tubeCount));
  });

  it('show the edge row on the sides: the first along the air in front, the last along the coolant at the end', () => {
    const [block, projection] = [blockOf('whole'), projectionOf('corner')];
    const front = pickCell(block, projection, project(projection, [0.12, -SHAPE.depth / 2, 0]));
    expect(front?.cell).toEqual({ i: 0, j: 6 });
    const end = pickCell(block, projection, project(projection, [0.5, 0.01, 0]));
    expect(end?.cell).toEqual({ i: 3, j: NY - 1 });
  });

  it('are not read beside the block', () => {
    expect(pickCell(blockOf('cut'), projectionOf('corner'), [20, 20])).toBeUndefined();
    // Where the corner is cut away there is no block any more.
    const pixel = cellToPixel(blockOf('whole'), projectionOf('corner'), { i: NX - 1, j: NY - 1 });
    expect(pickCell(blockOf('whole'), projectionOf('corner'), pixel)).toBeDefined();
    expect(pickCell(blockOf('cut'), projectionOf('corner'), pixel)).toBeUndefined();
  });

  it('have outlines round their middle, one cell wide', () => {
    const [block, projection] = [blockOf('whole'), projectionOf('corner')];
    const outline = cellOutline(levelFaceOf(block, { i: 2, j: 4 }), projection, { i: 2, j: 4 });
    const [x, y] = cellToPixel(block, projection, { i: 2, j: 4 });
    expect(outline.reduce((sum, point) => sum + point[0], 0) / 4).toBeCloseTo(x, 9);
    expect(outline.reduce((sum, point) => sum + point[1], 0) / 4).toBeCloseTo(y, 9);
    const next = cellToPixel(block, projection, { i: 2, j: 5 });
    const width = Math.hypot(outline[1][0] - outline[0][0], outline[1][1] - outline[0][1]);
    expect(width).toBeCloseTo(Math.hypot(next[0] - x, next[1] - y), 9);
  });

  it('outside the core are refused', () => {
    expect(() => levelFaceOf(blockOf('whole'), { i: 0, j: NY })).toThrow(/cell 10 along the coolant.*0 to 9/);
  });
});

describe('walking by keys', () => {
  it('starts in the middle and goes step by step', () => {
    expect(walked(undefined, [0, 1], NX, NY)).toEqual({ i: 3, j: 5 });
    expect(walked({ i: 3, j: 5 }, [1, 0], NX, NY)).toEqual({ i: 4, j: 5 });
  });

  it('stops at the sides, and goes all the way there', () => {
    expect(walked({ i: 0, j: 9 }, [-1, 1], NX, NY)).toEqual({ i: 0, j: 9 });
    expect(walked({ i: 2, j: 5 }, [Number.POSITIVE_INFINITY, 0], NX, NY)).toEqual({ i: 6, j: 5 });
    expect(walked({ i: 2, j: 5 }, [0, Number.NEGATIVE_INFINITY], NX, NY)).toEqual({ i: 2, j: 0 });
  });
});
