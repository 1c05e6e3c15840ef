import { describe, expect, it } from 'vitest';
import { onScreen, project, type Vector, viewOf } from '../../../src/viewer/scene/projection.ts';

const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

describe.each(['corner', 'above', 'air side'] as const)('the camera %s', (camera) => {
  const { right, up, toward } = viewOf(camera);

  it('has three unit vectors at right angles, right-handed: nothing is stretched or mirrored', () => {
    for (const vector of [right, up, toward]) expect(dot(vector, vector)).toBeCloseTo(1, 12);
    cross(right, up).forEach((value, k) => {
      expect(value).toBeCloseTo(toward[k], 12);
    });
  });

  it('keeps the stack upright', () => {
    const [x, y] = onScreen(viewOf(camera), [0, 0, 1]);
    expect(x).toBeCloseTo(0, 12);
    expect(y).toBeCloseTo(-1, 12);
  });

  it('sees the top, the side where the air enters and the end where the coolant leaves', () => {
    expect(toward[2]).toBeGreaterThan(0);
    expect(toward[1]).toBeLessThan(0);
    expect(toward[0]).toBeGreaterThan(0);
  });
});

it('draws at the scale and place it is given', () => {
  const projection = { view: viewOf('corner'), scale: 100, middle: [30, 40] } as const;
  expect(project(projection, [0, 0, 0])).toEqual([30, 40]);
  const [x, y] = project(projection, projection.view.right);
  expect([x, y]).toEqual([expect.closeTo(130, 9), expect.closeTo(40, 9)]);
});
