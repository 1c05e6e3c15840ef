import { describe, expect, it } from 'vitest';
import { isNumberRow, type NumberRow, parameterGroups } from '../../../src/sim/index.ts';
import { measureOf } from '../../../src/viewer/fields/measure.ts';
import { sliderSpan } from '../../../src/viewer/fields/slider-span.ts';
import { IMPERIAL, METRIC } from '../../../src/viewer/state/display.ts';

function rowOf(title: string, key: string): NumberRow {
  const row = parameterGroups()
    .find((group) => group.title === title)
    ?.rows.find((each) => each.key === key)?.row;
  if (row === undefined || !isNumberRow(row)) throw new Error(`no number ${key}`);
  return row;
}
const span = (title: string, key: string, own: number, others: number[] = [], present = own, units = METRIC) => {
  const row = rowOf(title, key);
  const found = sliderSpan(row, measureOf(row.unit, units), own, others, present);
  if (found === undefined) throw new Error('no slider');
  return found;
};

describe('a slider', () => {
  it('goes from half to double of the own value where the usual range is wide', () => {
    expect(span('charge-air core', 'airConductance', 390)).toEqual({ min: 195, max: 780, step: 5 });
  });

  it('goes over the usual range where that is narrow: -40 to 50 degC, 0.7 to 1.1', () => {
    expect(span('outside air', 'temperature', 27)).toMatchObject({ min: -40, max: 50 });
    expect(span('engine', 'volumetricEfficiency', 0.95)).toMatchObject({ min: 0.7, max: 1.1 });
  });

  it('reaches the values that the variants of the file give: 12.3 L beside 2.3 L', () => {
    const { min, max } = span('tank', 'coolantVolume', 2.3, [12.3]);
    expect(min).toBeGreaterThan(1);
    expect(min).toBeLessThanOrEqual(1.15);
    expect(max).toBeGreaterThanOrEqual(12.3);
    expect(max).toBeLessThan(13);
  });

  it('widens to a present value that lies outside', () => {
    expect(span('charge-air core', 'airConductance', 390, [], 1203).max).toBeGreaterThanOrEqual(1203);
    expect(span('outside air', 'temperature', 27, [], -45).min).toBeLessThanOrEqual(-45);
  });

  it('never leaves what the reader takes: glycol ends at 57.3 %', () => {
    expect(span('coolant', 'glycolByVolume', 40).min).toBe(0);
    expect(span('segment of a line', 'length', 0.015).min).toBeGreaterThanOrEqual(0.01);
  });

  it('goes in whole steps for what is counted', () => {
    expect(span('repetition', 'repeat', 8)).toEqual({ min: 4, max: 16, step: 1 });
  });

  it('is in the unit shown: -40 to 50 degC is -40 to 122 degF', () => {
    expect(span('outside air', 'temperature', 27, [], 27, IMPERIAL)).toMatchObject({ min: -40, max: 122 });
  });

  it('has ends on whole steps', () => {
    const { min, max, step } = span('charge-air core', 'metalHeatCapacity', 2.6);
    expect(step).toBe(0.05);
    for (const end of [min, max]) expect(Math.abs(end / step - Math.round(end / step))).toBeLessThan(1e-9);
  });

  it('is not there where there is nothing to slide over', () => {
    const row = { ...rowOf('intake', 'pickUp'), min: 0, max: 0, usual: [0, 0] as const };
    expect(sliderSpan(row, measureOf('K', METRIC), 0, [], 0)).toBeUndefined();
  });
});
