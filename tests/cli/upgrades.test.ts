import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/cli/command-line.ts';
import { shortFile } from '../support/car-file.ts';
import { listen } from '../support/said.ts';
import { NINE_UPGRADES, WITHOUT_PULL } from '../support/short-session.ts';

const UPGRADES = [
  { name: 'core, "wide"', price: 1680, hours: 11, changes: { 'core.airConductance': 585, 'core.airDrop': 6 } },
  { name: 'slow sensor', price: 10, hours: 0.5, changes: { 'sensor.timeConstantMoving': 5 } },
  { name: 'half a pump', price: 50, changes: { 'pump.freeFlow': 13 } },
];
/** The pump of this variant is given by its curve, beside which no free flow stands. */
const CURVE = [
  { flow: 0, pressure: 28 },
  { flow: 13, pressure: 18 },
  { flow: 26, pressure: 0 },
];
const VARIANTS = [
  { name: 'hot day', changes: { 'ambient.temperature': 38 } },
  { name: 'by its curve', changes: { pump: { curve: CURVE, electricalPower: 50 } } },
];
const CAR = shortFile({ upgrades: UPGRADES, variants: VARIANTS });
const BARE = shortFile();
const PULL_LESS = shortFile({ upgrades: UPGRADES, ...WITHOUT_PULL });
const CLASHING = shortFile({
  upgrades: [UPGRADES[0], { name: 'other core', changes: { 'core.airConductance': 450 } }],
});
const BOILING = shortFile({ 'start.coolant': 140, upgrades: UPGRADES });
/** What its second upgrade gives it, it has. */
const FITTED = shortFile({ upgrades: UPGRADES, 'sensor.timeConstantMoving': 5 });
const BROKEN = shortFile({ upgrades: [{ ...UPGRADES[0], price: -5 }] });

const said = listen();

const run = (...args: string[]): Promise<number> => runCommandLine(['upgrades', ...args]);

describe('soakbench upgrades', () => {
  it('prints each alone and one on top of the other, with what each does in words', async () => {
    expect(await run(CAR)).toBe(0);
    expect(said.out).toContain('Each alone, on the car as it is:');
    expect(said.out).toContain('One on top of the other, in the order of the file:');
    expect(said.out).toMatch(/^ {2}core, "wide" .* better$/m);
    expect(said.out).toMatch(/^ {2}\+ slow sensor .* 0\.00 .* no effect$/m);
    expect(said.out).toMatch(/^ {2}\+ half a pump .* worse$/m);
    expect(said.out).toContain('slow sensor: no effect; still ');
    expect(said.out).toContain('half a pump makes it worse: ');
    expect(said.out).not.toContain('In the best order:');
    expect(said.out).not.toContain('The cheapest way:');
    expect(said.out).toContain('An estimate');
    expect(said.out).not.toMatch(/undefined|NaN|Infinity/);
  });

  it('adds the best order and the cheapest way', async () => {
    expect(await run(CAR, '--best-order')).toBe(0);
    expect(said.out).toMatch(/Best order: core, "wide"; slow sensor; half a pump\./);
    expect(said.out).toContain('It is the order of the file.');
    expect(said.out).toContain('The cheapest way:');
    expect(said.out).not.toMatch(/undefined|NaN|Infinity/);
  });

  it('starts from a variant', async () => {
    await run(CAR, '--json');
    const { base } = JSON.parse(said.out);
    said.out = '';
    expect(await run(CAR, '--variant', 'hot day', '--json')).toBe(0);
    // 11 K warmer outside, and the charge follows in part.
    const warmer = JSON.parse(said.out).base.deciding.peak - base.deciding.peak;
    expect(warmer).toBeGreaterThan(2);
    expect(warmer).toBeLessThan(11);
  });

  it('says what cannot be fitted to a variant, once, and goes on', async () => {
    expect(await run(CAR, '--variant', 'by its curve', '--best-order')).toBe(0);
    expect(said.err.match(/In upgrade "half a pump"/g)).toHaveLength(1);
    expect(said.out).toMatch(/^ {2}half a pump .* refused$/m);
    expect(said.out).toContain('half a pump: not possible; the file refuses this car.');
    expect(said.out).toContain('No order can be fitted step by step');
  });

  it('has the resistances that a measured flow tells: a stronger pump and wider lines make more', async () => {
    const upgrades = [
      { name: 'pump', changes: { 'pump.freeFlow': 52, 'pump.shutOffPressure': 56 } },
      { name: 'lines', changes: { 'lines.bore': 25 } },
    ];
    const metered = { 'pump.measuredFlow': 8, 'pump.measuredFlowAt': 40 };
    expect(await run(shortFile({ ...metered, upgrades }), '--json')).toBe(0);
    const { base, alone, inOrder } = JSON.parse(said.out);
    const flowOf = (car: { firstPull: { coolantFlow: number } }) => car.firstPull.coolantFlow * 60000;
    expect(Math.abs(flowOf(base) - 8)).toBeLessThan(0.3);
    for (const { car } of alone) expect(flowOf(car)).toBeGreaterThan(1.02 * flowOf(base));
    expect(flowOf(inOrder[1].car)).toBeGreaterThan(flowOf(inOrder[0].car));
  });

  it('gives the same as data', async () => {
    expect(await run(CAR, '--best-order', '--json')).toBe(0);
    const { upgrades, alone, inOrder, best } = JSON.parse(said.out);
    expect(upgrades[0]).toMatchObject({ name: 'core, "wide"', price: 1680, hours: 11 });
    expect([alone.length, inOrder.length, best.order.length]).toEqual([3, 3, 3]);
    expect(best.ways[0]).toMatchObject({ money: 0, upgrades: [] });
    expect(said.out).not.toContain('null');
  });

  it('gives one row a step and mode as CSV, in SI', async () => {
    expect(await run(CAR, '--best-order', '--csv')).toBe(0);
    const [head, base, ...rows] = said.out.trimEnd().split('\r\n');
    const names = head.split(',');
    for (const name of [
      'mode',
      'deciding peak [K]',
      'coolant flow [m3/s]',
      'core pressure drop [Pa]',
      'air flow [kg/s]',
    ])
      expect(names).toContain(name);
    expect(rows).toHaveLength(9);
    expect(rows[0]).toMatch(/^alone,1,"core, ""wide""",1680,11,/);
    const cells = base.split(',');
    expect(cells).toHaveLength(names.length);
    expect(Number(cells[names.indexOf('deciding peak [K]')])).toBeGreaterThan(300);
    // The slow sensor moves nothing that the limit is judged on.
    expect(rows[1].split(',')[names.indexOf('change of deciding peak [K]')]).toBe('0');
  });

  it('writes a change that rounds to nothing without a sign', async () => {
    const upgrades = [{ name: 'hair', changes: { 'core.airConductance': 390.01 } }];
    const path = shortFile({ upgrades });
    await run(path, '--json');
    const { peak } = JSON.parse(said.out).alone[0].change;
    expect(peak).toBeLessThan(0);
    expect(peak).toBeGreaterThan(-0.005);
    said.out = '';
    await run(path);
    expect(said.out).toMatch(/^ {2}hair .* 0\.00 .* no effect$/m);
    expect(said.out).not.toContain('-0.00 ');
  });

  it('says which of two upgrades of one key counts', async () => {
    expect(await run(CLASHING)).toBe(0);
    expect(said.out).toContain('both change core.airConductance: where both are fitted, "other core" counts');
  });

  it('orders eight beside one that is fitted already', async () => {
    expect(await run(shortFile({ upgrades: NINE_UPGRADES }), '--best-order', '--json')).toBe(0);
    const { fitted, best } = JSON.parse(said.out);
    expect(fitted).toEqual([8]);
    expect(best.order.map(({ upgrade }: { upgrade: number }) => upgrade).toSorted()).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
  });

  it('says what is fitted already, and leaves it out of tables, order, ways and sums', async () => {
    expect(await run(FITTED, '--best-order')).toBe(0);
    expect(said.out).toContain('Already fitted to this car, and so not weighed: slow sensor.');
    expect(said.out).not.toMatch(/^ {2}(\+ )?slow sensor/m);
    expect(said.out).toContain('Best order: core, "wide"; half a pump.');
    said.out = '';
    await run(FITTED, '--csv');
    const rows = said.out.trimEnd().split('\r\n');
    expect(rows.filter((row) => row.includes('slow sensor'))).toEqual([
      expect.stringMatching(/^already fitted,0,slow sensor,,,.*,already fitted$/),
    ]);
    said.out = '';
    await run(FITTED, '--json');
    expect(JSON.parse(said.out).fitted).toEqual([1]);
  });

  it.each([
    [5, 'a file without upgrades', [BARE], 'the file has no upgrades'],
    [5, 'a cycle without a pull', [PULL_LESS, '--best-order'], 'The cycle has no pull'],
    [3, 'an unknown variant', [CAR, '--variant', 'hot dya'], 'Did you mean "hot day"?'],
    [3, 'two outputs at once', [CAR, '--json', '--csv'], 'cannot be used with'],
    [2, 'a broken upgrade', [BROKEN], 'upgrades.0.price'],
    [4, 'a file that is not there', ['nowhere.json'], 'Cannot read'],
  ])('exit code %d: %s', async (code, _, args, message) => {
    expect(await run(...args)).toBe(code);
    expect(said.err).toContain(message);
  });

  it('exit code 1 where the car stops before the end', async () => {
    expect(await run(BOILING, '--best-order')).toBe(1);
    expect(said.out).toContain('the run stops early');
    expect(said.out).not.toMatch(/undefined|NaN|Infinity/);
  });
});
