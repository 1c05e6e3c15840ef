import { describe, expect, it } from 'vitest';
import type { RouteComparison, RouteFigures, TurnLine } from '../../../src/sim/index.ts';
import { routeRows } from '../../../src/viewer/routes/route-rows.ts';
import { plenumSentence, turnRow } from '../../../src/viewer/routes/turns.ts';
import { IMPERIAL, METRIC } from '../../../src/viewer/state/display.ts';

const KELVIN = 273.15;
const spaced = (text: string) => text.replaceAll('\u00a0', ' ');

/** Invented figures of a route. */
const figures = (charge: number, gasPower: number, pullPeak?: number): RouteFigures => ({
  route: 'before core',
  compressorInlet: 40 + KELVIN,
  discharge: 55 + KELVIN,
  casing: 56 + KELVIN,
  coreOutlet: 37 + KELVIN,
  charge: charge + KELVIN,
  recirculation: 0.614,
  gasPower,
  heatToCore: 700,
  coolantIntoCore: 34 + KELVIN,
  coreEffectiveness: 0.86,
  ...(pullPeak !== undefined && { pullPeak: pullPeak + KELVIN }),
});
const comparison: RouteComparison = {
  phase: 'cruise',
  lasted: 1800,
  before: figures(38.7, 753, 61.3),
  after: figures(38.0, 2210, 61.3),
  chargeChangeWithoutDrop: -0.2,
};
const rowOf = (name: string, units = METRIC, of = comparison) =>
  Object.values(routeRows(of, units).find((row) => row.name === name) ?? {}).map(spaced);

describe('both routes side by side', () => {
  it.each([
    ['Charge', '38.7 °C', '38.0 °C', '−0.7 K'],
    ['Recirculated over engine air, r', '0.61', '0.61', '0.00'],
    // Watts up to 2 kW, as the sentences have them.
    ['Power into the gas', '753 W', '2.2 kW', '+1.5 kW'],
    ['Peak of the pull that follows', '61.3 °C', '61.3 °C', '0.0 K'],
  ])('%s: %s, %s, %s', (name, before, after, change) => {
    expect(rowOf(name)).toEqual([name, before, after, change]);
  });

  it('are in the units of the reader: 38.7 °C is 101.7 °F, 0.7 K is 1.3 °F, 753 W is 1.01 hp', () => {
    expect(rowOf('Charge', IMPERIAL)).toEqual(['Charge', '101.7 °F', '100.4 °F', '−1.3 °F']);
    expect(rowOf('Power into the gas', IMPERIAL)[1]).toBe('1.01 hp');
  });

  it('leave open what no pull follows', () => {
    const without = { ...comparison, after: figures(38, 900) };
    expect(rowOf('Peak of the pull that follows', METRIC, without).slice(1)).toEqual(['–', '–', '–']);
  });
});

const point = (value: number, charge: number, plenumTurn?: number): TurnLine['points'][number] => ({
  value,
  recirculation: 0.61,
  coreEffectiveness: 0.864,
  change: { compressorInlet: -6, discharge: -2, casing: -1, charge },
  ...(plenumTurn !== undefined && { plenumTurn }),
});

describe('where it turns', () => {
  const line: TurnLine = {
    name: 'core conductance',
    meaning: 'both sides: a better or a poorer core',
    kind: 'factor',
    points: [point(0.5, 1.08, 2.64), point(1, 0.724, 1.87), point(4, -0.07)],
    turns: [3.42],
  };

  it('is a row of values with sign and word, the car as it is marked, and what turns at each', () => {
    const { name, cells, turn } = turnRow(line, METRIC);
    expect(name).toBe('Core conductance');
    expect(turn).toBe('turns at ×3.42');
    expect(cells.map(({ change, word, isOwn }) => [spaced(change), word, isOwn])).toEqual([
      ['+1.08 K', 'warmer', false],
      ['+0.72 K', 'warmer', true],
      ['−0.07 K', 'cooler', false],
    ]);
    expect(cells[1].asides).toEqual(['ε 0.86', 'plenum ×1.9']);
    expect(cells[2].asides).toEqual(['ε 0.86']);
  });

  it('is a plain value where it stands instead, says so where it does not turn, and calls nothing nothing', () => {
    const leak: TurnLine = {
      ...line,
      name: 'leak past the core',
      kind: 'value',
      points: [point(0.1, 0.004)],
      turns: [],
    };
    const { cells, turn } = turnRow(leak, METRIC);
    expect(turn).toBe('does not turn here');
    expect(cells[0]).toMatchObject({ value: '0.1', isOwn: false, word: 'no change' });
  });

  it('is told of the plenum in a sentence, if at all', () => {
    const plenum: TurnLine = { ...line, name: 'plenum heat', turns: [1.87] };
    expect(plenumSentence([line, plenum])).toBe(
      'With this car the charge turns where the plenum is coupled 1.9 times as hot.',
    );
    expect(plenumSentence([line, { ...plenum, turns: [] }])).toBeUndefined();
  });
});
