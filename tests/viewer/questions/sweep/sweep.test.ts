import { describe, expect, it } from 'vitest';
import type { SweepResult } from '../../../../src/sim/index.ts';
import type { FileNumber } from '../../../../src/viewer/questions/file-numbers.ts';
import { axesOf, usualChoice } from '../../../../src/viewer/questions/sweep/sweep-axes.ts';
import { stretches } from '../../../../src/viewer/questions/sweep/sweep-figure.tsx';
import { shownFigure, sweptNumber } from '../../../../src/viewer/questions/sweep/sweep-shows.ts';
import { explainSweep } from '../../../../src/viewer/questions/sweep/sweep-words.ts';
import { IMPERIAL, METRIC, type UnitChoice } from '../../../../src/viewer/state/display.ts';

const number = (value: number, row: Partial<FileNumber['row']> = {}, path = 'core.airConductance'): FileNumber => ({
  path,
  name: 'core air conductance',
  part: 'Core',
  value,
  row: { label: 'core air conductance', meaning: '', unit: 'W/K', min: 0, max: 1000, ...row },
});
const spaced = (text: string) => text.replaceAll('\u00a0', ' ');

describe('a usual way through a number', () => {
  it('goes 30 % either side of what the car has', () => {
    expect(usualChoice(number(400), 7)).toEqual({ path: 'core.airConductance', low: 280, high: 520, count: 7 });
  });

  it('stays within what the file allows', () => {
    expect(usualChoice(number(900, { min: 700 }), 3)).toMatchObject({ low: 700, high: 1000 });
  });

  it('has two ends below nothing too: -10 goes from -13 to -7', () => {
    expect(usualChoice(number(-10, { min: -50 }), 3)).toMatchObject({ low: -13, high: -7 });
  });

  it('goes to the end of what is usual from 0, and to 1 where nothing is', () => {
    expect(usualChoice(number(0, { usual: [5, 40] }), 3)).toMatchObject({ low: 0, high: 40 });
    expect(usualChoice(number(0), 3)).toMatchObject({ low: 0, high: 1 });
  });
});

describe('the axes of a grid', () => {
  const nameOf = (path: string) => path.toUpperCase();
  const choice = { path: 'a', low: 1, high: 3, count: 3 };
  it('are values evenly apart, both ends among them', () => {
    expect(axesOf([choice, { path: 'b', low: 3, high: 0, count: 4 }], nameOf)).toEqual([
      { path: 'a', values: [1, 2, 3] },
      { path: 'b', values: [3, 2, 1, 0] },
    ]);
  });

  it.each([
    [[], 'Choose a number of the car.'],
    [[{ ...choice, low: 'empty' as const }], 'A: both ends are needed.'],
    [[{ ...choice, low: 3 }], 'A: the two ends are the same.'],
    [[choice, { ...choice, low: 2 }], 'Twice the same number: choose another.'],
    [
      [
        { ...choice, count: 15 },
        { ...choice, path: 'b', count: 17 },
      ],
      '255 cars are more than the 240 that a page waits for: take fewer values.',
    ],
  ])('are none yet: %j', (choices, why) => {
    expect(axesOf(choices, nameOf)).toEqual({ why });
  });
});

const result = (value: number, pulls: number, peak: number): SweepResult => ({
  changes: { 'core.airConductance': value },
  pulls,
  pulls_run: 8,
  hottest_peak_degC: peak,
  settled_peak_degC: peak + 2,
  coolant_flow_at_end_of_first_pull_L_min: 13.2,
});
const swept = [sweptNumber(number(390), [300, 400, 500], METRIC)];

describe('what a grid says', () => {
  const results = [result(300, 0, 66), result(400, 8, 57), result(500, 8, 52)];
  it('is in how many cars the pulls are most, which of them is nearest to this one, and how few they may be', () => {
    expect(spaced(explainSweep(swept, results, shownFigure('pulls', METRIC), 'pulls', METRIC).join(' '))).toBe(
      'Most pulls: 8 of 8, in 2 of 3 cars; of these core air conductance 400 W/K is nearest to this car. Fewest: 0.',
    );
  });

  it('names the coolest where all make the same', () => {
    expect(spaced(explainSweep(swept, results.slice(1), shownFigure('pulls', METRIC), 'pulls', METRIC)[0])).toBe(
      'All of these cars make 8 of 8 pulls; coolest with core air conductance 500 W/K.',
    );
  });

  it('tells the span of the figure that is shown, in the units of the page: 54 and 68 degC are 129.2 and 154.4 degF', () => {
    const said = explainSweep(swept, results, shownFigure('settled peak', IMPERIAL), 'settled peak', IMPERIAL);
    expect(spaced(said[1])).toBe('Settled peak: 129.2 °F to 154.4 °F.');
  });

  it('says what the file refuses and what stops', () => {
    const refused = { changes: { 'core.airConductance': -1 }, refused: ['core.airConductance: got -1.'] };
    const stopped = { ...result(600, 3, 60), stoppedBecause: ['coolant boils at ', { temperature: 393.15 }] };
    const said = (units: UnitChoice) =>
      explainSweep(swept, [refused, stopped], shownFigure('pulls', units), 'pulls', units).map(spaced).slice(1);
    expect(said(METRIC)).toEqual([
      'The file refuses 1 of 2 cars: core.airConductance: got −1.',
      'The run of 1 of 2 cars stops early: coolant boils at 120.0 °C.',
    ]);
    // 120 degC are 248 degF.
    expect(said(IMPERIAL)[1]).toBe('The run of 1 of 2 cars stops early: coolant boils at 248.0 °F.');
  });
});

describe('the curve of a figure', () => {
  it('has a gap where a car has no answer', () => {
    const points = [1, 2, 3, 4].map((at) => ({ at, up: at === 3 ? undefined : 10 * at }));
    expect(stretches(points)).toEqual([
      [
        { at: 1, up: 10 },
        { at: 2, up: 20 },
      ],
      [{ at: 4, up: 40 }],
    ]);
    expect(stretches([{ at: 1, up: undefined }])).toEqual([]);
  });
});
