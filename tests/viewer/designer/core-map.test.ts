import { describe, expect, it } from 'vitest';
import { coreMapLists } from '../../../src/sim/answers/core-map.ts';
import { summarisePulls } from '../../../src/sim/answers/pull-summary.ts';
import { conduct } from '../../../src/sim/answers/study.ts';
import { studyCoreMap } from '../../../src/sim/index.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { colourScale, inkOn } from '../../../src/viewer/colour-scale.ts';
import { MAP_SHOWS, mapTable, optimumSentences, ownCore, pickChanges } from '../../../src/viewer/designer/core-map.ts';
import { IMPERIAL, METRIC } from '../../../src/viewer/state/display.ts';
import { Session } from '../../../src/viewer/state/session.ts';
import { shippedDocument } from '../../support/shipped.ts';

const session = new Session();
session.open(JSON.stringify(shippedDocument('rolling-road-estate')));
session.tryVariant('core by its measures, 120 mm deep');
const car = session.inHand.value;
if (car?.config.core.geometry === undefined) throw new Error('no measures');
const lists = coreMapLists(car.config.core.geometry);
const map = conduct(studyCoreMap(car.config, lists));
const own = ownCore(car);
if (map === undefined || own === undefined) throw new Error('no map');
const spaced = (text: string) => text.replaceAll('\u00a0', ' ');

describe('the map as a table', () => {
  const table = mapTable(map, 'charge peak', own, METRIC);
  const cellAt = (fins: number, depth: number, of = table) => {
    const row = of.rows.find(({ finPitch }) => Math.abs(0.0254 / finPitch - fins) < 0.01);
    return row?.cells[of.depths.findIndex((each) => Math.abs(each - depth) < 1e-6)];
  };

  it('has every core of the library once, open fins above and the deepest on the right', () => {
    const tables = [0.8, 1, 1.25].map((width) => mapTable(map, 'charge peak', own, METRIC, width));
    const cells = tables.flatMap(({ rows }) => rows.flatMap(({ cells: all }) => all));
    expect(cells).toHaveLength(3 * 48);
    expect(new Set(cells.map((cell) => cell?.point)).size).toBe(map.points.length);
    expect(tables[0].ends).toEqual(tables[2].ends);
    expect(table.rows[0].finPitch).toBeGreaterThan(table.rows[11].finPitch);
    expect(table.depths.map((depth) => Math.round(1000 * depth))).toEqual([60, 90, 120, 150]);
  });

  it('frames the core of the car, and no other', () => {
    const framed = (width: number) =>
      mapTable(map, 'charge peak', own, METRIC, width).rows.flatMap(({ cells }) => cells.filter((cell) => cell?.isOwn));
    expect([0.8, 1, 1.25].map((width) => framed(width).length)).toEqual([0, 1, 0]);
    expect(cellAt(14, 0.12)?.isOwn).toBe(true);
  });

  it.each([
    ['charge peak', METRIC, (p: (typeof map.points)[number]) => (p.peak - 273.15).toFixed(1)],
    ['charge peak', IMPERIAL, (p: (typeof map.points)[number]) => ((p.peak - 273.15) * 1.8 + 32).toFixed(1)],
    ['core pressure drop', METRIC, (p: (typeof map.points)[number]) => (p.airDrop / 1000).toFixed(2)],
    ['core pressure drop', IMPERIAL, (p: (typeof map.points)[number]) => (p.airDrop / 6894.757).toFixed(3)],
    ['drive power', METRIC, (p: (typeof map.points)[number]) => (p.drivePower / 1000).toFixed(2)],
    ['air mass', METRIC, (p: (typeof map.points)[number]) => p.airFlow.toFixed(4)],
  ] as const)('shows %s as the library has it, in the units of the reader', (show, units, expected) => {
    for (const { cells } of mapTable(map, show, own, units).rows)
      for (const cell of cells) expect(cell?.text).toBe(cell && expected(cell.point));
  });

  it('writes where it is too open to cool and too dense to breathe, and says so whole', () => {
    const [open, good, dense] = [cellAt(4, 0.06), cellAt(14, 0.12), cellAt(32, 0.15)];
    expect([open?.word, good?.word, dense?.word]).toEqual(['open', '', 'dense']);
    expect(open?.said).toContain('too open to cool');
    expect(dense?.said).toContain('too dense to breathe');
    expect(spaced(good?.said ?? '')).toMatch(/^14 fins per inch, 120 mm deep: charge peak 68\.\d °C, this car$/);
  });

  it('has a colour for every cell, whatever is shown', () => {
    for (const show of MAP_SHOWS)
      for (const { cells } of mapTable(map, show, own, METRIC).rows)
        for (const cell of cells) expect(cell?.colour).toBeDefined();
  });

  it('names the best core of each goal, and that it is at the edge', () => {
    const sentences = optimumSentences(map, METRIC).map(spaced);
    expect(sentences).toHaveLength(3);
    for (const [k, { goal, point }] of map.optima.entries()) {
      const { finPitch, depth, width } = map.points[point];
      const best = `${Math.round(0.0254 / finPitch)} fins per inch, ${Math.round(1000 * depth)} mm deep${width === 1 ? '' : `, ×${width} wide`}`;
      expect(sentences[k].toLowerCase()).toContain(`${goal}: ${best}; at the edge of the map`);
      const shown = mapTable(map, 'charge peak', own, METRIC, width);
      expect(cellAt(0.0254 / finPitch, depth, shown)?.bestFor).toContain(goal);
    }
  });
});

describe('a core taken from the map', () => {
  it.each([0, 23, 40, 143])('runs as the map says, point %i', (place) => {
    const point = map.points[place];
    const taken = new Session();
    taken.open(JSON.stringify(shippedDocument('rolling-road-estate')));
    taken.tryVariant('core by its measures, 120 mm deep');
    expect(taken.change(pickChanges(point, 0.2), 'core').filter(({ severity }) => severity === 'error')).toEqual([]);
    const config = taken.inHand.value?.config;
    if (config === undefined) throw new Error('no car');
    const [pull] = summarisePulls(simulate(config), config.limit.chargeTemperature);
    expect(Math.abs(pull.peak - point.peak)).toBeLessThan(1e-6);
    expect(Math.abs(pull.atEnd.airFlow / point.airFlow - 1)).toBeLessThan(1e-9);
  });

  it('leaves the map as it is: the same lists round it give the same points', () => {
    const config = { ...car.config };
    const taken = new Session();
    taken.open(JSON.stringify(shippedDocument('rolling-road-estate')));
    taken.tryVariant('core by its measures, 120 mm deep');
    const alike = map.points.filter(({ width }) => width === 1)[30];
    taken.change(pickChanges(alike, 0.2), 'core');
    const again = conduct(studyCoreMap(taken.inHand.value?.config ?? config, lists));
    const differences = map.points.map((point, k) => Math.abs((again?.points[k].peak ?? 0) - point.peak));
    expect(Math.max(...differences)).toBeLessThan(1e-6);
  });
});

describe('ink on a colour', () => {
  // WCAG 2.2, 1.4.3: (lighter + 0.05) over (darker + 0.05) of relative luminances, at least 4.5.
  it('is read on every colour of the scale at 4.5 to 1', () => {
    const { low, high, colourAt } = colourScale('air', []);
    for (let k = 0; k <= 256; k++) {
      const colour = colourAt(low + ((high - low) * k) / 256);
      if (colour === undefined) throw new Error('no colour');
      const [red, green, blue] = colour.map((level) =>
        level / 255 <= 0.04045 ? level / 255 / 12.92 : ((level / 255 + 0.055) / 1.055) ** 2.4,
      );
      const luminance = 0.2126 * red + 0.7152 * green + 0.0722 * blue;
      const contrast = inkOn(colour) === 'black' ? (luminance + 0.05) / 0.05 : 1.05 / (luminance + 0.05);
      expect(contrast).toBeGreaterThanOrEqual(4.5);
    }
  });
});
