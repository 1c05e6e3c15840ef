import { describe, expect, it } from 'vitest';
import { operatingPoint } from '../../../src/sim/index.ts';
import {
  canStandBeside,
  type DoubledPart,
  phasesIn,
  secondChanges,
  secondPlaceOf,
  sinkChanges,
  tankChanges,
  tankPlaceOf,
} from '../../../src/viewer/document/loop-changes.ts';
import { givenOtherwise } from '../../../src/viewer/document/test-point-changes.ts';
import { Session } from '../../../src/viewer/state/session.ts';
import { changed, shippedCar } from './changed.ts';

const CARS = ['rolling-road-estate', 'ridge-roadster', 'motorway-wagon', 'session-coupe', 'quarter-mile-saloon'];
const WITH_EXCHANGER = CARS.filter((name) => name !== 'quarter-mile-saloon');

const flowOf = (car: ReturnType<typeof shippedCar>): number => operatingPoint(car.config)?.flow ?? Number.NaN;

const cases = [
  ...CARS.map((name) => [name, 'pump'] as const),
  ...WITH_EXCHANGER.map((name) => [name, 'exchanger'] as const),
];

describe.each(cases)('%s: a second %s', (name, part: DoubledPart) => {
  const car = shippedCar(name);
  const second = part === 'pump' ? 'secondPump' : 'secondExchanger';

  it('in series, side by side and out again: the file is what it was', () => {
    expect(secondPlaceOf(car.config, part)).toBe('none');
    const inSeries = changed(car, secondChanges(car, part, 'in series'));
    expect(secondPlaceOf(inSeries.config, part)).toBe('in series');
    expect(inSeries.config[second]).toEqual(inSeries.config[part]);
    const beside = changed(inSeries, secondChanges(inSeries, part, 'side by side'));
    expect(secondPlaceOf(beside.config, part)).toBe('side by side');
    expect(beside.config.loop).toContainEqual([[part], [second]]);
    const series = changed(beside, secondChanges(beside, part, 'in series'));
    expect(series.config).toEqual(inSeries.config);
    for (const each of [inSeries, beside]) {
      expect(changed(each, secondChanges(each, part, 'none')).document).toEqual(car.document);
    }
  });

  it('side by side each takes half, and more flows than before', () => {
    const beside = changed(car, secondChanges(car, part, 'side by side'));
    expect(operatingPoint(beside.config)?.shares[0]).toBeCloseTo(0.5, 9);
    expect(flowOf(beside)).toBeGreaterThan(flowOf(car));
  });
});

describe.each(CARS)('%s: the loop', (name) => {
  const car = shippedCar(name);

  it('has an extra heat sink behind the core, and is what it was without it', () => {
    const sink = changed(car, sinkChanges(car, true));
    expect(sink.config.loop[sink.config.loop.indexOf('core') + 1]).toBe('heatSink');
    // From 5 to 40 degC: 278.15 and 313.15 K.
    expect(sink.config.heatSink?.heat).toEqual([0, 2000]);
    expect(sink.config.heatSink?.temperature[1]).toBeCloseTo(313.15, 9);
    expect(changed(sink, sinkChanges(sink, false)).document).toEqual(car.document);
  });
});

describe.each(WITH_EXCHANGER)('%s: the tank', (name) => {
  const car = shippedCar(name);

  it('goes behind the core and back before the pump', () => {
    expect(tankPlaceOf(car.config)).toBe('before the pump');
    const moved = changed(car, tankChanges(car, 'after the core'));
    expect(tankPlaceOf(moved.config)).toBe('after the core');
    expect(moved.config.loop).toEqual(['exchanger', 'pump', 'core', 'reservoir']);
    expect(changed(moved, tankChanges(moved, 'before the pump')).document).toEqual(car.document);
  });
});

describe('the loop of a car', () => {
  it('leaves nothing to choose about the tank where it stands between core and pump', () => {
    expect(tankPlaceOf(shippedCar('quarter-mile-saloon').config)).toBeUndefined();
  });

  it('keeps the line behind two ways: it goes on from the part that is left', () => {
    const car = shippedCar('session-coupe');
    const beside = changed(car, secondChanges(car, 'exchanger', 'side by side'));
    const common = { length: 0.7 };
    const joined = changed(beside, { 'lines.afterWays': common });
    const line = changed(joined, secondChanges(joined, 'exchanger', 'none')).document.lines;
    expect(line).toMatchObject({ afterExchanger: [{ length: 2.3, lossCoefficient: 6.5 }, common] });
    expect(line).not.toHaveProperty('afterWays');
  });

  it('keeps the line with its pair when another pair comes before it', () => {
    const car = shippedCar('session-coupe');
    const beside = changed(car, secondChanges(car, 'exchanger', 'side by side'));
    const joined = changed(beside, { 'lines.afterWays': [{ length: 0.7 }] });
    const both = changed(joined, secondChanges(joined, 'pump', 'side by side'));
    expect(both.document.lines).toMatchObject({ afterSecondWays: [{ length: 0.7 }] });
    expect(both.document.lines).not.toHaveProperty('afterWays');
  });

  it('copies a pump without the flow that was measured with the first, and takes its phase keys out with it', () => {
    const car = shippedCar('session-coupe');
    // 20 L/min, below the 27.4 that the curves give.
    const measured = changed(car, { 'pump.measuredFlow': 20 });
    const two = changed(measured, secondChanges(measured, 'pump', 'in series'));
    expect(two.document.secondPump).toEqual(car.document.pump);
    const [path] = phasesIn(two.document)[0];
    const off = changed(two, { [`${path}.secondPump`]: 'off' });
    expect(changed(off, secondChanges(off, 'pump', 'none')).document).toEqual(measured.document);
  });

  it('copies an exchanger that is given by a test with its test', () => {
    const car = shippedCar('rolling-road-estate');
    const tested = changed(car, givenOtherwise(car.scenario, 'exchanger'));
    const { config } = changed(tested, secondChanges(tested, 'exchanger', 'in series'));
    expect(config.secondExchanger).toEqual(config.exchanger);
  });

  it('divides no way again', () => {
    const car = shippedCar('session-coupe');
    const beside = changed(car, secondChanges(car, 'exchanger', 'side by side'));
    expect(canStandBeside(beside, 'exchanger')).toBe(true);
    const inWay = changed(beside, {
      loop: [['pump', 'exchanger'], 'core', 'reservoir'],
      secondExchanger: undefined,
      'lines.afterSecondExchanger': undefined,
    });
    expect(canStandBeside(inWay, 'pump')).toBe(false);
  });

  it('is changed in one step, and undone in one', () => {
    const session = new Session();
    const car = shippedCar('ridge-roadster');
    session.open(JSON.stringify(car.document));
    session.change(secondChanges(car, 'pump', 'side by side'), 'second pump');
    expect(session.undoSteps.value).toHaveLength(1);
    expect(session.inHand.value?.config.secondPump).toBeDefined();
    session.undo();
    expect(session.inHand.value?.document).toEqual(car.document);
  });
});
