import { describe, expect, it } from 'vitest';
import { onDay } from '../../src/sim/index.ts';
import { createSimService } from '../../workers/sim-service.ts';
import { shippedConfig, shippedScenario } from '../support/shipped.ts';

const scenario = shippedScenario('rolling-road-estate');
const config = shippedConfig('rolling-road-estate');

/** As a worker hears it: plain data, copied. */
const heard = <Asked>(asked: Asked): Asked => structuredClone(asked);

describe('a question', () => {
  it('about another day crosses as plain data', async () => {
    const there = onDay(scenario, { temperature: 35 }).scenario;
    if (there === undefined) throw new Error('refused');
    const reply = await createSimService().ask(
      { run: 1, config, question: 'day', asked: heard({ typed: scenario, there, pulls: 1 }) },
      () => {},
    );
    if (reply.kind !== 'studied') throw new Error(reply.kind);
    const { typed, day, hottest } = reply.result;
    expect([typed.temperature, day.temperature]).toEqual([300.15, 308.15]);
    expect(day.deciding?.peak).toBeGreaterThan(typed.deciding?.peak ?? Number.NaN);
    // The stock car makes no pull as typed, so the day that allows one is colder.
    expect(hottest.kind === 'found' && hottest.temperature).toBeLessThan(300.15);
  });

  it('about cars side by side runs the cars that it names, not the car in hand', async () => {
    const cars = ['bigger core', 'stock, rest 240 s'].map((name, line) => ({
      name,
      line,
      changes: [],
      config: shippedConfig('rolling-road-estate', name),
    }));
    const progress: number[] = [];
    const reply = await createSimService().ask(
      { run: 1, config, question: 'compare', asked: heard({ cars, interval: 10 }) },
      ({ done }) => progress.push(done),
    );
    if (reply.kind !== 'studied') throw new Error(reply.kind);
    expect(reply.result.cars.map(({ count }) => count)).toEqual([8, 0]);
    expect(progress).toEqual([1, 2]);
  });
});
