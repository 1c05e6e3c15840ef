import { describe, expect, it } from 'vitest';
import { logSpaced } from '../../../src/sim/kernels/log-table.ts';
import { AirPressures } from '../../../src/sim/model/air-pressures.ts';
import { conductanceAt } from '../../../src/sim/model/conductance.ts';
import { airDropTimesDensity, coolantDropAt } from '../../../src/sim/model/drop-laws.ts';
import type { AirDropLaw, ConductanceLaw, CoolantDropLaw } from '../../../src/sim/scenario/config/exchangers.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { conductanceSideBySide, scaledAirDrop, scaledConductance } from '../../../src/sim/scenario/laws.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { powerOf } from '../../support/power-law.ts';
import { shippedConfig } from '../../support/shipped.ts';

const FLOWS = logSpaced(0.004, 1.2, 13);
const config = shippedConfig('rolling-road-estate');

/** Laws by test points as curves through thirteen points: by definition the same between them. */
function asTable(law: ConductanceLaw): ConductanceLaw {
  const { reference, atFlow, exponent, floor } = powerOf(law);
  const value = FLOWS.map((flow) => reference * (flow / atFlow) ** exponent);
  return { kind: 'table', flow: FLOWS, value, floor: floor * reference };
}

function dropAsTable(law: AirDropLaw): AirDropLaw {
  const { drop, atFlow, atDensity, exponent } = powerOf(law);
  const dropTimesDensity = FLOWS.map((flow) => drop * (flow / atFlow) ** exponent * atDensity);
  return { kind: 'table', flow: FLOWS, dropTimesDensity, acceleration: 0 };
}

function coolantDropAsTable(law: CoolantDropLaw): CoolantDropLaw {
  const { factor } = powerOf(law);
  const flow = FLOWS.map((each) => each / 1000);
  return { kind: 'table', flow, drop: flow.map((each) => factor * each ** 1.8) };
}

const { core } = config;
const BY_TABLES: Config = {
  ...config,
  core: {
    ...core,
    airConductance: asTable(core.airConductance),
    coolantConductance: asTable(core.coolantConductance),
    airDrop: dropAsTable(core.airDrop),
    coolantDrop: coolantDropAsTable(core.coolantDrop),
  },
};

describe('a core by curves', () => {
  it('whose curves are those of test points runs like the core by test points', () => {
    const run = simulate(config);
    const byTables = simulate(BY_TABLES);
    expect(byTables.rowCount).toBe(run.rowCount);
    const last = run.rowCount - 1;
    for (const name of ['chargeTemperature', 'coolantFlow', 'coreAirDrop', 'manifoldPressure'] as const) {
      for (const row of [last >> 2, last >> 1, last]) {
        expect(Math.abs(byTables.columns[name][row] / run.columns[name][row] - 1), name).toBeLessThan(1e-6);
      }
    }
  });

  it('keeps its floor without flow, whatever the slope says', () => {
    const law: ConductanceLaw = { kind: 'table', flow: [0.1, 0.2], value: [300, 450], floor: 120 };
    expect(conductanceAt(law, 0)).toBe(120);
    expect(conductanceAt(law, 1e-6)).toBe(120);
    expect(conductanceAt(law, -0.2)).toBeCloseTo(450, 12);
  });

  it('can be scaled, and two stand side by side', () => {
    for (const law of [core.coolantConductance, BY_TABLES.core.coolantConductance]) {
      expect(conductanceAt(scaledConductance(law, 1.2), 0.17)).toBeCloseTo(1.2 * conductanceAt(law, 0.17), 9);
      expect(conductanceAt(scaledConductance(law, 1.2), 0)).toBeCloseTo(1.2 * conductanceAt(law, 0), 9);
      expect(conductanceAt(conductanceSideBySide(law, 2), 0.34)).toBeCloseTo(2 * conductanceAt(law, 0.17), 9);
    }
    for (const law of [core.airDrop, BY_TABLES.core.airDrop]) {
      expect(airDropTimesDensity(scaledAirDrop(law, 0.3), 0.2)).toBeCloseTo(0.3 * airDropTimesDensity(law, 0.2), 9);
      expect(airDropTimesDensity(scaledAirDrop(law, 0), 0.2)).toBe(0);
      expect(airDropTimesDensity(law, 0)).toBe(0);
    }
    expect(coolantDropAt(BY_TABLES.core.coolantDrop, 0)).toBe(0);
  });
});

describe('acceleration in a core that cools', () => {
  // Incompressible momentum by hand: G^2 (1/rho3 - 1/rho2) with a = 1/A^2, at nearly constant pressure.
  const area = 0.02;
  const law: AirDropLaw = {
    kind: 'table',
    flow: [0.1, 1],
    dropTimesDensity: [1e-9, 1e-9],
    acceleration: 1 / area ** 2,
  };

  it('gives back pressure as the air slows down', () => {
    const pressures = new AirPressures({ ...config, core: { ...core, airDrop: law } });
    const [hot, cold, p] = [400, 320, 180e3];
    pressures.setInstant({ manifoldPressure: p, outsidePressure: 100e3, coreInletGuess: hot, coreOutlet: cold });
    pressures.inlet = 100e3;
    pressures.ratio = 1.8;
    pressures.dropBehind(0.3, hot);
    const byHand = ((0.3 / area) ** 2 * 287.05 * (cold - hot)) / p;
    expect(byHand).toBeLessThan(-20);
    expect(Math.abs(pressures.coreDrop / byHand - 1)).toBeLessThan(1e-3);
  });
});
