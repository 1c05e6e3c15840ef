import { describe, expect, it } from 'vitest';
import { COLUMNS, type ColumnName } from '../../../src/sim/index.ts';
import { TRACE_GROUPS, tracesOf } from '../../../src/viewer/plots/traces.ts';

const offered = TRACE_GROUPS.flatMap(({ traces }) => traces);

describe('traces to choose from', () => {
  it.each<ColumnName>([
    'outsideTemperature',
    'compressorInletPressure',
    'compressorSpeed',
    'recirculation',
    'gasPower',
    'condensationPower',
    'condensateFlow',
    'chargeDewPoint',
  ])('have the air path: %s', (column) => expect(tracesOf([column])).toHaveLength(1));

  it('start their height from nought where they are no temperatures', () => {
    for (const { column, from } of offered) {
      const [unit] = COLUMNS[column];
      if (unit === 'degC') expect(from).toBeUndefined();
    }
    expect(new Set(offered.map(({ column }) => column)).size).toBe(offered.length);
  });
});
