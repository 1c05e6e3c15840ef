import { describe, expect, it } from 'vitest';
import { numberInWords, numberRowAt, rowAt } from '../../../src/sim/scenario/row-at.ts';

describe('the row of a number of the file', () => {
  it.each([
    ['a key of a group', 'core.airConductance', 'W/K'],
    ['an item of a list', 'lines.afterPump.1.bore', 'mm'],
    ['one item without its brackets', 'lines.afterPump.bore', 'mm'],
    ['an end of a pair', 'cycle.1.phases.0.engineSpeed.1', 'rpm'],
  ])('%s: %s is in %s', (_, path, unit) => {
    expect(numberRowAt(path)?.unit).toBe(unit);
  });

  it('is that of a word too, as a row', () => {
    expect(rowAt('bypass.route')?.label).toBe('bypass route');
    expect(rowAt('cycle.1.phases.0.kind')?.label).toBe('kind of the phase');
    expect(rowAt('no.such')).toBeUndefined();
  });

  it('is none for words and for what is no key', () => {
    expect([numberRowAt('bypass.route'), numberRowAt('core'), numberRowAt('no.such')]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });
});

describe('a number in words', () => {
  it('has its label and unit, and its path where the table has it at more places', () => {
    expect(numberInWords('intake.pickUp')).toEqual({ label: 'intake pick-up', unit: 'K' });
    expect(numberInWords('secondPump.freeFlow')).toEqual({
      label: 'free flow of the pump (secondPump.freeFlow)',
      unit: 'L/min',
    });
  });

  it('has no unit where it counts without, and is its path where the table has none', () => {
    expect(numberInWords('compressor.driveRatio')).toEqual({ label: 'drive ratio' });
    expect(numberInWords('compressor.quotedEfficiency')).toEqual({ label: 'quoted efficiency' });
    expect(numberInWords('no.such')).toEqual({ label: 'no.such' });
  });
});
