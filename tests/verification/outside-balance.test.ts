import { describe, expect, it } from 'vitest';
import type { TimeSeries } from '../../src/sim/results/time-series.ts';
import { PHASE_KINDS } from '../../src/sim/scenario/config/cycle.ts';
import type { Config } from '../../src/sim/scenario/config.ts';
import { simulate } from '../../src/sim/simulate.ts';
import { shippedConfig } from '../support/shipped.ts';
import { shortConfig } from '../support/short-session.ts';
import { balanceFromOutside, type OutsideBalance } from './outside-balance.ts';

/** Every file, and the variants that change what is counted. */
const CASES = [
  ['rolling-road-estate', undefined],
  ['rolling-road-estate', '+ 10 L tank'],
  ['rolling-road-estate', 'core by its measures, 120 mm deep'],
  ['ridge-roadster', undefined],
  ['ridge-roadster', '+ pump 50 kPa / 45 L/min'],
  ['rolling-road-estate', 'stock, room on'],
  ['session-coupe', undefined],
  ['session-coupe', 'stock loop'],
  ['quarter-mile-saloon', undefined],
  ['quarter-mile-saloon', 'pump off in the lanes, on for the last 30 s'],
  ['motorway-wagon', undefined],
  ['motorway-wagon', '-8 degC, 50 % glycol'],
  ['motorway-wagon', 'throttle downstream, free bypass, after core'],
] as const;

function expectToBalance(config: Config): { readonly series: TimeSeries; readonly balance: OutsideBalance } {
  const series = simulate(config, { interval: 0.1 });
  const balance = balanceFromOutside(config, series);
  expect(Math.abs(balance.gap)).toBeLessThan(1e-3);
  // Every term that the solver's own ledger lists is there from outside, and each agrees.
  expect(Object.keys(balance.terms).sort()).toEqual(Object.keys(series.energy.terms).sort());
  for (const [name, energy] of Object.entries(series.energy.terms)) {
    expect(Math.abs(balance.terms[name] - energy), name).toBeLessThan(1e-3 * balance.moved);
  }
  expect(Math.abs(balance.stored - series.energy.stored)).toBeLessThan(1e-6 * balance.moved);
  return { series, balance };
}

/** Two pumps behind each other, two exchangers beside each other with a valve, a heat sink and a tank of six layers. */
function everyPart(): Config {
  const air = { exchangerAirSpeed: 4, secondExchangerAirSpeed: 2, bayAboveAmbient: 25 };
  return shortConfig({
    loop: ['pump', 'secondPump', 'core', 'heatSink', ['exchanger', 'secondExchanger'], 'reservoir'],
    secondPump: { shutOffPressure: 20, freeFlow: 30, electricalPower: 40 },
    secondExchanger: {
      faceArea: 0.06,
      airConductance: 200,
      airConductanceAtFlow: 0.4,
      coolantConductance: 1200,
      coolantConductanceAtFlow: 0.3,
      metalHeatCapacity: 1.5,
      coolantVolume: 0.7,
      coolantDropFactor: 25,
      cellsAlongAir: 4,
      cellsAlongCoolant: 4,
    },
    heatSink: {
      curve: [
        { coolant: 5, heat: 0 },
        { coolant: 30, heat: 800 },
        { coolant: 60, heat: 2500 },
      ],
    },
    'lines.afterSecondPump': { length: 0.4, bends: 2 },
    'lines.afterHeatSink': [],
    'lines.afterSecondExchanger': { length: 0.6 },
    'lines.afterWays': { length: 0.3, bore: 19 },
    'reservoir.layers': 6,
    'reservoir.coolantVolume': 6,
    'start.coolant': 45,
    cycle: [
      { kind: 'idle', duration: 20, engineSpeed: 1200, manifoldPressure: 38, ...air },
      { kind: 'pull', duration: 10, engineSpeed: [2500, 6600], ...air },
      { kind: 'cruise', duration: 20, engineSpeed: 2600, manifoldPressure: 55, exchangerValve: 'by-passed', ...air },
      { kind: 'pull', duration: 8, engineSpeed: [3000, 6600], secondPump: 'off', ...air },
      { kind: 'cooldown', duration: 20, engineSpeed: 1000, manifoldPressure: 40, heatSink: 'off', ...air },
      { kind: 'hot soak', duration: 30, pump: 'off', bayAboveAmbient: 40 },
      { kind: 'hot soak', duration: 20, pump: 'on', bayAboveAmbient: 40 },
    ],
  });
}

describe('energy, from outside', () => {
  it.each(CASES)('%s %s balances to 0.1 %% from columns recorded at 10 Hz', (file, variant) => {
    expectToBalance(shippedConfig(file, variant));
  });

  it('balances with every part of a loop, in every kind of phase', () => {
    const { series, balance } = expectToBalance(everyPart());
    expect(new Set(series.phases.map(({ kind }) => kind))).toEqual(new Set(PHASE_KINDS));
    for (const term of ['exchanger', 'heatSink', 'pump', 'lines', 'reservoir'])
      expect(Math.abs(balance.terms[term]), term).toBeGreaterThan(1e-3 * balance.moved);
    const { columns } = series;
    // Both exchangers work, and the layers of the tank differ.
    const last = series.phases[1].lastRow;
    expect(Math.abs(columns.secondExchangerMetalMean[last] - columns.exchangerMetalMean[last])).toBeGreaterThan(0.1);
    expect(Math.abs(columns.reservoirMean[last] - columns.reservoirTemperature[last])).toBeGreaterThan(0.1);
  });

  it('balances with all parts bolted together, without any line', () => {
    const places = ['Pump', 'Core', 'Exchanger', 'Reservoir'];
    const { series } = expectToBalance(
      shortConfig(Object.fromEntries(places.map((place) => [`lines.after${place}`, []]))),
    );
    expect(series.energy.terms.lines).toBe(0);
    expect(series.columns.lineCoolantMean.every(Number.isNaN)).toBe(true);
  });

  it('balances with water condensing in the core', () => {
    const dry = shippedConfig('rolling-road-estate', 'bigger core');
    const damp = <Phase extends (typeof dry.cycle.block)[number]>(phase: Phase) => ({
      ...phase,
      relativeHumidity: 0.9,
      outsideTemperature: { from: 309.15, to: 309.15 },
    });
    const { before, block } = dry.cycle;
    const config = {
      ...dry,
      start: { ...dry.start, coolant: 285, metal: 285 },
      cycle: { ...dry.cycle, before: before.map(damp), block: block.map(damp) },
    };
    const series = simulate(config, { interval: 0.1 });
    const balance = balanceFromOutside(config, series);
    expect(balance.terms.condensation).toBeGreaterThan(2e4);
    expect(Math.abs(balance.gap)).toBeLessThan(1e-3);
    expect(Math.abs(balance.terms.condensation - series.energy.terms.condensation)).toBeLessThan(1e-3 * balance.moved);
  });

  it('closes as the square of the recording interval', () => {
    const config = shippedConfig('rolling-road-estate');
    const gaps = [1.6, 0.8, 0.4].map((fixedStep) =>
      Math.abs(balanceFromOutside(config, simulate(config, { fixedStep })).gap),
    );
    for (const k of [0, 1]) {
      const order = Math.log2(gaps[k] / gaps[k + 1]);
      expect(order).toBeGreaterThan(1.7);
      expect(order).toBeLessThan(2.4);
    }
  });

  it('catches pump heat that a model left out', () => {
    const config = shippedConfig('rolling-road-estate');
    const faulty = { ...config, pump: { ...config.pump, shareIntoCoolant: 0 } };
    const balance = balanceFromOutside(config, simulate(faulty, { interval: 0.1 }));
    expect(Math.abs(balance.gap)).toBeGreaterThan(1e-3);
  });
});
