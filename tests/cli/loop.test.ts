import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/cli/command-line.ts';
import { carFile, shortFile } from '../support/car-file.ts';
import { listen } from '../support/said.ts';
import { shippedDocument } from '../support/shipped.ts';

const ESTATE = new URL('../../scenarios/rolling-road-estate.json', import.meta.url).pathname;

const said = listen();

const flowIn = (text: string): number => Number(/: ([\d.]+) L\/min at /.exec(text)?.[1]);

describe('soakbench loop', () => {
  it('prints the flow, what takes the pressure and what one change makes of it', async () => {
    expect(await runCommandLine(['loop', ESTATE])).toBe(0);
    expect(said.out).toContain('Coolant flow in pull, coolant at 40 degC: ');
    expect(said.out).toContain("Free flow on the pump's label: 26.0 L/min, never the flow in a loop.");
    expect(said.out).toContain('A straight line between its two figures would give');
    for (const name of ['core', 'front exchanger', 'line after the pump', 'line after the core', 'all lines 19 mm'])
      expect(said.out).toMatch(new RegExp(`^  ${name} `, 'm'));
    const shares = [...said.out.matchAll(/kPa +(\d+) %/g)].map(([, share]) => Number(share));
    expect(shares).toHaveLength(6);
    // Each is rounded.
    expect(Math.abs(shares.reduce((sum, share) => sum + share, 0) - 100)).toBeLessThanOrEqual(3);
    expect(said.out).not.toMatch(/undefined|NaN|Infinity|measured/i);
  });

  it('gives the same as data, the curves among it', async () => {
    await runCommandLine(['loop', ESTATE]);
    const printed = flowIn(said.out);
    said.out = '';
    expect(await runCommandLine(['loop', ESTATE, '--json'])).toBe(0);
    const point = JSON.parse(said.out);
    expect(point.flow * 60000).toBeCloseTo(printed, 1);
    expect(point.temperature).toBeCloseTo(313.15, 9);
    expect(point.curves.pump).toHaveLength(point.curves.flow.length);
    expect(said.out).not.toContain('null');
  });

  it('takes the coolant at another temperature: warmer is thinner and flows better', async () => {
    await runCommandLine(['loop', ESTATE, '--at', '0']);
    const cold = flowIn(said.out);
    expect(said.out).toContain('coolant at 0 degC');
    said.out = '';
    await runCommandLine(['loop', ESTATE, '--at', '80']);
    expect(flowIn(said.out)).toBeGreaterThan(1.02 * cold);
    expect(await runCommandLine(['loop', ESTATE, '--at', 'warm'])).not.toBe(0);
    expect(await runCommandLine(['loop', ESTATE, '--at', '500'])).not.toBe(0);
  });

  it('is of the variant that is named', async () => {
    await runCommandLine(['loop', ESTATE, '--variant', 'stock + pump only']);
    expect(said.out).toContain("Free flow on the pump's label: 60.0 L/min");
    expect(await runCommandLine(['loop', ESTATE, '--variant', 'stock + pump'])).toBe(3);
    expect(said.err).toContain('There is no variant');
  });

  it('says what the wires cost', async () => {
    // 120 W at 12 V through 4 m of 2.5 mm2: 0.506 V lost of 12 V, worked by hand.
    const file = shortFile({
      'pump.electricalPower': 120,
      'pump.ratedVoltage': 12,
      'pump.wireLength': 4,
      'pump.wireArea': 2.5,
      'cycle.1.phases.0.supplyVoltage': 12,
    });
    expect(await runCommandLine(['loop', file])).toBe(0);
    expect(said.out).toContain('12 V at the battery, 11.49 V at the pump: 0.51 V lost in its wires.');
  });

  it('says what was measured, and how far the curves are off', async () => {
    expect(await runCommandLine(['loop', shortFile({ 'pump.measuredFlow': 10, 'pump.measuredFlowAt': 40 })])).toBe(0);
    expect(flowIn(said.out)).toBe(10);
    expect(said.out).toMatch(
      /Measured 10\.0 L\/min; the curves alone give 13\.\d L\/min\. All resistances are taken [12]\.\d\d times to meet the meter\./,
    );
  });

  it.each(['rolling-road-estate', 'quarter-mile-saloon', 'session-coupe', 'ridge-roadster', 'motorway-wagon'])(
    'goes on from what was measured on the %s: every change makes more',
    async (name) => {
      const car = shippedDocument(name);
      const path = carFile({ ...car, pump: { ...(car.pump as object), measuredFlow: 8 } });
      expect(await runCommandLine(['loop', path, '--json'])).toBe(0);
      const { flow, steps } = JSON.parse(said.out);
      expect(flow * 60000).toBeCloseTo(8, 0);
      for (const step of steps) expect(step.flow, step.name).toBeGreaterThan(1.003 * flow);
    },
  );

  it('says what the meter would read on a variant', async () => {
    const variants = [{ name: 'wide', changes: { 'lines.bore': 25 } }];
    const path = shortFile({ 'pump.measuredFlow': 10, 'pump.measuredFlowAt': 40, variants });
    expect(await runCommandLine(['loop', path, '--variant', 'wide'])).toBe(0);
    const flow = flowIn(said.out);
    expect(flow).toBeGreaterThan(10.2);
    expect(said.out).toContain(`Measured 10.0 L/min; the curves alone give 13.`);
    expect(said.out).toContain(`With what has changed since, the meter would read ${flow.toFixed(1)} L/min.`);
  });

  it('says where no resistance gives what was measured', async () => {
    const file = shortFile({
      loop: ['pump', 'secondPump', 'core', 'exchanger', 'reservoir'],
      secondPump: { shutOffPressure: 28, freeFlow: 26, electricalPower: 50 },
      'lines.afterSecondPump': [],
      'pump.measuredFlow': 40,
    });
    expect(await runCommandLine(['loop', file])).toBe(0);
    expect(said.out).toContain('No resistance gives that flow with these pumps, so the curves stand.');
    expect(said.out).not.toContain('NaN');
  });

  it('names a pump that is held shut', async () => {
    const file = shortFile({
      loop: [[['pump'], ['secondPump']], 'core', 'exchanger', 'reservoir'],
      secondPump: { shutOffPressure: 2, freeFlow: 20, electricalPower: 20 },
      'lines.afterSecondPump': [],
    });
    expect(await runCommandLine(['loop', file])).toBe(0);
    expect(said.out).toContain('The second pump is held shut by the stronger one beside it and delivers nothing.');
  });

  it('warns where the suction is short of what the pump needs, and says what to do', async () => {
    expect(await runCommandLine(['loop', shortFile({ 'pump.suctionNeeded': 200 })])).toBe(0);
    expect(said.out).toMatch(
      /Pump inlet only [\d.]+ kPa above .*, and the pump needs 200\.0 kPa above it: it may cavitate\. Mount/,
    );
  });

  it('says so where no pump is on', async () => {
    const file = shortFile({
      'cycle.0.pump': 'off',
      'cycle.1.phases.0.pump': 'off',
      'cycle.1.phases.1.pump': 'off',
    });
    expect(await runCommandLine(['loop', file])).not.toBe(0);
    expect(said.err).toContain('No pump is on in any phase');
  });
});
