import { describe, expect, it } from 'vitest';
import type { ColumnName } from '../../../src/sim/index.ts';
import {
  lineWords,
  lossRows,
  type Moment,
  partReading,
  phasesPast,
  shareThrough,
  stepRows,
} from '../../../src/viewer/loop/readings.ts';
import { IMPERIAL, METRIC } from '../../../src/viewer/state/display.ts';
import { shippedConfig } from '../../support/shipped.ts';
import { HAND_MADE } from './hand-made.ts';

const plain = (text: string | undefined) => text?.replaceAll('\u00a0', ' ');
const estate = shippedConfig('rolling-road-estate');
const saloon = shippedConfig('quarter-mile-saloon');
const at = (values: Partial<Record<ColumnName, number>>, phase = 'pull'): Moment => ({
  at: (name) => values[name],
  phase,
});
const NOTHING: Moment = { at: () => undefined, phase: undefined };
const reading = (
  ...[part, config, moment, units = METRIC]: [Parameters<typeof partReading>[0], typeof estate, Moment, typeof METRIC?]
) => partReading(part, config, HAND_MADE, moment, units).map(plain);

describe('a line of the loop', () => {
  it('is said by length and bore', () => {
    expect(lineWords(estate, 'pump', METRIC).map(plain)).toEqual(['1.4 m', '16.5 mm']);
    // 16.5 mm are 0.6496 in.
    expect(lineWords(estate, 'pump', IMPERIAL).map(plain)).toEqual(['1.4 m', '0.65 in']);
  });

  it('of several bores by the narrowest and the widest, and is bolted on where there is none', () => {
    const segments = [0.022, 0.016].map((bore) => ({ length: 0.4, bore, lossCoefficient: 0 }));
    const lines = estate.lines.map((line) => (line.after === 'pump' ? { ...line, segments } : line));
    expect(lineWords({ ...estate, lines }, 'pump', METRIC).map(plain)).toEqual(['0.8 m', '16–22 mm']);
    expect(lineWords({ ...estate, lines: [] }, 'pump', METRIC)).toEqual(['bolted on']);
    expect(lineWords(estate, 'ways', METRIC)).toEqual([]);
  });
});

describe('a part of the loop', () => {
  it('gets its share of the flow', () => {
    const loop = [[['pump'], ['secondPump']], 'core', 'reservoir'] as const;
    expect(shareThrough(loop, [0.75], 'pump')).toBe(0.75);
    expect(shareThrough(loop, [0.75], 'secondPump')).toBe(0.25);
    expect(shareThrough(loop, [0.75], 'core')).toBe(1);
  });

  it('tells its own number', () => {
    const moment = at({ coolantIntoCore: 303.15, coolantOutOfCore: 313.15, coolantOutOfExchanger: 306.25 });
    expect(reading('core', estate, moment)).toEqual(['30.0 → 40.0 °C', '12.00 kPa']);
    expect(reading('exchanger', estate, moment)).toEqual(['out 33.1 °C', '12.00 kPa']);
    expect(reading('pump', estate, moment)).toEqual(['20.0 L/min', 'makes 30.0 kPa']);
    expect(reading('reservoir', estate, at({ reservoirTemperature: 300.15 }))).toEqual(['2.3 L', 'out 27.0 °C']);
    expect(reading('heatSink', estate, at({ heatSinkPower: 1500 }))[0]).toBe('1.5 kW');
  });

  it('of ice tells what was filled in and what is left', () => {
    const moment = at({ iceMass: 4.25, reservoirTemperature: 273.65 });
    expect(reading('reservoir', saloon, moment)).toEqual(['7 L + 10 kg ice', 'now 4.3 kg, 0.5 °C']);
  });

  it('says nothing of temperatures before the run', () => {
    expect(reading('core', estate, NOTHING)[0]).toBe('–');
    expect(reading('exchanger', estate, NOTHING)[0]).toBe('out –');
  });

  it('is by-passed in just the phases that say so', () => {
    const block = estate.cycle.block.map((phase) => ({ ...phase, isExchangerBypassed: phase.kind === 'pull' }));
    const valved = { ...estate, cycle: { ...estate.cycle, block } };
    const [pull] = block.filter(({ kind }) => kind === 'pull');
    expect(phasesPast(estate)).toEqual([]);
    expect(phasesPast(valved)).toEqual([pull.name]);
    expect(reading('exchanger', valved, at({ coolantOutOfExchanger: 300 }, pull.name))[0]).toBe('by-passed');
    expect(reading('exchanger', valved, at({ coolantOutOfExchanger: 300.15 }, 'another'))[0]).toBe('out 27.0 °C');
  });
});

describe('what takes the pressure, and what would help', () => {
  it('has shares of what the pump makes, and the flow of a way', () => {
    const rows = lossRows(HAND_MADE, METRIC).map(({ flow, ...row }) => ({ ...row, flow: plain(flow) }));
    expect(rows.map(({ name }) => name)).toEqual(['Line after the tank', 'Core', 'Front exchanger']);
    expect(rows.map(({ share }) => share)).toEqual([0.6, 0.4, 0.4]);
    expect(rows.map(({ flow }) => flow)).toEqual([undefined, undefined, '15.0 L/min']);
  });

  it('gives each change with its sign', () => {
    expect(stepRows(HAND_MADE, METRIC).map((row) => row.map(plain))).toEqual([
      ['All lines 19 mm', '24.0 L/min', '+4.0 L/min'],
      ['A second pump like it, beside the first', '19.9 L/min', '−0.1 L/min'],
    ]);
  });
});
