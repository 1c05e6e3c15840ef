import { describe, expect, it } from 'vitest';
import { type Config, parseScenario, toConfig } from '../../../../src/sim/index.ts';
import { upgradeMarks } from '../../../../src/viewer/questions/upgrades/upgrade-marks.ts';
import { upgradeTable, wayRows } from '../../../../src/viewer/questions/upgrades/upgrade-rows.ts';
import { refusals, withUpgradedCars } from '../../../../src/viewer/questions/upgrades/upgraded-cars.ts';
import { waySteps } from '../../../../src/viewer/questions/upgrades/way-steps.ts';
import { IMPERIAL, METRIC } from '../../../../src/viewer/state/display.ts';
import { shortDocument } from '../../../support/short-session.ts';
import { STUDY, UPGRADES } from './hand-made.ts';

const LIST = [
  { name: 'core', price: 100, changes: { 'core.airConductance': 585 } },
  { name: 'outside', changes: { 'ambient.temperature': 20 } },
  // The pump of the changed car below is given by its curve, beside which no free flow stands.
  { name: 'half a pump', hours: 2, changes: { 'pump.freeFlow': 13 } },
];

function read(edits: Parameters<typeof shortDocument>[0]) {
  const { scenario, issues } = parseScenario(JSON.stringify(shortDocument(edits)));
  if (scenario === undefined) throw new Error(issues[0].message);
  return scenario;
}

const car = read({ upgrades: LIST });
const list = car.values.upgrades ?? [];
/** As a changed car is: without a list of its own. */
const byCurve = read({
  pump: {
    curve: [
      { flow: 0, pressure: 28 },
      { flow: 26, pressure: 0 },
    ],
    electricalPower: 50,
  },
});

describe('the cars that are asked about', () => {
  it('are all sets but the empty one where orders are wanted, else each alone and in order', () => {
    const keys = (withOrders: boolean) => withUpgradedCars(car, { list, withOrders }).cars.map(([key]) => key);
    expect(keys(true).toSorted()).toEqual(['0', '0,1', '0,1,2', '0,2', '1', '1,2', '2']);
    expect(keys(false).toSorted()).toEqual(['0', '0,1', '0,1,2', '1', '2']);
  });

  it('have what their set changes, and nothing else', () => {
    const { cars } = withUpgradedCars(car, { list, withOrders: true });
    const base = toConfig(car);
    const with02 = new Map<string, Config>(cars).get('0,2');
    expect(with02?.ambient).toEqual(base.ambient);
    expect(with02?.core).not.toEqual(base.core);
    expect(new Map<string, Config>(cars).get('1')?.ambient.temperature).toBeCloseTo(293.15, 9);
    expect(new Map<string, Config>(cars).get('1')?.core).toEqual(base.core);
  });

  it('go to the worker as plain data', () => {
    const asked = withUpgradedCars(car, { list, withOrders: false });
    expect(structuredClone(asked)).toEqual(asked);
    expect(asked.upgrades).toEqual([
      { name: 'core', price: 100 },
      { name: 'outside' },
      { name: 'half a pump', hours: 2 },
    ]);
  });

  it('leave out what is fitted already, but for the car that shows it', () => {
    const wide = read({ 'core.airConductance': 585 });
    const keys = (withOrders: boolean) => withUpgradedCars(wide, { list, withOrders }).cars.map(([key]) => key);
    expect(keys(true)).toEqual(['0', '1', '2', '1,2']);
    expect(keys(false)).toEqual(['0', '1', '2', '1,2']);
    const steps = [{ upgrade: 1, car: { count: 1, pullsRun: 2 } }, { upgrade: 2 }];
    // Refused with the pump that is too small, and not for the core, which is not made again.
    const reasons = refusals({ alone: steps.slice(0, 1), inOrder: steps }, byCurve, list);
    expect(reasons.join()).toContain('half a pump');
  });

  it('leave out what the file refuses, and the reason is told once', () => {
    const keys = withUpgradedCars(byCurve, { list, withOrders: true }).cars.map(([key]) => key);
    expect(keys).toEqual(['0', '1', '0,1']);
    const fine = { count: 1, pullsRun: 2 };
    const steps = [{ upgrade: 0, car: fine }, { upgrade: 1, car: fine }, { upgrade: 2 }];
    const reasons = refusals({ alone: steps, inOrder: steps }, byCurve, list);
    expect(reasons).toHaveLength(1);
    expect(reasons[0]).toContain('half a pump');
    expect(refusals({ alone: steps.slice(0, 2), inOrder: steps.slice(0, 2) }, byCurve, list)).toEqual([]);
  });
});

describe('the table of upgrades', () => {
  const { heads, rows } = upgradeTable(STUDY.base, STUDY.inOrder, UPGRADES, METRIC, 'on top');
  const column = (name: string) => rows.map((row) => row[heads.indexOf(name)]);

  it('begins with the car as it is and has one row a step', () => {
    expect(column('Upgrade')).toEqual(['as it is', 'core', 'sticker', 'pump']);
    expect(column('Pulls')).toEqual(['0 of 4', '4 of 4', '4 of 4', '–']);
    expect(column('Its peak, °C')).toEqual(['60.0', '47.0', '48.0', '–']);
    expect(column('Change, K')).toEqual(['–', '−13.0', '+1.0', '–']);
    expect(column('On the car as it is, K')).toEqual(['–', '−13.0', '−12.0', '–']);
  });

  it('says what each does, and what is refused', () => {
    expect(column('Effect')).toEqual(['–', 'better', 'worse', 'refused']);
    const alone = upgradeTable(STUDY.base, STUDY.alone, UPGRADES, METRIC, 'alone');
    expect(alone.rows.map((row) => row[1])).toEqual(['–', 'better', 'no effect', 'refused']);
    expect(alone.heads).toEqual(heads.filter((head) => head !== 'On the car as it is, K'));
  });

  it('has prices and hours of the file, and figures of the first pull', () => {
    expect(column('Price')).toEqual(['–', '1200.5', '10', '–']);
    expect(column('Hours')).toEqual(['–', '9', '–', '–']);
    expect(column('Coolant, L/min')[1]).toBe('12.0');
    expect(column('Core drop, kPa')[1]).toBe('7.50');
    expect(column('Drive power, kW')[1]).toBe('24.00');
    expect(column('Air, kg/s')[1]).toBe('0.2800');
  });

  it('is in short what a customer asks for', () => {
    const short = upgradeTable(STUDY.base, STUDY.inOrder, UPGRADES, METRIC, 'short');
    expect(short.heads).toEqual(['Upgrade', 'Effect', 'Pulls', 'Its peak, °C', 'Change, K', 'Price', 'Hours']);
    expect(short.rows[1]).toEqual(['core', 'better', '4 of 4', '47.0', '−13.0', '1200.5', '9']);
  });

  it('is in the chosen units', () => {
    const imperial = upgradeTable(STUDY.base, STUDY.alone, UPGRADES, IMPERIAL, 'alone');
    // 47 degC is 116.6 degF; 13 K are 23.4 degF.
    expect(imperial.heads[4]).toBe('Its peak, °F');
    expect(imperial.rows[1].slice(4, 6)).toEqual(['116.6', '−23.4']);
  });
});

describe('the picture of upgrades', () => {
  it('goes from the peak without the step to the peak with it', () => {
    const { rows, limit, asItIs } = upgradeMarks(STUDY, STUDY.inOrder, UPGRADES, METRIC);
    expect([limit, asItIs]).toEqual([expect.closeTo(50, 6), expect.closeTo(60, 6)]);
    expect(rows[1].alone).toEqual({
      without: expect.closeTo(60, 6),
      with: expect.closeTo(60, 6),
      says: '60.0 no effect',
    });
    expect(rows[1].inOrder).toEqual({
      without: expect.closeTo(47, 6),
      with: expect.closeTo(48, 6),
      says: '48.0 worse',
    });
    expect(rows[0].inOrder.says).toBe('47.0');
    expect(rows[2].alone).toEqual({ says: 'refused' });
  });

  it('has its rows in the order that is shown, each with what it does alone', () => {
    const { rows } = upgradeMarks(STUDY, STUDY.inOrder.toReversed(), UPGRADES, METRIC);
    expect(rows.map(({ name }) => name)).toEqual(['pump', 'sticker', 'core']);
    expect(rows.map(({ alone }) => alone.says)).toEqual(['refused', '60.0 no effect', '47.0']);
  });

  it('has round ends that hold every mark and the limit', () => {
    expect(upgradeMarks(STUDY, STUDY.inOrder, UPGRADES, METRIC)).toMatchObject({ range: [45, 60] });
    const { range, ticks } = upgradeMarks({ ...STUDY, limit: 273.15 + 90 }, STUDY.inOrder, UPGRADES, METRIC);
    expect(range).toEqual([40, 90]);
    expect(ticks).toEqual([40, 50, 60, 70, 80, 90]);
  });

  it('has no mark for a car that ends no pull', () => {
    const alone = [{ upgrade: 0, car: { count: 0, pullsRun: 0 } }, ...STUDY.alone.slice(1)];
    expect(upgradeMarks({ ...STUDY, alone }, STUDY.inOrder, UPGRADES, METRIC).rows[0].alone).toEqual({
      says: 'no whole pull',
    });
  });
});

describe('the cheapest way', () => {
  const ways = [
    { pulls: 0, money: 0, hours: 0, upgrades: [] },
    { pulls: 1, money: 100, hours: 2.5, upgrades: [1] },
    { pulls: 4, money: 1300.5, upgrades: [0, 1] },
  ];

  it('is a row for each number of pulls up to which it is the cheapest', () => {
    expect(wayRows(ways, UPGRADES)).toEqual([
      ['0', '0', '0', 'the car as it is'],
      ['1', '100', '2.5', 'sticker'],
      ['2 to 4', '1300.5', '–', 'core; sticker'],
    ]);
  });

  it('is a stair that goes up where the money is there, and on to the end', () => {
    expect(waySteps(ways, 1500)).toEqual([
      [0, 0],
      [100, 0],
      [100, 1],
      [1300.5, 1],
      [1300.5, 4],
      [1500, 4],
    ]);
  });
});
