import { signal } from '@preact/signals';
import { describe, expect, it } from 'vitest';
import { changeRows, compareRows, peakRows } from '../../../../src/viewer/questions/compare/compare-rows.ts';
import {
  candidatesOf,
  firstPicks,
  pickedCars,
  withPick,
} from '../../../../src/viewer/questions/compare/compared-cars.ts';
import { thinned } from '../../../../src/viewer/questions/compare/thinned.ts';
import { readCar } from '../../../../src/viewer/state/cars.ts';
import { IMPERIAL, METRIC } from '../../../../src/viewer/state/display.ts';
import { shippedDocument } from '../../../support/shipped.ts';

const document = shippedDocument('rolling-road-estate');
const stock = readCar('stock car', document).car;
const sessionWith = (label?: string, changes = {}) => ({
  before: signal(stock),
  after: signal(label === undefined ? undefined : readCar(label, { ...document, ...changes }).car),
});

describe('the cars to pick from', () => {
  const names = (label?: string) => candidatesOf(sessionWith(label)).map(({ name }) => name);

  it('are the file as it stands, own changes, and the variants', () => {
    expect(names().slice(0, 3)).toEqual(['stock car', 'one row wider', 'bigger core']);
    expect(names('limit 60 °C').slice(0, 3)).toEqual(['stock car', 'limit 60 °C', 'one row wider']);
    // A variant that is tried stands once.
    expect(names('bigger core')).toEqual(names());
  });

  it('begin with the file and the car in hand', () => {
    const list = [{ name: 'a' }, { name: 'b' }, { name: 'c' }];
    expect([...firstPicks(list, undefined)]).toEqual([
      ['a', 0],
      ['b', 1],
    ]);
    expect([...firstPicks(list, 'c')]).toEqual([
      ['a', 0],
      ['c', 1],
    ]);
    expect([...firstPicks([{ name: 'a' }], undefined)]).toEqual([['a', 0]]);
  });

  it('keep their line while others come and go, and there are four', () => {
    const three = ['a', 'b', 'c'].reduce(withPick, new Map<string, number>());
    const other = withPick(withPick(three, 'a'), 'd');
    expect([...other].sort()).toEqual([
      ['b', 1],
      ['c', 2],
      ['d', 0],
    ]);
    const full = withPick(other, 'e');
    expect(full.get('e')).toBe(3);
    expect(withPick(full, 'f')).toBe(full);
  });

  it('are held against the first of the list, whichever was picked first', () => {
    const cars = pickedCars(
      candidatesOf(sessionWith()),
      new Map([
        ['bigger core', 0],
        ['stock car', 1],
      ]),
    );
    expect(cars.map(({ name, line }) => [name, line])).toEqual([
      ['stock car', 1],
      ['bigger core', 0],
    ]);
    expect(cars[0].changes).toEqual([]);
    // As the file's variant has it.
    expect(cars[1].changes[0]).toMatchObject({ path: 'core.airConductance', from: 390, to: 585 });
    expect(cars[1].config.core.airConductance).not.toEqual(cars[0].config.core.airConductance);
  });
});

describe('the tables', () => {
  const figures = { count: 0, decidingPull: 1, decidingPeak: 336.65, peaks: [336.65, 338.15], coolantFlow: 2e-4 };
  const other = { count: 8, peaks: [323.15], coolantFlow: 2e-4 };
  const comparison = {
    time: [],
    charge: [],
    cars: [
      { ...figures, difference: { count: 0, peaks: [0, 0] } },
      { ...other, difference: { count: 8, peaks: [-13.5], coolantFlow: 0 } },
    ],
  };
  const rowsIn = (units: typeof METRIC | typeof IMPERIAL) =>
    Object.fromEntries(
      [...compareRows(comparison, units), ...peakRows(comparison, units)].map(([name, ...cells]) => [name, cells]),
    );

  it('have each figure with its difference from the first, which has none', () => {
    const rows = rowsIn(METRIC);
    expect(rows['Pulls to the limit']).toEqual(['0', '8 (+8)']);
    expect(rows['Peak of pull 1, °C']).toEqual(['63.5', '50.0 (−13.5)']);
    expect(rows['Peak of pull 2, °C']).toEqual(['65.0', 'not run']);
    expect(rows['Coolant flow, end of pull 1, L/min']).toEqual(['12.0', '12.0 (0)']);
  });

  it('write a difference of temperatures in the unit chosen without its offset', () => {
    // 13.5 K are 24.3 degF; 50 degC are 122 degF.
    expect(rowsIn(IMPERIAL)['Peak of pull 1, °F'][1]).toEqual('122.0 (−24.3)');
  });

  it('list what was changed in any car with what each car has, in the units of the page', () => {
    const cars = [
      { changes: [] },
      { changes: [{ path: 'core.airDrop', name: 'core pressure drop', unit: 'kPa', from: 9, to: 6 }] },
      { changes: [{ path: 'room.volume', name: 'volume of the room', unit: 'm3', to: 120 }] },
      { changes: [{ path: 'x', name: 'speed', unit: 'rpm', from: 5, to: [2500, 7000] }] },
    ] as const;
    expect(changeRows(cars, METRIC)).toEqual([
      ['core pressure drop, kPa', '9', '6', '9', '9'],
      ['volume of the room, m³', 'none', 'none', '120', 'none'],
      ['speed, rpm', '5', '5', '5', '2500 rising to 7000'],
    ]);
    // 9 kPa are 1.305 psi.
    expect(changeRows(cars, IMPERIAL)[0].slice(0, 2)).toEqual(['core pressure drop, psi', '1.305']);
  });

  it('call what differs as the inputs call it, and say where it stands', () => {
    const { variants: _, upgrades: __, ...bare } = document;
    const cruise = { name: 'part', kind: 'cruise', engineSpeed: 3000, manifoldPressure: 60, exchangerAirSpeed: 9 };
    const pull = { kind: 'pull', engineSpeed: [2500, 6600], exchangerAirSpeed: 9 };
    const carWith = (label: string, durations: readonly number[], length: number) => {
      const cycle = [cruise, pull, cruise].map((phase, k) => ({ ...phase, duration: durations[k] }));
      const lines = { ...(document.lines as object), afterCore: { length } };
      return readCar(label, { ...bare, cycle, lines }).car;
    };
    const file = carWith('stock car', [60, 12, 60], 2);
    const other = carWith('other', [60, 10, 50], 3);
    const session = { before: signal(file), after: signal(other) };
    const picks = new Map([
      ['stock car', 0],
      ['other', 1],
    ]);
    const names = pickedCars(candidatesOf(session), picks)[1].changes.map(({ name }) => name);
    expect(names).toContain('pull: duration of the phase');
    expect(names).toContain('part (2): duration of the phase');
    expect(names.join('; ')).toContain('after the core: segment length');
  });
});

describe('a thinned trace', () => {
  it('leaves a short one as it is, without what has no value', () => {
    expect(thinned([0, 1, 2], [5, Number.NaN, 7], 10)).toEqual([
      [0, 5],
      [2, 7],
    ]);
  });

  it('keeps the highest and the lowest of every stretch, in order of time', () => {
    const time = Array.from({ length: 1000 }, (_, k) => k);
    const values = time.map((k) => (k === 501 ? 90 : k === 507 ? -4 : 20));
    const points = thinned(time, values, 100);
    expect(points.length).toBeLessThanOrEqual(200);
    const peak = points.findIndex(([, value]) => value === 90);
    expect(points.slice(peak, peak + 2)).toEqual([
      [501, 90],
      [507, -4],
    ]);
    expect(points.map(([at]) => at)).toEqual(points.map(([at]) => at).toSorted((a, b) => a - b));
  });
});
