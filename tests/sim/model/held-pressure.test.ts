import { describe, expect, it } from 'vitest';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { crossing, DISPLACED, DRIVEN, onTurbine, settledAir } from '../../support/settled-air.ts';
import { shippedConfig } from '../../support/shipped.ts';
import { shortConfig } from '../../support/short-session.ts';

// A manifold pressure held as long as the machine can: by a controlled bypass round a displacement machine, or by the
// speed of a turbine.

const R = 287.05;
const K = 2 / 7;
const CORE = { effectiveness: 0.7, coolant: 310 };
const COOLER = { effectiveness: 0.9, coolant: 300 };
const TARGET = 160e3;

const withTarget = (target: number | undefined) => {
  const { targetManifoldPressure: _, ...compressor } = DISPLACED.compressor;
  return {
    ...DISPLACED,
    compressor: target === undefined ? compressor : { ...compressor, targetManifoldPressure: target },
  };
};
const withExponent = <C extends Config>(car: C, temperatureExponent: number): C => ({
  ...car,
  engine: { ...car.engine, temperatureExponent },
});

const HIGHEST = 44600;
/** Its core has a drop, so that the pressure ratio which the target takes rises with the engine's speed. */
const TURBINE = (() => {
  const car = onTurbine(DRIVEN, TARGET, HIGHEST);
  return { ...car, core: { ...car.core, airDrop: shippedConfig('session-coupe').core.airDrop } };
})();

const open = (engineSpeed: number) => ({ mode: 'wide open', engineSpeed }) as const;

describe.each([
  ['a controlled bypass', withTarget(TARGET), 5000],
  ['a turbine', TURBINE, 5000],
] as [string, Config, number][])('%s', (_, car, engineSpeed) => {
  it.each([0, 0.25, 0.4])('holds the pressure, and cooling adds mass by the engine alone, b = %d', (exponent) => {
    const warm = settledAir(withExponent(car, exponent), CORE, open(engineSpeed));
    const cool = settledAir(withExponent(car, exponent), COOLER, open(engineSpeed));
    for (const air of [warm, cool]) {
      expect(air.pressures.manifold).toBeCloseTo(TARGET, 6);
      expect(air.shortfall).toBeLessThan(0);
    }
    const cooled = cool.gas.chargeTemperature / warm.gas.chargeTemperature;
    expect(cooled).toBeLessThan(0.95);
    expect(cool.gas.airFlow / warm.gas.airFlow / cooled ** (exponent - 1)).toBeCloseTo(1, 9);
  });
});

describe('a controlled bypass', () => {
  it('returns what the machine sweeps beyond the engine', () => {
    const { gas, pressures } = settledAir(withTarget(TARGET), CORE, open(5000));
    const { sweptVolume, driveRatio, leak } = DISPLACED.compressor;
    const speed = 5000 * driveRatio;
    const efficiency = 1 - (leak * (pressures.ratio - 1)) / (speed / 1000);
    const swept = (efficiency * sweptVolume * (speed / 60) * pressures.inlet) / (R * gas.inletTemperature);
    expect(gas.compressorFlow / swept).toBeCloseTo(1, 9);
    expect(gas.recirculatedFlow).toBeGreaterThan(0.01 * gas.airFlow);
    expect(gas.compressorFlow).toBeCloseTo(gas.airFlow + gas.recirculatedFlow, 12);
  });

  /** Below this engine speed the machine leaks too much for the target. */
  const findLoss = () => crossing((speed) => settledAir(withTarget(TARGET), CORE, open(speed)).shortfall, 1000, 5000);

  it('gives the target up below a speed, and floats there like a machine that has none', () => {
    const lostBelow = findLoss();
    expect(lostBelow).toBeGreaterThan(1200);
    const speed = 0.8 * lostBelow;
    const lost = settledAir(withTarget(TARGET), CORE, open(speed));
    const floating = settledAir(withTarget(undefined), CORE, open(speed));
    expect(lost.shortfall).toBeGreaterThan(0.01);
    expect(lost.pressures.manifold).toBeLessThan(0.99 * TARGET);
    expect(lost.pressures.manifold / floating.pressures.manifold).toBeCloseTo(1, 10);
    expect(lost.gas.airFlow / floating.gas.airFlow).toBeCloseTo(1, 10);
    expect(lost.pressures.ratio / floating.pressures.ratio).toBeCloseTo(1, 10);
    expect(lost.gas.recirculatedFlow).toBe(0);
  });

  it('meets the floating machine there without a step', () => {
    const lostBelow = findLoss();
    const step = 1e-6 * lostBelow;
    const [below, above] = [lostBelow - step, lostBelow + step].map((speed) =>
      settledAir(withTarget(TARGET), CORE, open(speed)),
    );
    expect(below.shortfall).toBeGreaterThan(0);
    expect(above.shortfall).toBeLessThan(0);
    expect(below.shortfall - above.shortfall).toBeLessThan(1e-5);
    expect(Math.abs(below.pressures.manifold / TARGET - 1)).toBeLessThan(1e-5);
    expect(Math.abs(below.gas.airFlow / above.gas.airFlow - 1)).toBeLessThan(1e-5);
    expect(Math.abs(below.gas.dischargeTemperature - above.gas.dischargeTemperature)).toBeLessThan(0.01);
    expect(above.gas.recirculatedFlow / above.gas.airFlow).toBeLessThan(1e-4);
  });

  it('has no shortfall to speak of where no target is set', () => {
    expect(settledAir(withTarget(undefined), CORE, open(1500)).shortfall).toBe(-1);
  });
});

describe('a turbine', () => {
  it('turns as fast as the pressure takes', () => {
    const { gas, pressures, compressor } = settledAir(TURBINE, CORE, open(5000));
    const head = 310.15 * ((173.5 / 100.5) ** K - 1);
    const expected = 46800 * Math.sqrt((303.15 * (pressures.ratio ** K - 1)) / head);
    expect(compressor.rotation / expected).toBeCloseTo(1, 9);
    expect(gas.recirculatedFlow).toBe(0);
    expect(pressures.ratio * pressures.inlet - pressures.coreDrop).toBeCloseTo(TARGET, 6);
  });

  /** Above this engine speed the pressure ratio for the target takes more than the highest speed. */
  const findLoss = () => crossing((speed) => settledAir(TURBINE, CORE, open(speed)).shortfall, 4000, 9000);

  it('gives the target up above a speed, and stays at its highest speed like a machine on a pulley', () => {
    const speed = 1.1 * findLoss();
    const lost = settledAir(TURBINE, CORE, open(speed));
    expect(lost.compressor.rotation).toBe(HIGHEST);
    expect(lost.shortfall).toBeGreaterThan(0.001);
    expect(lost.pressures.manifold).toBeLessThan(TARGET);
    const pulley = { ...DRIVEN, core: TURBINE.core, compressor: { ...DRIVEN.compressor, driveRatio: HIGHEST / speed } };
    const driven = settledAir(pulley, CORE, open(speed));
    expect(lost.pressures.manifold / driven.pressures.manifold).toBeCloseTo(1, 9);
    expect(lost.gas.airFlow / driven.gas.airFlow).toBeCloseTo(1, 9);
    expect(lost.gas.gasPower / driven.gas.gasPower).toBeCloseTo(1, 9);
  });

  it('comes to its highest speed without a step', () => {
    const lostAbove = findLoss();
    const step = 1e-6 * lostAbove;
    const [below, above] = [lostAbove - step, lostAbove + step].map((speed) => settledAir(TURBINE, CORE, open(speed)));
    expect(below.shortfall).toBeLessThan(0);
    expect(above.shortfall).toBeGreaterThan(0);
    expect(above.shortfall - below.shortfall).toBeLessThan(1e-5);
    expect(Math.abs(above.pressures.manifold / TARGET - 1)).toBeLessThan(1e-5);
    expect(Math.abs(below.gas.airFlow / above.gas.airFlow - 1)).toBeLessThan(1e-5);
    expect(below.compressor.rotation / HIGHEST).toBeCloseTo(1, 5);
  });
});

describe('an intake that cannot pass what the target takes', () => {
  // 3 and 3.6 L at 5000 rpm and 160 kPa swallow 0.19 kg/s and more: 20 kPa at 0.08 kg/s come to 113 kPa there, and
  // 100 kPa are outside.
  const choked = <C extends Config>(car: C): C => ({
    ...car,
    intake: { ...car.intake, drop: 20e3, dropAtFlow: 0.08 },
  });
  const taken = (car: Config, flow: number): number => car.intake.drop * (flow / car.intake.dropAtFlow) ** 2;

  it('leaves a controlled bypass closed: it floats like a machine without a target', () => {
    const lost = settledAir(choked(withTarget(TARGET)), CORE, open(5000));
    const floating = settledAir(choked(withTarget(undefined)), CORE, open(5000));
    expect(lost.shortfall).toBe(1);
    expect(lost.pressures.manifold / floating.pressures.manifold).toBeCloseTo(1, 9);
    expect(lost.gas.airFlow / floating.gas.airFlow).toBeCloseTo(1, 9);
    expect(lost.gas.recirculatedFlow).toBe(0);
    expect(lost.pressures.inlet).toBeCloseTo(1e5 - taken(choked(DISPLACED), lost.gas.airFlow), 3);
  });

  it('leaves a turbine at its highest speed, like a machine on a pulley', () => {
    const lost = settledAir(choked(TURBINE), CORE, open(5000));
    const compressor = { ...DRIVEN.compressor, driveRatio: HIGHEST / 5000 };
    const driven = settledAir(choked({ ...DRIVEN, core: TURBINE.core, compressor }), CORE, open(5000));
    expect(lost.shortfall).toBe(1);
    expect(lost.compressor.rotation).toBe(HIGHEST);
    expect(lost.gas.airFlow / driven.gas.airFlow).toBeCloseTo(1, 9);
    expect(lost.pressures.inlet).toBeCloseTo(1e5 - taken(choked(DRIVEN), lost.gas.airFlow), 3);
  });
});

describe('a run on a turbine', () => {
  const coupe = shippedConfig('session-coupe') as typeof DRIVEN;
  const [outLap] = coupe.cycle.before;
  const [pull] = coupe.cycle.block;
  const turbine = onTurbine(coupe, TARGET, HIGHEST);
  const config = {
    ...turbine,
    cycle: { before: [{ ...outLap, duration: 20 }, pull], block: [], repeats: 0, after: [] },
  };
  const series = simulate(config);

  it('records where the target pressure is lost, at the engine speed at which the needed speed passes the highest', () => {
    const lost = series.events.filter(({ kind }) => kind.startsWith('target pressure'));
    expect(lost.map(({ kind }) => kind)).toEqual(['target pressure lost']);
    const { columns } = series;
    const row = columns.time.indexOf(lost[0].time);
    const found = 4700 + ((7200 - 4700) * (lost[0].time - 20)) / pull.duration;
    expect(columns.engineSpeed[row]).toBeCloseTo(found, 6);

    // With the temperatures of that instant: what the engine swallows at the target, the core's drop at that flow and
    // the head that makes up for both.
    const charge = columns.chargeTemperature[row];
    const core = columns.dischargeTemperature[row] + columns.coreOutletTemperature[row];
    const needed = (engineSpeed: number): number => {
      const filling = 0.95 * (charge / 330) ** 0.4;
      const flow = (filling * 3.6e-3 * (engineSpeed / 120) * TARGET) / (R * charge);
      const before = Math.sqrt(TARGET ** 2 + 8000 * (flow / 0.36) ** 1.8 * 1.6 * R * core);
      const head = 310.15 * ((173.5 / 100.5) ** K - 1);
      const inlet = 273.15 + 31 + 6;
      return 46800 * Math.sqrt((inlet * ((before / 100.5e3) ** K - 1)) / head);
    };
    const expected = crossing((engineSpeed) => needed(engineSpeed) - HIGHEST, 3000, 9000);
    expect(expected).toBeGreaterThan(5000);
    expect(expected).toBeLessThan(7000);
    expect(Math.abs(found - expected), `lost at ${found} rpm, expected ${expected}`).toBeLessThan(1);
  });

  it('holds the pressure before and the speed behind', () => {
    const { columns, phases, events } = series;
    const time = events[0].time;
    expect(events[0].kind).toBe('target pressure lost');
    for (let row = phases[1].firstRow; row <= phases[1].lastRow; row++) {
      if (columns.time[row] < time) {
        expect(columns.manifoldPressure[row]).toBeCloseTo(TARGET, 4);
        expect(columns.compressorSpeed[row]).toBeLessThan(HIGHEST);
      }
      if (columns.time[row] > time) {
        expect(columns.manifoldPressure[row]).toBeLessThan(TARGET);
        expect(columns.compressorSpeed[row]).toBe(HIGHEST);
      }
    }
    expect(series.energy.worstStepGap).toBeLessThan(1e-9);
  });
});

describe('a run with a controlled bypass', () => {
  const target = 160e3;
  const series = simulate(shortConfig({ 'compressor.targetManifoldPressure': target / 1e3 }));
  const floating = simulate(shortConfig());

  it('loses the target at the foot of each pull and regains it where the floating machine reaches it', () => {
    const events = series.events.filter(({ kind }) => kind.startsWith('target pressure'));
    const pulls = series.phases.filter(({ kind }) => kind === 'pull');
    expect(pulls).toHaveLength(2);
    expect(events.map(({ kind }) => kind)).toEqual(
      pulls.flatMap(() => ['target pressure lost', 'target pressure regained']),
    );
    pulls.forEach(({ start, end, firstRow, lastRow }, k) => {
      const [lost, regained] = events.slice(2 * k, 2 * k + 2);
      expect(lost.time).toBe(start);
      expect(regained.time).toBeGreaterThan(start + 0.1);
      expect(regained.time).toBeLessThan(end);
      const { time, manifoldPressure, recirculation } = series.columns;
      for (let row = firstRow; row <= lastRow; row++) {
        if (time[row] < regained.time) expect(manifoldPressure[row]).toBeLessThan(target);
        if (time[row] > regained.time) expect(manifoldPressure[row]).toBeCloseTo(target, 4);
        if (time[row] !== regained.time) expect(recirculation[row] > 0).toBe(time[row] > regained.time);
      }
    });
    // Until it holds its target the car is the floating one, so in the first pull both reach it at the same time.
    const { time, manifoldPressure } = floating.columns;
    const { firstRow } = floating.phases[1];
    let row = firstRow;
    while (manifoldPressure[row + 1] < target) row++;
    const share = (target - manifoldPressure[row]) / (manifoldPressure[row + 1] - manifoldPressure[row]);
    const reached = time[row] + share * (time[row + 1] - time[row]);
    // Linear between recorded instants.
    expect(Math.abs(events[1].time - reached)).toBeLessThan(0.1);
  });
});
