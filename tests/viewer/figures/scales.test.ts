import { expect, it } from 'vitest';
import { placeOn } from '../../../src/viewer/figures/scales.tsx';

it('puts values on paper in a straight line, downwards too', () => {
  const x = placeOn([40, 60], 10, 110);
  expect([x(40), x(45), x(60), x(70)]).toEqual([10, 35, 110, 160]);
  const y = placeOn([0, 8], 100, 20);
  expect([y(0), y(2), y(8)]).toEqual([100, 80, 20]);
});
