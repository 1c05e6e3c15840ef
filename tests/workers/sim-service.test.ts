import { describe, expect, it } from 'vitest';
import { summarisePulls } from '../../src/sim/answers/pull-summary.ts';
import { conduct } from '../../src/sim/answers/study.ts';
import { studyStore } from '../../src/sim/answers/tank-size.ts';
import { studyUpgrades } from '../../src/sim/answers/upgrade-steps.ts';
import { simulate } from '../../src/sim/simulate.ts';
import type { Progress } from '../../workers/sim-api.ts';
import { createSimService } from '../../workers/sim-service.ts';
import { shippedConfig } from '../support/shipped.ts';
import { shortConfig } from '../support/short-session.ts';

const config = shippedConfig('rolling-road-estate');
/** A run long enough to be caught under way. */
const long = { ...config, cycle: { ...config.cycle, repeats: 100 } };
const LONG_DURATION = 300 + 100 * 102;
const silent = () => {};

describe('the simulator as a service', () => {
  it('solves to the same numbers as a run in place, with the core cell by cell', async () => {
    const reply = await createSimService().solve({ run: 1, config }, silent);
    if (reply.kind !== 'solved') throw new Error(reply.kind);
    const here = simulate(config);
    expect(reply.run).toBe(1);
    expect(Array.from(reply.series.columns.chargeTemperature)).toEqual(Array.from(here.columns.chargeTemperature));
    expect(reply.pulls).toEqual(summarisePulls(here, config.limit.chargeTemperature));
    const { core, rowCount } = reply.series;
    expect(core?.metal.length).toBe(rowCount * 48 * 24);
    // The recorded mean of the metal is the mean of its cells, at the last row.
    const cells = core?.metal.subarray((rowCount - 1) * 48 * 24) ?? new Float32Array();
    const mean = cells.reduce((sum, value) => sum + value, 0) / cells.length;
    expect(Math.abs(mean - here.columns.coreMetalMean[rowCount - 1])).toBeLessThan(1e-3);
  });

  it('tells how far it is, with the pulls that have ended', async () => {
    const heard: Progress[] = [];
    await createSimService().solve({ run: 1, config: long }, (progress) => heard.push(progress));
    expect(heard.length).toBeGreaterThan(0);
    const times = heard.map(({ time }) => time);
    expect(times).toEqual([...times].sort((a, b) => a - b));
    // The first word may come before the first pull ends: how soon hangs on the machine.
    expect(heard.at(-1)?.pulls.length).toBeGreaterThan(0);
    expect(heard[0].duration).toBeCloseTo(LONG_DURATION, 6);
  });

  it('hears a cancel while it works and keeps what was solved', async () => {
    const service = createSimService();
    const solving = service.solve({ run: 4, config: long }, silent);
    await service.cancel(4);
    const reply = await solving;
    if (reply.kind === 'failed') throw new Error(reply.message);
    expect(reply.kind).toBe('cancelled');
    expect(reply.series.outcome.kind).toBe('cancelled');
    const { columns, rowCount } = reply.series;
    expect(columns.time[rowCount - 1]).toBeLessThan(LONG_DURATION / 2);
  });

  it.each([4, 6])('leaves run 5 alone when run %d is cancelled', async (other) => {
    const service = createSimService();
    const solving = service.solve({ run: 5, config }, silent);
    await service.cancel(other);
    expect((await solving).kind).toBe('solved');
  });

  it('studies a run: settled peak, the count at other core conductances, what holds it back', async () => {
    const pulls = summarisePulls(simulate(config), config.limit.chargeTemperature);
    const service = createSimService();
    const reply = await service.study({ run: 1, config, pulls });
    if (reply.kind !== 'studied') throw new Error(reply.kind);
    expect(reply.result.answer.count).toBe(0);
    expect(reply.result.bottleneck?.heldBackBy).toEqual(['core conductance']);
    const cancelled = service.study({ run: 2, config: long, pulls });
    await service.cancel(2);
    expect((await cancelled).kind).toBe('cancelled');
  });

  it('answers questions by name, telling how far it is, and hears a cancel', async () => {
    const service = createSimService();
    const heard: number[] = [];
    const ask = { run: 1, config, question: 'store', asked: { kind: 'tank', pulls: 2 } } as const;
    const reply = await service.ask(ask, ({ done }) => heard.push(done));
    if (reply.kind !== 'studied') throw new Error(reply.kind);
    expect(reply.result).toEqual(conduct(studyStore(config, 'tank', 2)));
    expect(heard.slice(0, 10)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    const cancelled = service.ask({ ...ask, run: 2 }, silent);
    await service.cancel(2);
    expect((await cancelled).kind).toBe('cancelled');
  });

  it('weighs upgrades with the cars that it is handed, and takes what is not among them as refused', async () => {
    const hot = shortConfig({ 'ambient.temperature': 40 });
    const upgrades = [{ name: 'heat wave' }, { name: 'cannot be' }];
    const asked = { upgrades, cars: [['0', hot]], withOrders: false } as const;
    const reply = await createSimService().ask({ run: 1, config: shortConfig(), question: 'upgrades', asked }, silent);
    if (reply.kind !== 'studied') throw new Error(reply.kind);
    const carWith = (chosen: readonly number[]) =>
      chosen.length === 0 ? shortConfig() : chosen.join() === '0' ? hot : undefined;
    expect(reply.result).toEqual(conduct(studyUpgrades(upgrades, carWith, { withOrders: false })));
    expect(reply.result?.alone.map(({ car }) => car === undefined)).toEqual([false, true]);
    expect(reply.result?.alone[0].change?.peak).toBeGreaterThan(2);
  });

  it('answers a configuration that breaks it with data, not by throwing', async () => {
    const broken = { ...config, core: undefined } as unknown as typeof config;
    const service = createSimService();
    const reply = await service.solve({ run: 1, config: broken }, silent);
    expect(reply).toMatchObject({ kind: 'failed', run: 1, message: expect.stringMatching(/./) });
    expect(await service.study({ run: 2, config: broken, pulls: [] })).toMatchObject({ kind: 'failed' });
  });
});
