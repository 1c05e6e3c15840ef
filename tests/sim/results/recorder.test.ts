import { describe, expect, it } from 'vitest';
import { CoreFieldRecorder } from '../../../src/sim/results/core-field-recorder.ts';
import { makeRow, Recorder } from '../../../src/sim/results/recorder.ts';

describe('the recorder', () => {
  /** Rows whose numbers tell row and column. */
  function recorded(rowCount: number): Recorder {
    const recorder = new Recorder();
    const row = makeRow();
    for (let k = 0; k < rowCount; k++) {
      row.time = k;
      row.chargeTemperature = 1000 + k;
      row.chargeDewPoint = -k;
      recorder.add(row);
    }
    return recorder;
  }

  it.each([0, 1, 1024, 1025, 5000])('gives back %d rows as they came, however often it had to grow', (rowCount) => {
    const recorder = recorded(rowCount);
    const expected = Array.from({ length: rowCount }, (_, k) => k);
    for (const columns of [recorder.columns(), recorder.finalColumns()]) {
      expect([...columns.time]).toEqual(expected);
      expect([...columns.chargeTemperature]).toEqual(expected.map((k) => 1000 + k));
      expect([...columns.chargeDewPoint].map((value) => value + 0)).toEqual(expected.map((k) => 0 - k));
      expect(new Set(Object.values(columns).map(({ length }) => length))).toEqual(new Set([rowCount]));
    }
    expect(recorder.rowCount).toBe(rowCount);
  });

  it('ends with columns in buffers of their own that later rows do not change', () => {
    const recorder = recorded(3);
    const final = recorder.finalColumns();
    const row = makeRow();
    row.time = 99;
    recorder.add(row);
    expect([...final.time]).toEqual([0, 1, 2]);
    expect(final.time.buffer.byteLength).toBe(3 * 8);
    expect([...recorder.columns().time]).toEqual([0, 1, 2, 99]);
  });
});

describe('the recorder of core fields', () => {
  it('gives back every cell of every row, however often it had to grow', () => {
    const recorder = new CoreFieldRecorder(2, 3);
    const value = (row: number, cell: number, which: number) => 10 * (6 * row + cell) + which;
    for (let row = 0; row < 700; row++) {
      recorder.nextRow().forEach((array, which) => {
        expect(array.length).toBe(6);
        for (let cell = 0; cell < 6; cell++) array[cell] = value(row, cell, which);
      });
    }
    const { nx, ny, metal, coolant, air } = recorder.finish();
    expect([nx, ny]).toEqual([2, 3]);
    [metal, coolant, air].forEach((array, which) => {
      expect(array.length).toBe(700 * 6);
      expect(array.every((number, k) => number === value(Math.floor(k / 6), k % 6, which))).toBe(true);
    });
  });
});
