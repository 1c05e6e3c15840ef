import { describe, expect, it } from 'vitest';
import type { TimeSeries } from '../../src/sim/results/time-series.ts';
import { simulate } from '../../src/sim/simulate.ts';
import { shippedConfig } from '../support/shipped.ts';

// A plain lag, tau dTi/dt = T - Ti, stands still just where it meets what it follows: its highest and lowest readings
// lie on the true curve. With part of the plenum's metal in the reading they do not.

interface Reading {
  readonly extremes: number;
  /** spans in which the reading moves away from the true temperature */
  readonly away: number;
}

function readingIn({ columns, phases }: TimeSeries): Reading {
  const { time, chargeTemperature, indicatedTemperature } = columns;
  let [extremes, away, side] = [0, 0, 0];
  for (const { firstRow, lastRow } of phases) {
    for (let row = firstRow; row < lastRow; row++) {
      if (time[row + 1] === time[row]) continue;
      const before = Math.sign(chargeTemperature[row] - indicatedTemperature[row]);
      const behind = Math.sign(chargeTemperature[row + 1] - indicatedTemperature[row + 1]);
      const moved = Math.sign(indicatedTemperature[row + 1] - indicatedTemperature[row]);
      if (before === behind && moved !== before) away++;
      if (moved * side < 0) extremes++;
      side = moved;
    }
  }
  return { extremes, away };
}

function readingWith(airShare: number): Reading {
  const config = shippedConfig('motorway-wagon');
  const sensor = { ...config.sensor, airShare };
  return readingIn(simulate({ ...config, sensor }, { tolerance: 0.01, interval: 1 }));
}

describe('the indicated temperature through cruise, pull, soak and restart', () => {
  it('turns only where it crosses the true one, where the sensor is in the air alone', () => {
    const { extremes, away } = readingWith(1);
    expect(extremes).toBeGreaterThanOrEqual(4);
    expect(away).toBe(0);
  });

  it('turns elsewhere where the housing takes part', () => {
    expect(readingWith(0.9).away).toBeGreaterThan(10);
  });
});
