import { describe, expect, it } from 'vitest';
import { metalConductionShare } from '../../../src/sim/answers/metal-conduction.ts';
import type { CoreGeometryConfig } from '../../../src/sim/scenario/config/exchangers.ts';
import { shippedConfig } from '../../support/shipped.ts';

describe('metal conduction along a core', () => {
  const geometry = shippedConfig('rolling-road-estate', 'core by its measures, 120 mm deep').core
    .geometry as CoreGeometryConfig;
  const shareAt = (rate: number) => metalConductionShare(geometry, rate);

  it('takes in proportion to one over the heat capacity rate where it is little', () => {
    expect(shareAt(1e5)).toBeLessThan(1e-3);
    expect(shareAt(1e5) / shareAt(2e5)).toBeCloseTo(2, 2);
  });

  it('takes no more than a half: a balanced core whose metal is of one temperature keeps the other', () => {
    expect(shareAt(1e-3)).toBeCloseTo(0.5, 3);
  });
});
