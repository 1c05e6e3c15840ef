import { describe, expect, it } from 'vitest';
import { simulate } from '../../src/sim/simulate.ts';
import { shippedConfig } from '../support/shipped.ts';
import { balanceFromOutside } from './outside-balance.ts';

const CASES = [
  ['rolling-road-estate', undefined],
  ['rolling-road-estate', '+ 10 L tank'],
  ['ridge-roadster', undefined],
  ['ridge-roadster', '+ pump 50 kPa / 45 L/min'],
  ['rolling-road-estate', 'stock, room on'],
  ['session-coupe', 'stock loop'],
  ['quarter-mile-saloon', undefined],
  ['quarter-mile-saloon', 'pump off in the lanes, on for the last 30 s'],
  ['motorway-wagon', undefined],
  ['motorway-wagon', 'throttle downstream, free bypass, after core'],
] as const;

describe('energy, from outside', () => {
  it.each(CASES)('%s %s balances to 0.1 %% from columns recorded at 10 Hz', (file, variant) => {
    const config = shippedConfig(file, variant);
    const series = simulate(config, { interval: 0.1 });
    const balance = balanceFromOutside(config, series);
    expect(Math.abs(balance.gap)).toBeLessThan(1e-3);
    // Every term that the solver's own ledger lists is there from outside, and each agrees.
    expect(Object.keys(balance.terms).sort()).toEqual(Object.keys(series.energy.terms).sort());
    for (const [name, energy] of Object.entries(series.energy.terms)) {
      expect(Math.abs(balance.terms[name] - energy), name).toBeLessThan(1e-3 * balance.moved);
    }
    expect(Math.abs(balance.stored - series.energy.stored)).toBeLessThan(1e-6 * balance.moved);
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
