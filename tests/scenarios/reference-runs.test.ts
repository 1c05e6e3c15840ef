import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type PullSummary, summarisePulls } from '../../src/sim/answers/pull-summary.ts';
import { countPulls } from '../../src/sim/answers/pulls-to-limit.ts';
import { simulate } from '../../src/sim/simulate.ts';
import { shippedConfig } from '../support/shipped.ts';

interface ReferencePull {
  readonly peak_degC: number;
  readonly rise_K: number;
  readonly indicated_degC: number;
  readonly crossed_at_share: number | null;
  readonly air_kg_s: number;
  readonly pressure_ratio: number;
  readonly manifold_kPa: number;
  readonly discharge_degC: number;
  readonly drive_kW: number;
  readonly core_drop_kPa: number;
  readonly coolant_L_min: number;
  readonly coolant_in_degC: number;
  readonly coolant_out_degC: number;
  readonly heat_kJ: number;
}
interface ReferenceRun {
  readonly scenario: string;
  readonly variant: string;
  readonly pulls_to_limit: number;
  readonly count_is_reference: boolean;
  readonly energy_kJ: Readonly<Record<string, number>>;
  readonly pulls: readonly ReferencePull[];
}

/** Independently written model of the same physics; see the head of the file. Demo data, invented. */
const REFERENCE: readonly ReferenceRun[] = JSON.parse(
  readFileSync(new URL('./reference-runs.json', import.meta.url), 'utf8'),
).runs;

const KELVIN = 273.15;
/** The agreement that reference states is +-3 % or 0.7 K on a peak; a second reader came within 0.01 K, so do we. */
const PEAK = 0.03;
const RELATIVE = 1e-3;

const results = new Map<ReferenceRun, { pulls: PullSummary[]; ambient: number; energy: Record<string, number> }>();
for (const run of REFERENCE) {
  const config = shippedConfig(run.scenario, run.variant === 'stock' ? undefined : run.variant);
  const series = simulate(config);
  results.set(run, {
    pulls: summarisePulls(series, config.limit.chargeTemperature),
    ambient: config.ambient.temperature,
    energy: { ...series.energy.terms, ...series.energy.internal },
  });
}
const resultOf = (run: ReferenceRun) => {
  const result = results.get(run);
  if (result === undefined) throw new Error('no result');
  return result;
};

describe.each(REFERENCE)('$scenario, $variant', (run) => {
  const { pulls, energy } = resultOf(run);

  it('makes the same pulls to the limit', () => {
    expect(run.count_is_reference).toBe(true);
    expect(pulls).toHaveLength(run.pulls.length);
    expect(countPulls(pulls)).toBe(run.pulls_to_limit);
  });

  it('agrees pull by pull, far inside the stated bands', () => {
    run.pulls.forEach((expected, k) => {
      const { peak, indicatedPeak, atEnd, heatIntoCore, crossedAtShare } = pulls[k];
      const near = (got: number, want: number, within: number, what: string) =>
        expect(Math.abs(got - want), `pull ${k + 1}, ${what}: ${got}, reference ${want}`).toBeLessThan(within);
      const share = (got: number, want: number, what: string) => near(got, want, RELATIVE * Math.abs(want), what);
      near(peak - KELVIN, expected.peak_degC, PEAK, 'peak');
      near(indicatedPeak - KELVIN, expected.indicated_degC, PEAK, 'indicated peak');
      near(atEnd.coolantIntoCore - KELVIN, expected.coolant_in_degC, PEAK, 'coolant in');
      near(atEnd.coolantOutOfCore - KELVIN, expected.coolant_out_degC, PEAK, 'coolant out');
      near(atEnd.dischargeTemperature - KELVIN, expected.discharge_degC, PEAK, 'discharge');
      share(atEnd.airFlow, expected.air_kg_s, 'air');
      share(atEnd.pressureRatio, expected.pressure_ratio, 'pressure ratio');
      share(atEnd.manifoldPressure / 1e3, expected.manifold_kPa, 'manifold pressure');
      share(atEnd.drivePower / 1e3, expected.drive_kW, 'drive power');
      share(atEnd.coreAirDrop / 1e3, expected.core_drop_kPa, 'core drop');
      share(atEnd.coolantFlow * 6e4, expected.coolant_L_min, 'coolant flow');
      share(heatIntoCore / 1e3, expected.heat_kJ, 'heat');
      if (expected.crossed_at_share === null) expect(crossedAtShare).toBeUndefined();
      else near(crossedAtShare ?? Number.NaN, expected.crossed_at_share, 0.006, 'share at the crossing');
    });
  });

  it('moves the same energies', () => {
    // The reference counts what the coolant side gives away as positive.
    const pairs: [string, number][] = [
      ['airToCore', run.energy_kJ.air_to_core],
      ['exchanger', -run.energy_kJ.exchanger],
      ['pump', run.energy_kJ.pump],
      ['lines', run.energy_kJ.lines],
      ['reservoir', run.energy_kJ.tank],
      ['coreBay', run.energy_kJ.bay_core],
      ['casingToCore', run.energy_kJ.flange],
      ['shaft', run.energy_kJ.shaft],
    ];
    for (const [name, expected] of pairs) {
      expect(Math.abs(energy[name] / 1e3 - expected), name).toBeLessThan(0.15 + 1e-3 * Math.abs(expected));
    }
  });
});

describe.each(['ridge-roadster', 'rolling-road-estate'])('%s: the variants', (scenario) => {
  const runs = REFERENCE.filter((run) => run.scenario === scenario);
  it.each(['first', 'last'] as const)('rank the same by %s peak wherever two differ by more than 0.3 K', (which) => {
    const pick = <T>(list: readonly T[]): T => (which === 'first' ? list[0] : list[list.length - 1]);
    let compared = 0;
    for (const a of runs) {
      for (const b of runs) {
        const apart = pick(a.pulls).peak_degC - pick(b.pulls).peak_degC;
        if (apart <= 0.3) continue;
        compared++;
        expect(pick(resultOf(a).pulls).peak, `${a.variant} over ${b.variant}`).toBeGreaterThan(
          pick(resultOf(b).pulls).peak,
        );
      }
    }
    expect(compared).toBeGreaterThan(20);
  });
});
