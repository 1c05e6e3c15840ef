import { describe, expect, it } from 'vitest';
import type { AirPath, AirPathInputs } from '../../../src/sim/model/air-path.ts';
import { COLUMNS, type ColumnName } from '../../../src/sim/results/time-series.ts';
import type { PhaseConfig } from '../../../src/sim/scenario/config/cycle.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { DISPLACED, DRIVEN, settledAir } from '../../support/settled-air.ts';
import { shortConfig } from '../../support/short-session.ts';

// Balances of mass and heat, written out here with the heat capacity of dry air; the core is an effectiveness against
// coolant of one temperature.
const CP = 1006;
const R = 287.05;
const FRESH = 303.15;
const CORE = { effectiveness: 0.7, coolant: 312 };

const withLeak = <C extends Config>(car: C, leakPast: number): C => ({ ...car, core: { ...car.core, leakPast } });
const withBypass = <C extends Config>(car: C, bypass: Partial<Config['bypass']>): C => ({
  ...car,
  bypass: { ...car.bypass, ...bypass },
});
const withDriveRatio = (driveRatio: number) => ({
  ...DISPLACED,
  compressor: { ...DISPLACED.compressor, driveRatio },
});

/** Heat into the gas is what the charge takes along and what the core takes out. */
function expectHeatBalance(air: AirPath): void {
  const { gas } = air;
  const coreOutlet = gas.coreInlet - CORE.effectiveness * (gas.coreInlet - CORE.coolant);
  const intoCore = gas.coreFlow * CP * (gas.coreInlet - coreOutlet);
  const taken = gas.airFlow * CP * (gas.chargeTemperature - FRESH);
  expect((taken + intoCore) / gas.gasPower).toBeCloseTo(1, 8);
  expect(gas.outflow / (gas.airFlow * CP * gas.chargeTemperature)).toBeCloseTo(1, 10);
}

describe('air that leaks past the core', () => {
  const open = { mode: 'wide open', engineSpeed: 5000 } as const;

  it.each([0.05, 0.2, 0.6])('%d of it: the charge is that much of discharge less core outlet warmer', (leak) => {
    const tight = settledAir(DISPLACED, CORE, open);
    const { gas } = settledAir(withLeak(DISPLACED, leak), CORE, open);
    const coreOutlet = gas.dischargeTemperature - CORE.effectiveness * (gas.dischargeTemperature - CORE.coolant);
    const rise = leak * (gas.dischargeTemperature - coreOutlet);
    expect(gas.chargeTemperature - coreOutlet).toBeCloseTo(rise, 9);
    expect(rise).toBeGreaterThan(2);
    expect(gas.chargeTemperature).toBeGreaterThan(tight.gas.chargeTemperature);
    expect(gas.coreFlow).toBeCloseTo((1 - leak) * gas.airFlow, 12);
  });

  it.each([0, 0.3])('takes nothing else: heat balances with %d leaking', (leak) => {
    expectHeatBalance(settledAir(withLeak(DISPLACED, leak), CORE, open));
    for (const shareAfterCore of [0, 0.4, 1]) {
      expectHeatBalance(settledAir(withLeak(withBypass(DRIVEN, { shareAfterCore, recirculation: 2 }), leak), CORE, {}));
    }
  });

  // What passes the core comes out as from a core of eps (1 - leak); so the closed forms of the routes hold with that.
  it.each([
    [0.5, 0, 0.3],
    [2, 0.4, 0.3],
    [2, 1, 0.3],
    [6, 1, 0.1],
  ])('r = %d, share %d after the core, leak %d: the closed form of the routes', (recirculation, share, leak) => {
    const car = withLeak(withBypass(DRIVEN, { shareAfterCore: share, recirculation }), leak);
    const { gas } = settledAir(car, CORE, { freshAir: FRESH });
    const s = recirculation / (1 + recirculation);
    const eps = CORE.effectiveness * (1 - leak);
    const rise = gas.gasPower / (gas.compressorFlow * CP);
    const discharge = CORE.coolant + ((1 - s) * (FRESH - CORE.coolant) + rise) / (1 - s * (1 - eps * share));
    expect(gas.dischargeTemperature).toBeCloseTo(discharge, 6);
    expect(gas.inletTemperature).toBeCloseTo(discharge - rise, 6);
    expect(gas.chargeTemperature).toBeCloseTo(discharge - eps * (discharge - CORE.coolant), 6);
  });
});

describe('a leak of the bypass path', () => {
  it('of all air makes the after-core route the before-core one', () => {
    const before = shortConfig({ 'bypass.route': 'before core' });
    const cutAway = shortConfig({ 'bypass.route': 'after core', 'bypass.leak': 1 });
    expect(cutAway.bypass).toEqual(before.bypass);
    expect(simulate(cutAway).columns.chargeTemperature).toEqual(simulate(before).columns.chargeTemperature);
    expect(shortConfig({ 'bypass.route': 'after core' }).bypass).not.toEqual(before.bypass);
  });

  it('of part of it leaves the rest after the core', () => {
    const share = (edits: Record<string, string | number>) => shortConfig(edits).bypass.shareAfterCore;
    expect(share({ 'bypass.route': 'after core', 'bypass.leak': 0.3 })).toBeCloseTo(0.7, 12);
    const parts = { 'bypass.route': 'part of each', 'bypass.shareAfterCore': 0.5, 'bypass.leak': 0.3 };
    expect(share(parts)).toBeCloseTo(0.35, 12);
    expect(share({ 'bypass.route': 'before core', 'bypass.leak': 0.3 })).toBe(0);
  });
});

describe.each([
  ['upstream', 0.55],
  ['downstream', 0.3],
] as const)('a small compressor with a free bypass, throttle %s', (throttle, driveRatio) => {
  const car = (shareAfterCore: number) =>
    withBypass(withDriveRatio(driveRatio), { throttle, shareAfterCore, drop: 2000, dropAtFlow: 0.02 });

  it.each([
    ['before the core', 0],
    ['part of each', 0.4],
    ['behind it', 1],
  ])('passes air forward, %s: mass and heat by hand', (_, share) => {
    const air = settledAir(car(share), CORE, {});
    const { gas, pressures } = air;
    const forward = -gas.recirculatedFlow;
    expect(forward).toBeGreaterThan(0.05 * gas.airFlow);
    expect(pressures.ratio).toBeLessThan(1);

    // Mass: the compressor takes what it sweeps of outside air, the bypass the rest of what the engine takes.
    const speed = 1200 * driveRatio;
    const efficiency = 1 - (DISPLACED.compressor.leak * (pressures.ratio - 1)) / (speed / 1000);
    const swept = (efficiency * DISPLACED.compressor.sweptVolume * (speed / 60) * pressures.inlet) / (R * FRESH);
    expect(gas.compressorFlow / swept).toBeCloseTo(1, 9);
    expect(gas.airFlow).toBeCloseTo(swept + forward, 9);
    expect(gas.coreFlow).toBeCloseTo(swept + (1 - share) * forward, 9);
    const taken = pressures.inlet - 2000 * (forward / 0.02) ** 2;
    expect(pressures.ratio * pressures.inlet).toBeCloseTo(taken, 4);

    // Heat: nothing comes back to the inlet; the forward air joins at outside temperature before and behind the core.
    expect(gas.inletTemperature).toBe(FRESH);
    expect(gas.dischargeTemperature).toBeCloseTo(FRESH + gas.gasPower / (swept * CP), 9);
    const coreInlet = (swept * gas.dischargeTemperature + (1 - share) * forward * FRESH) / gas.coreFlow;
    expect(gas.coreInlet).toBeCloseTo(coreInlet, 9);
    const coreOutlet = coreInlet - CORE.effectiveness * (coreInlet - CORE.coolant);
    const charge = (gas.coreFlow * coreOutlet + share * forward * FRESH) / gas.airFlow;
    expect(gas.chargeTemperature).toBeCloseTo(charge, 8);
    expectHeatBalance(air);
  });
});

describe('casing and plenum in the loop', () => {
  /** Casing near 350 K by 12 W/K of everything else, plenum near 335 K by 7 W/K. */
  const metal: Partial<AirPathInputs> = {
    casingHeat: 12 * 350,
    casingConductance: 12,
    plenumHeat: 7 * 335,
    plenumConductance: 7,
  };
  it.each([
    [0, 0],
    [0.4, 0.2],
    [1, 0],
    [1, 0.2],
  ])('share %d after the core, %d leaking past it: mixing, metal and heat balance', (shareAfterCore, leak) => {
    const driven = withLeak(withBypass(DRIVEN, { shareAfterCore, recirculation: 1.5 }), leak);
    const car = {
      ...driven,
      casing: { ...driven.casing, toDischargeAir: 22 },
      plenum: { ...driven.plenum, toChargeAir: 9 },
    };
    const { gas } = settledAir(car, CORE, metal);
    const m = gas.airFlow;
    const mixed =
      m * FRESH + 1.5 * m * ((1 - shareAfterCore) * gas.dischargeTemperature + shareAfterCore * gas.plenumOutlet);
    expect(gas.inletTemperature).toBeCloseTo(mixed / (2.5 * m), 8);

    const passed = Math.exp(-22 / (2.5 * m * CP));
    const casing = gas.casingTemperature;
    expect(gas.dischargeTemperature).toBeCloseTo(casing + (gas.rotorOutlet - casing) * passed, 9);
    const toCasing = 2.5 * m * CP * (gas.rotorOutlet - gas.dischargeTemperature);
    expect(12 * (casing - 350)).toBeCloseTo(toCasing, 6);

    const coreOutlet = gas.coreInlet - CORE.effectiveness * (gas.coreInlet - CORE.coolant);
    const intoPlenum = coreOutlet + leak * (gas.coreInlet - coreOutlet);
    const through = m * (1 + 1.5 * shareAfterCore);
    const wall = gas.plenumTemperature;
    expect(gas.plenumOutlet).toBeCloseTo(wall + (intoPlenum - wall) * Math.exp(-9 / (through * CP)), 8);
    const toPlenum = through * CP * (intoPlenum - gas.plenumOutlet);
    expect(7 * (wall - 335)).toBeCloseTo(toPlenum, 6);
    expect(gas.chargeTemperature).toBe(gas.plenumOutlet);

    const intoCore = gas.coreFlow * CP * (gas.coreInlet - coreOutlet);
    const away = m * CP * (gas.chargeTemperature - FRESH) + intoCore + toCasing + toPlenum;
    expect(away / gas.gasPower).toBeCloseTo(1, 8);
  });
});

describe('engine off', () => {
  const soakIn = (car: Config, soak: Partial<PhaseConfig> = {}): Config => {
    const [hotSoak] = car.cycle.after;
    return {
      ...car,
      cycle: {
        before: [{ ...hotSoak, ...soak, duration: 30 }, ...car.cycle.before],
        block: [],
        repeats: 0,
        after: [hotSoak],
      },
    };
  };
  const plain = shortConfig();
  const CARS: [string, Config][] = [
    ['as it is', plain],
    [
      'bolted to nothing',
      {
        ...plain,
        casing: { ...plain.casing, toDischargeAir: 0, toBay: 0, toPlenum: 0, toCoreFlange: 0, toOil: 0 },
        plenum: { ...plain.plenum, toChargeAir: 0, toEngine: 0, toBay: 0 },
      },
    ],
    ['with the air taken behind the core', shortConfig({ 'bypass.route': 'after core', 'core.leakPast': 0.1 })],
  ];

  it.each(CARS)('%s: air takes the temperature of its metal, and no number is lost', (_, car) => {
    const { columns, phases, rowCount, outcome } = simulate(soakIn(car, { pumpVoltageRatio: 1 }));
    expect(outcome.kind).toBe('finished');
    // The car has one exchanger and no extra heat sink.
    const isThere = (name: ColumnName) => !/second|Second|heatSink/.test(name);
    for (const name of (Object.keys(COLUMNS) as ColumnName[]).filter(isThere)) {
      for (let row = 0; row < rowCount; row++)
        expect(Number.isFinite(columns[name][row]), `${name}, row ${row}`).toBe(true);
    }
    const soaks = phases.filter(({ kind }) => kind === 'hot soak');
    expect(soaks).toHaveLength(2);
    for (const { firstRow, lastRow } of soaks) {
      for (let row = firstRow; row <= lastRow; row++) {
        expect(columns.chargeTemperature[row]).toBeCloseTo(columns.plenumTemperature[row], 4);
        expect(columns.dischargeTemperature[row]).toBeCloseTo(columns.casingTemperature[row], 4);
        expect(columns.coreOutletTemperature[row]).toBeCloseTo(columns.coreMetalMean[row], 4);
        for (const name of [
          'airFlow',
          'recirculation',
          'gasPower',
          'drivePower',
          'airToCorePower',
          'coreAirDrop',
        ] as const) {
          expect(columns[name][row], name).toBe(0);
        }
      }
    }
    // The plenum was not at one temperature all along, or the comparison would say nothing.
    expect(columns.plenumTemperature[0]).not.toBe(columns.coreMetalMean[0]);
  });
});
