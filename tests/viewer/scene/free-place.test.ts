import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bandOf, freePlace, hullOf, type Outline } from '../../../src/viewer/scene/free-place.ts';

const BOUNDS = { x: 0, y: 0, width: 300, height: 200 };
const places = fc.tuple(fc.double({ min: 0, max: 300, noNaN: true }), fc.double({ min: 0, max: 200, noNaN: true }));
const outlines = fc.array(places, { minLength: 5, maxLength: 8 }).map((points) => hullOf(points));

/** Whether any of a grid of points of a rectangle lies inside a convex outline. */
function covers(outline: Outline, { x, y, width, height }: typeof BOUNDS): boolean {
  for (let a = 0; a <= 1; a += 0.05)
    for (let b = 0; b <= 1; b += 0.05) {
      const [px, py] = [x + a * width, y + b * height];
      const isIn = outline.every(([x1, y1], k) => {
        const [x2, y2] = outline[(k + 1) % outline.length];
        return (x2 - x1) * (py - y1) - (y2 - y1) * (px - x1) > 1e-9;
      });
      if (isIn) return true;
    }
  return false;
}

describe('a free place for a label', () => {
  it('is the wished one where nothing is in the way', () => {
    const wished = { x: 40, y: 50, width: 60, height: 30 };
    expect(freePlace(wished, [], BOUNDS, 2)).toEqual({ ...wished, isFree: true });
  });

  it('covers nothing and lies inside', () => {
    fc.assert(
      fc.property(places, fc.array(outlines, { maxLength: 4 }), ([x, y], obstacles) => {
        const found = freePlace({ x, y, width: 50, height: 24 }, obstacles, BOUNDS, 0);
        expect(found.x).toBeGreaterThanOrEqual(0);
        expect(found.x + 50).toBeLessThanOrEqual(300);
        expect(found.y + 24).toBeLessThanOrEqual(200);
        if (found.isFree) for (const outline of obstacles) expect(covers(outline, found)).toBe(false);
      }),
    );
  });

  it('keeps its distance, whichever way round an obstacle is written', () => {
    const wall: Outline = hullOf([
      [100, 0],
      [110, 0],
      [110, 200],
      [100, 200],
    ]);
    for (const turned of [wall, wall.toReversed()]) {
      const found = freePlace({ x: 60, y: 50, width: 38, height: 20 }, [turned], BOUNDS, 5);
      expect(found.isFree).toBe(true);
      expect(found.x + 38).toBeLessThanOrEqual(95);
    }
  });

  it('may be in the empty corner beside a slanting side', () => {
    const triangle: Outline = [
      [0, 0],
      [200, 200],
      [0, 200],
    ];
    const wished = { x: 120, y: 10, width: 60, height: 30 };
    for (const turned of [triangle, triangle.toReversed()]) {
      expect(freePlace(wished, [turned], BOUNDS, 2)).toEqual({ ...wished, isFree: true });
    }
  });

  it('is none where everything is taken, or farther than it may be', () => {
    const all = hullOf([
      [0, 0],
      [300, 0],
      [300, 200],
      [0, 200],
    ]);
    expect(freePlace({ x: 60, y: 50, width: 38, height: 20 }, [all], BOUNDS, 0).isFree).toBe(false);
    const left = hullOf([
      [0, 0],
      [200, 0],
      [200, 200],
      [0, 200],
    ]);
    expect(freePlace({ x: 60, y: 50, width: 38, height: 20 }, [left], BOUNDS, 0, 40).isFree).toBe(false);
    expect(freePlace({ x: 60, y: 50, width: 38, height: 20 }, [left], BOUNDS, 0, 150).isFree).toBe(true);
  });
});

it('makes a band as wide as it is asked, round its line', () => {
  const corners = bandOf([0, 0], [10, 0], 4);
  expect(corners.map(([, y]) => Math.abs(y))).toEqual([2, 2, 2, 2]);
  expect(new Set(corners.map(([x]) => x))).toEqual(new Set([0, 10]));
});

it('drops points inside a hull', () => {
  const hull = hullOf([
    [0, 0],
    [4, 0],
    [4, 4],
    [0, 4],
    [2, 2],
    [1, 3],
  ]);
  expect(hull.length).toBe(4);
});
