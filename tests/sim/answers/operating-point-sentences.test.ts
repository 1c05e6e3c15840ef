import { describe, expect, it } from 'vitest';
import { explainOperatingPoint } from '../../../src/sim/answers/operating-point-sentences.ts';
import { FILE_WORDING } from '../../../src/sim/answers/wording.ts';
import { HAND_MADE } from '../../viewer/loop/hand-made.ts';

describe('an operating point in words', () => {
  it('warns of a short suction and of a pump held shut, and of nothing else', () => {
    const warnings = (point: typeof HAND_MADE) =>
      explainOperatingPoint(point, FILE_WORDING).flatMap(({ text, isWarning }) => (isWarning ? [text] : []));
    expect(warnings(HAND_MADE)).toEqual([]);
    const short = warnings({ ...HAND_MADE, suction: { margin: 6e3, needed: 10e3 } });
    expect(short).toHaveLength(1);
    expect(short[0]).toContain('only 6.0 kPa above the vapour pressure of the coolant, and the pump needs 10.0 kPa');
    const boiling = warnings({ ...HAND_MADE, suction: { margin: -6e3, needed: 10e3 } });
    expect(boiling[0]).toMatch(
      /^Pump inlet 6\.0 kPa below the vapour pressure of the coolant, and the pump needs 10\.0 kPa above it/,
    );
    expect(warnings({ ...HAND_MADE, heldShut: ['second pump'] })[0]).toContain('The second pump is held shut');
  });

  it('has a line for wires and one for a measured flow where there are such', () => {
    const point = {
      ...HAND_MADE,
      wire: { supply: 13.8, atPump: 13.1, drop: 0.7 },
      measured: { flow: 3e-4, byCurves: 3.5e-4, resistanceFactor: 1.4 },
    };
    const texts = explainOperatingPoint(point, FILE_WORDING).map(({ text }) => text);
    expect(texts).toHaveLength(3);
    expect(texts[1]).toBe('13.8 V at the battery, 13.10 V at the pump: 0.70 V lost in its wires.');
    const wired = (supply: number, atPump: number) =>
      explainOperatingPoint({ ...point, wire: { supply, atPump, drop: supply - atPump } }, FILE_WORDING)[1].text;
    expect(wired(14.72, 14.72 + 1e-15)).toBe('14.72 V at the battery and at the pump: nothing is lost in its wires.');
    expect(wired(14.72, 14.6)).toBe('14.72 V at the battery, 14.60 V at the pump: 0.12 V lost in its wires.');
    // 3e-4 m3/s are 18 L/min.
    expect(texts[2]).toContain('Measured 18.0 L/min; the curves alone give 21.0 L/min.');
    const since = explainOperatingPoint({ ...point, measured: { ...point.measured, now: 4e-4 } }, FILE_WORDING).map(
      ({ text }) => text,
    );
    expect(since[2]).toMatch(/With what has changed since, the meter would read 24\.0 L\/min\.$/);
    expect(explainOperatingPoint(HAND_MADE, FILE_WORDING)).toHaveLength(1);
  });
});
