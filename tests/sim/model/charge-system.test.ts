import { describe, expect, it } from 'vitest';
import { FILE_WORDING, written } from '../../../src/sim/answers/wording.ts';
import { conductanceAt } from '../../../src/sim/model/conductance.ts';
import { sensorTimeConstant } from '../../../src/sim/model/sensor.ts';
import type { Outcome, TimeSeries } from '../../../src/sim/results/time-series.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { type Edits, shortConfig, shortDocument } from '../../support/short-session.ts';

const KELVIN = 273.15;

function stoppedBy(edits: Edits): { series: TimeSeries; outcome: Extract<Outcome, { kind: 'stopped' }> } {
  const series = simulate(shortConfig(edits));
  const { outcome } = series;
  if (outcome.kind !== 'stopped') throw new Error(`ended as ${outcome.kind}`);
  return { series, outcome };
}

/** Water under a cap that makes 200 kPa: boils at 120.21 degC (steam tables, IAPWS-IF97, saturation at 0.2 MPa). */
const WATER_200_KPA = { 'coolant.glycolByVolume': 0, 'coolant.capPressure': 100.5 };
/** 1 m of 4 mm bore: next to no flow. */
const PINCHED = { 'lines.afterPump': { length: 1, bore: 4, lossCoefficient: 500 } };

describe('a run whose coolant boils', () => {
  const hot = { ...WATER_200_KPA, ...PINCHED, 'compressor.driveRatio': 3, 'cycle.1.phases.0.duration': 60 };

  it('stops with time, place and numbers, next to no flow through a hot core', () => {
    const { outcome } = stoppedBy(hot);
    expect(written(outcome.reason, FILE_WORDING)).toMatch(
      /^coolant boils in the core: 120\.2 degC reached, boiling point 120\.2 degC \(100\.5 kPa cap, 99\.5 kPa outside, plain water\), coolant flow 0\.\d L\/min$/,
    );
    expect(outcome.time).toBeGreaterThan(16);
  });

  it('says the mix, and what plain water would bear', () => {
    // IAPWS-IF97 and Perry's Handbook (2008), table 2-8, ideal mixture at 200 kPa: 402.12 K; water 120.21 degC.
    const { outcome } = stoppedBy({
      'coolant.glycolByVolume': 50,
      'coolant.capPressure': 100.5,
      'start.coolant': 129.5,
    });
    expect(written(outcome.reason, FILE_WORDING)).toContain(
      'boiling point 129.0 degC (100.5 kPa cap, 99.5 kPa outside, 50 % ethylene glycol as an ideal mixture; plain water 120.2 degC)',
    );
  });

  it('keeps everything up to then, the moment itself included', () => {
    const { series, outcome } = stoppedBy(hot);
    const last = series.rowCount - 1;
    expect(series.columns.time[last]).toBe(outcome.time);
    expect(series.columns.hottestCoolant[last] - KELVIN).toBeCloseTo(120.21, 1);
    const before = simulate(shortConfig({ ...hot, 'coolant.capPressure': 250 }));
    let row = 0;
    while (before.columns.time[row] <= series.columns.time[last - 1]) row++;
    expect(row).toBe(last);
    expect(series.columns.chargeTemperature.slice(0, row)).toEqual(before.columns.chargeTemperature.slice(0, row));
    expect(series.phases[series.phases.length - 1]).toMatchObject({ kind: 'pull', end: outcome.time, isWhole: false });
  });

  it.each([
    ['everywhere in the loop', { 'start.coolant': 121 }],
    [
      'in the line after the tank',
      {
        'cycle.0.bayAboveAmbient': 150,
        'cycle.0.duration': 3000,
        'cycle.0.pumpVoltageRatio': 0,
        'lines.afterReservoir.bore': 8,
        'lines.wallToBay': 50,
        'reservoir.gain': 0,
        'core.toBay': 0,
      },
    ],
    [
      'in the tank',
      {
        'cycle.0.bayAboveAmbient': 150,
        'cycle.0.duration': 3000,
        'cycle.0.pumpVoltageRatio': 0,
        'lines.wallToBay': 0,
        'reservoir.gain': 100,
        'core.toBay': 0,
      },
    ],
  ] satisfies [string, Edits][])('names the place: %s', (place, edits) => {
    const { outcome } = stoppedBy({ ...WATER_200_KPA, ...edits });
    expect(written(outcome.reason, FILE_WORDING)).toMatch(new RegExp(`^coolant boils ${place}: 12`));
  });
});

describe('a run whose coolant freezes', () => {
  // A bay 20 K below the 1 degC outside cools what touches it.
  const cold = {
    // Next to water: its first ice at -0.02 degC must not read "-0.0".
    'coolant.glycolByVolume': 0.05,
    'ambient.temperature': 1,
    'start.coolant': 5,
    'start.metal': 5,
    'cycle.0.bayAboveAmbient': -20,
    'cycle.0.duration': 3000,
    'cycle.0.pumpVoltageRatio': 0,
  };
  it.each([
    ['in the tank', { 'reservoir.gain': 100, 'lines.wallToBay': 0 }],
    ['in the line after the core', { 'reservoir.gain': 0, 'lines.wallToBay': 50, 'lines.afterCore.bore': 8 }],
  ] satisfies [string, Edits][])('stops with time, place and numbers: %s', (place, edits) => {
    const { outcome } = stoppedBy({ ...cold, ...edits });
    expect(written(outcome.reason, FILE_WORDING)).toBe(
      `coolant freezes ${place}: 0.0 degC reached, first ice at 0.0 degC, coolant flow 0.0 L/min`,
    );
    expect(outcome.time).toBeGreaterThan(0);
  });
});

describe('a run that the air path ends', () => {
  it('stops where the machine no longer can, with the reason and all rows before', () => {
    // The pull asks for a pressure ratio beyond 20 once the engine turns slowly enough against this much sweep.
    const { series, outcome } = stoppedBy({
      'compressor.driveRatio': 19,
      'compressor.leak': 0,
      'engine.displacement': 1.5,
    });
    expect(written(outcome.reason, FILE_WORDING)).toMatch(/at 2500 rpm/);
    expect(outcome.time).toBe(15);
    expect(series.columns.time[series.rowCount - 1]).toBe(15);
    expect(series.phases.map(({ kind, isWhole }) => [kind, isWhole])).toEqual([['idle', true]]);
  });

  it('keeps no rows where the first instant has no answer', () => {
    const { series, outcome } = stoppedBy({ 'cycle.0.manifoldPressure': 99.5, 'compressor.driveRatio': 0.5 });
    expect(outcome).toMatchObject({
      time: 0,
      reason: expect.arrayContaining([expect.stringContaining('cannot be reached')]),
    });
    expect(series.rowCount).toBe(0);
    expect(series.phases).toEqual([]);
  });
});

describe('metal that starts at another temperature than the coolant', () => {
  it('is that of core, exchangers and line walls, in two ways beside each other too', () => {
    const { exchanger } = shortDocument();
    const { columns } = simulate(
      shortConfig({
        secondExchanger: exchanger,
        loop: ['pump', 'core', ['exchanger', 'secondExchanger'], 'reservoir'],
        'lines.afterSecondExchanger': [],
        'start.coolant': 20,
        'start.metal': 60,
      }),
    );
    for (const name of ['coreMetalMean', 'exchangerMetalMean', 'secondExchangerMetalMean', 'lineWallMean'] as const) {
      expect(columns[name][0] - KELVIN, name).toBeCloseTo(60, 9);
    }
    for (const name of ['coreCoolantMean', 'secondExchangerCoolantMean', 'lineCoolantMean'] as const) {
      expect(columns[name][0] - KELVIN, name).toBeCloseTo(20, 9);
    }
  });
});

/** A hot soak with the pump off, nothing touching anything but what a test says. */
function soak(changes: (config: Config) => Config): TimeSeries {
  const config = shortConfig({
    cycle: [{ kind: 'hot soak', duration: 600, pump: 'off', bayAboveAmbient: 40, engineMetal: 110 }],
    'numerics.tolerance': 1e-4,
  });
  const { casing } = config;
  return simulate(changes({ ...config, casing: { ...casing, toPlenum: 0, toCoreFlange: 0, toOil: 0 } }));
}

describe('in a hot soak, by itself', () => {
  // Exact: C dT/dt = sum of G (T_k - T) relaxes to the mean weighted by G with the time constant C/sum G.
  it.each([
    ['casingTemperature', 9000, [[5, 340.15]], 318.15],
    [
      'plenumTemperature',
      4000,
      [
        [2, 340.15],
        [3, 383.15],
      ],
      328.15,
    ],
    ['reservoirTemperature', Number.NaN, [[1.5, 340.15]], 303.15],
  ] as const)('%s relaxes towards its surroundings exponentially', (name, capacity, exchanges, start) => {
    const { columns, rowCount } = soak((config) => config);
    // 2.3 L of 40 % glycol at 40 degC: 1044.6 kg/m3, 3549 J/(kg K), printed figures of the published fit
    const heatCapacity = Number.isNaN(capacity) ? 2.3e-3 * 1044.6 * 3549 : capacity;
    const total = exchanges.reduce((sum, [conductance]) => sum + conductance, 0);
    const end = exchanges.reduce((sum, [conductance, temperature]) => sum + conductance * temperature, 0) / total;
    for (let row = 0; row < rowCount; row++) {
      const exact = end + (start - end) * Math.exp((-total / heatCapacity) * columns.time[row]);
      expect(Math.abs(columns[name][row] - exact), `${columns.time[row]} s`).toBeLessThan(2e-3);
    }
    expect(rowCount).toBeGreaterThan(50);
  });

  it('the sensor follows air and housing with its time constant of still air', () => {
    const { columns, rowCount } = soak((config) => ({
      ...config,
      plenum: { ...config.plenum, heatCapacity: 1e12 },
      sensor: { ...config.sensor, airShare: 0.4 },
    }));
    for (let row = 0; row < rowCount; row++) {
      // The air stands at the plenum metal's 55 degC, the start is 40 degC, the constant 9 s.
      const exact = 55 - 15 * Math.exp(-columns.time[row] / 9);
      expect(Math.abs(columns.indicatedTemperature[row] - KELVIN - exact)).toBeLessThan(2e-3);
      expect(columns.chargeTemperature[row]).toBeCloseTo(columns.plenumTemperature[row], 9);
    }
  });

  it('nothing flows and no shaft turns', () => {
    const { columns } = soak((config) => config);
    for (const name of [
      'airFlow',
      'coolantFlow',
      'drivePower',
      'gasPower',
      'airToCorePower',
      'recirculation',
    ] as const) {
      expect(Math.max(...columns[name].map(Math.abs)), name).toBe(0);
    }
  });
});

describe('a sensor that sees the air alone', () => {
  // Exact for any first-order lag: it rises while the air is warmer and falls while it is colder, so its extrema are
  // where the two temperatures cross.
  it('turns where it crosses the air, nowhere else', () => {
    const config = shortConfig({ 'sensor.airShare': 1 });
    const { columns, rowCount } = simulate(config, { interval: 0.1 });
    let turns = 0;
    let way = 0;
    for (let row = 1; row < rowCount; row++) {
      // two rows of one instant, where a phase ends and the next begins
      if (columns.time[row] === columns.time[row - 1]) continue;
      const rise = columns.indicatedTemperature[row] - columns.indicatedTemperature[row - 1];
      const ahead = [row - 1, row].map((at) => columns.chargeTemperature[at] - columns.indicatedTemperature[at]);
      if (Math.min(...ahead) > 0.01) expect(rise, `${columns.time[row]} s`).toBeGreaterThan(0);
      if (Math.max(...ahead) < -0.01) expect(rise, `${columns.time[row]} s`).toBeLessThan(0);
      if (rise * way < 0) turns++;
      if (rise !== 0) way = rise;
    }
    expect(turns).toBeGreaterThanOrEqual(3);
  });
});

describe('the time constant of the sensor', () => {
  const sensor = { timeConstantMoving: 3, atFlow: 0.28, timeConstantStill: 9, airShare: 1 };
  it('goes with flow to the power -0.5 and stays between the two typed values', () => {
    expect(sensorTimeConstant(sensor, 0.07)).toBeCloseTo(6, 12);
    expect(sensorTimeConstant(sensor, 0.28)).toBe(3);
    expect(sensorTimeConstant(sensor, 0.5)).toBe(3);
    expect(sensorTimeConstant(sensor, 0.001)).toBe(9);
    expect(sensorTimeConstant(sensor, 0)).toBe(9);
  });
});

describe('a conductance scaled from a test point', () => {
  const law = { kind: 'power', reference: 400, atFlow: 0.3, exponent: 0.62, floor: 0.15 } as const;
  it('is the tested one at the tested flow and goes with flow to its exponent, down to what convection keeps', () => {
    expect(conductanceAt(law, 0.3)).toBe(400);
    expect(conductanceAt(law, 0.6)).toBeCloseTo(400 * 2 ** 0.62, 10);
    expect(conductanceAt(law, 0.001)).toBe(60);
    expect(conductanceAt(law, 0)).toBe(60);
    expect(conductanceAt({ ...law, floor: 0 }, 0)).toBe(0);
  });
});

describe('a step that is tried far too long', () => {
  it('does no harm, though the temperatures it guesses are those of no liquid', () => {
    // Found by varying all keys: a thin core, 128 K colder than the coolant that the pump drives through it.
    const edits = {
      'core.coolantConductance': 13480.457563200613,
      'core.coolantConductanceExponent': 0.8210418492089957,
      'core.coolantVolume': 0.05466056526764978,
      'coolant.glycolByVolume': 0.038350357784621474,
      'lines.afterCore.length': 0.08560718141433875,
      'lines.afterReservoir.bore': 36.060224052518606,
      'pump.shutOffPressure': 642.9432750349123,
      'pump.freeFlow': 839.360595792913,
      'start.coolant': 114.52950867824256,
      'start.metal': -13.53798764757812,
    };
    const { outcome } = stoppedBy(edits);
    expect(written(outcome.reason, FILE_WORDING)).toMatch(/^coolant freezes in the core: 0\.0 degC/);
  });
});

describe('one run', () => {
  const config = shortConfig();
  const series = simulate(config);

  it('gives the same bytes in every column when it is repeated', () => {
    const again = simulate(config);
    expect(again.rowCount).toBe(series.rowCount);
    for (const [name, column] of Object.entries(again.columns)) {
      const first = series.columns[name as keyof TimeSeries['columns']];
      expect(Buffer.compare(Buffer.from(column.buffer), Buffer.from(first.buffer)), name).toBe(0);
    }
    expect(again).toEqual(series);
  });

  it('stores what crossed its boundary', () => {
    const terms = Object.values(series.energy.terms);
    const moved = terms.reduce((sum, joules) => sum + Math.abs(joules), 0);
    const net = terms.reduce((sum, joules) => sum + joules, 0);
    expect(Math.abs(net - series.energy.stored) / moved).toBeLessThan(1e-9);
    expect(series.energy.worstStepGap).toBeLessThan(1e-9);
  });
});
