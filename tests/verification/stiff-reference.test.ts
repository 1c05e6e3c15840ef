import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { summarisePulls } from '../../src/sim/answers/pull-summary.ts';
import { simulate } from '../../src/sim/simulate.ts';
import { shippedConfig } from '../support/shipped.ts';

interface StiffRun {
  readonly scenario: 'S1' | 'S4';
  readonly variant: string;
  readonly pulls: readonly { readonly peak_degC: number }[];
}

/**
 * The same equations on the same cells by scipy's stiff solvers at tight tolerances, written independently; the
 * script that made the numbers stands beside them.
 */
const RUNS: readonly StiffRun[] = JSON.parse(
  readFileSync(new URL('./stiff-reference/expected.json', import.meta.url), 'utf8'),
).runs;
const FILES = { S1: 'ridge-roadster', S4: 'rolling-road-estate' } as const;
const WITHIN = 0.02;

describe('against a general-purpose stiff solver', () => {
  it('there are runs of both cars', () => {
    expect(new Set(RUNS.map(({ scenario }) => scenario))).toEqual(new Set(['S1', 'S4']));
  });

  it.each(RUNS)(
    '$scenario $variant: every peak within 0.02 K at the default tolerance',
    ({ scenario, variant, pulls }) => {
      const config = shippedConfig(FILES[scenario], variant === 'stock' ? undefined : variant);
      const core = { ...config.core, cellsAlongAir: 24, cellsAlongCoolant: 12 };
      const ours = summarisePulls(simulate({ ...config, core }), config.limit.chargeTemperature);
      pulls.forEach(({ peak_degC }, k) => {
        expect(Math.abs(ours[k].peak - 273.15 - peak_degC), `pull ${k + 1}`).toBeLessThan(WITHIN);
      });
    },
  );
});
