import { describe, expect, it } from 'vitest';
import { coreField } from '../../../src/sim/results/field.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { shippedConfig } from '../../support/shipped.ts';

const hand = {
  nx: 2,
  ny: 3,
  metal: Float32Array.from({ length: 12 }, (_, k) => 273.15 + k),
  coolant: new Float32Array(12),
  air: new Float32Array(12),
};

describe('a core field', () => {
  it('is addressed by row, cell along the air, cell along the coolant', () => {
    const field = coreField(hand, 'metal');
    expect(field.shape).toEqual([2, 2, 3]);
    expect(field.get(0, 0, 2) - 273.15).toBeCloseTo(2, 4);
    expect(field.get(1, 1, 0) - 273.15).toBeCloseTo(9, 4);
  });

  it('is hottest where the charge comes in and the coolant leaves, coldest where the charge leaves and the coolant comes in', () => {
    const config = shippedConfig('rolling-road-estate');
    const series = simulate(config, { fields: true });
    const pull = series.phases.find(({ kind }) => kind === 'pull');
    if (series.core === undefined || pull === undefined) throw new Error('nothing recorded');
    const core = coreField(series.core, 'metal').pick(pull.lastRow);
    const [nx, ny] = core.shape;
    const corners = [core.get(0, ny - 1), core.get(0, 0), core.get(nx - 1, ny - 1), core.get(nx - 1, 0)];
    expect(Math.max(...corners)).toBe(corners[0]);
    expect(Math.min(...corners)).toBe(corners[3]);
    const coolant = coreField(series.core, 'coolant').pick(pull.lastRow);
    const air = coreField(series.core, 'air').pick(pull.lastRow);
    for (let j = 0; j < ny; j++) expect(air.get(0, j)).toBeGreaterThan(air.get(nx - 1, j));
    for (let i = 0; i < nx; i++) expect(coolant.get(i, ny - 1)).toBeGreaterThan(coolant.get(i, 0));
    // In every cell heat goes from air through metal into coolant.
    for (let i = 0; i < nx; i++) {
      for (let j = 0; j < ny; j++) {
        expect(air.get(i, j)).toBeGreaterThan(core.get(i, j));
        expect(core.get(i, j)).toBeGreaterThan(coolant.get(i, j));
      }
    }
  });
});
