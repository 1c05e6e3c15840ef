import { describe, expect, it } from 'vitest';
import { conduct, studySensitivity } from '../../../../src/sim/index.ts';
import { fileNumbers } from '../../../../src/viewer/questions/file-numbers.ts';
import {
  isUsual,
  type OwnRanges,
  type Side,
  USUAL_RANGES,
  withAdded,
  withEnd,
  withoutAdded,
  withTick,
} from '../../../../src/viewer/questions/sensitivity/own-ranges.ts';
import {
  faultOf,
  lostRanges,
  type RangeRow,
  rangeRows,
  variedInputs,
} from '../../../../src/viewer/questions/sensitivity/range-rows.ts';
import {
  captionOf,
  endText,
  rangeShown,
  summaryOf,
  typedEnd,
} from '../../../../src/viewer/questions/sensitivity/range-words.ts';
import { readCar } from '../../../../src/viewer/state/cars.ts';
import { IMPERIAL, METRIC } from '../../../../src/viewer/state/display.ts';
import { shippedDocument } from '../../../support/shipped.ts';
import { type Edits, type LooseDocument, shortDocument } from '../../../support/short-session.ts';

function read(document: LooseDocument) {
  const { car, issues } = readCar('car', document);
  if (car === undefined) throw new Error(issues[0].message);
  return { scenario: car.scenario, numbers: fileNumbers(car) };
}
const CAR = read(shortDocument());
const NO_EXCHANGER = read(shippedDocument('quarter-mile-saloon'));

const rowsOf = (own: OwnRanges, { scenario, numbers } = CAR) => rangeRows(scenario, numbers, own);
const rowOf = (key: string, own: OwnRanges, car = CAR): RangeRow => {
  const row = rowsOf(own, car).find((each) => each.key === key);
  if (row === undefined) throw new Error(`no row ${key}`);
  return row;
};
const namesOf = (own: OwnRanges, car = CAR) => variedInputs(rowsOf(own, car)).map(({ name }) => name);

/** Added by its path, as the page does it. */
function added(path: string, own = USUAL_RANGES, car = CAR): OwnRanges {
  const number = car.numbers.find((each) => each.path === path);
  if (number === undefined) throw new Error(`no number ${path}`);
  return withAdded(own, number);
}
const typed = (own: OwnRanges, key: string, side: Side, text: string, units = METRIC): OwnRanges =>
  withEnd(own, key, side, typedEnd(rowOf(key, own), text, units));
const endsOf = (path: string, edits: Edits = {}) => {
  const car = read(shortDocument(edits));
  const { low, high } = rowOf(path, added(path, USUAL_RANGES, car), car).input;
  return [low, high];
};

const FLOW = 'pump free flow';

describe('the list of what is varied', () => {
  it('is the usual one at first', () => {
    expect(namesOf(USUAL_RANGES)).toEqual([
      'core conductance, air side',
      'core conductance, coolant side',
      FLOW,
      'pump shut-off pressure',
      'air speed at the front exchanger',
      'compressor idle power',
      'swallowing exponent',
      'outside temperature',
    ]);
    expect(isUsual(USUAL_RANGES)).toBe(true);
  });

  it('takes a typed end, and says that it is typed; the other end stays', () => {
    const own = typed(USUAL_RANGES, FLOW, 'low', '0,97');
    expect(rowOf(FLOW, own).input).toMatchObject({ kind: 'factor', low: 0.97, high: 1.1, source: 'typed' });
    expect(rowOf('pump shut-off pressure', own).input.source).toBe('common practice, no published source');
    // Of what the car has, in another spelling.
    const both = rowOf(FLOW, typed(own, FLOW, 'high', '104 %')).input;
    expect(both.low).toBe(0.97);
    expect(both.high).toBeCloseTo(1.04, 12);
    expect(isUsual(own)).toBe(false);
  });

  it('keeps an input that is left out, with its range, and does not vary it', () => {
    const out = withTick(typed(USUAL_RANGES, FLOW, 'low', '0.97'), FLOW);
    expect(rowsOf(out)).toHaveLength(8);
    expect(namesOf(out)).not.toContain(FLOW);
    expect(rowOf(FLOW, withTick(out, FLOW)).input.low).toBe(0.97);
    expect(namesOf(withTick(out, FLOW))).toHaveLength(8);
  });

  it('has an added number at its end, a tenth of it either side, as typed', () => {
    const { input } = rowsOf(added('core.airDrop'))[8];
    expect(input).toEqual({
      name: 'core pressure drop',
      path: 'core.airDrop',
      kind: 'value',
      low: 8.1,
      high: 9.9,
      unit: 'kPa',
      source: 'typed',
    });
    const reset = withoutAdded(typed(added('core.airDrop'), 'core.airDrop', 'low', '7'), 'core.airDrop');
    expect(reset).toEqual(USUAL_RANGES);
  });

  it('puts an added number in the place of what the trade has for it', () => {
    expect(namesOf(added('pump.freeFlow'))).not.toContain(FLOW);
    expect(namesOf(added('pump.freeFlow')).at(-1)).toBe('free flow of the pump');
  });

  it('has first ends that the file takes, also about 0, of temperatures and at the end of what there is', () => {
    // A tenth of what is usual: 0 to 60 kg of ice; of what there may be: 0 to 0.95 without a usual range.
    expect(endsOf('reservoir.iceMass')).toEqual([0, 6]);
    expect(endsOf('core.airLockedShare')).toEqual([0, 0.095]);
    expect(endsOf('coolant.propertiesAt')).toEqual([37, 43]);
    expect(endsOf('ambient.relativeHumidity', { 'ambient.relativeHumidity': 95 })).toEqual([85.5, 100]);
    expect(endsOf('reservoir.heightAbovePump', { 'reservoir.heightAbovePump': -0.2 })).toEqual([-0.22, -0.18]);
  });

  it('follows the car where nothing was typed', () => {
    const own = typed(added('core.airDrop'), 'core.airDrop', 'high', '12');
    const { low, high } = rowOf('core.airDrop', own, read(shortDocument({ 'core.airDrop': 6 }))).input;
    expect([low, high]).toEqual([5.4, 12]);
  });

  it('drops what a car does not have, says so, and has it again with the car', () => {
    const air = typed(added('exchanger.airPickUp'), 'air speed at the front exchanger', 'low', '0.9');
    const { scenario, numbers } = NO_EXCHANGER;
    expect(namesOf(air, NO_EXCHANGER)).toHaveLength(7);
    expect(lostRanges(scenario, numbers, air)).toEqual([
      'air speed at the front exchanger',
      'pick-up before the exchanger',
    ]);
    expect(namesOf(air)).toHaveLength(9);
    expect(lostRanges(CAR.scenario, CAR.numbers, air)).toEqual([]);
    // What was left out is not missed, and neither is what an added number stands for.
    const out = withTick(air, 'air speed at the front exchanger');
    expect(lostRanges(scenario, numbers, out)).toEqual(['pick-up before the exchanger']);
    expect(lostRanges(CAR.scenario, CAR.numbers, added('pump.freeFlow', typed(air, FLOW, 'low', '0.95')))).toEqual([]);
  });
});

describe('what is wrong with the list', () => {
  const fault = (own: OwnRanges, units = METRIC) => faultOf(rowsOf(own), CAR.scenario, units);

  it('is nothing at first, and nothing about what is left out', () => {
    expect(fault(USUAL_RANGES)).toBeUndefined();
    expect(fault(withTick(typed(USUAL_RANGES, FLOW, 'low', 'much'), FLOW))).toBeUndefined();
  });

  it('is an end that is no number, or none that is possible, with what is', () => {
    const own = added('core.airDrop');
    expect(fault(typed(own, 'core.airDrop', 'high', 'much'))).toEqual({
      key: 'core.airDrop',
      side: 'high',
      message: 'Core pressure drop, high: expected a number, 0 to 60 kPa.',
    });
    // 60 kPa are 8.702 psi.
    expect(fault(typed(own, 'core.airDrop', 'low', '', IMPERIAL), IMPERIAL)?.message).toBe(
      'Core pressure drop, low: expected a number, 0 to 8.702 psi.',
    );
    expect(fault(typed(USUAL_RANGES, FLOW, 'low', '0'))?.message).toBe(
      'Pump free flow, low: expected a number, 0.1 to 10 times.',
    );
    expect(fault(typed(USUAL_RANGES, 'swallowing exponent', 'high', '2'))?.message).toBe(
      'Swallowing exponent, high: expected a number, 0 to 0.6.',
    );
  });

  it('is a range without width, or the wrong way round', () => {
    const message = 'Pump free flow: expected a low end below the high end.';
    expect(fault(typed(USUAL_RANGES, FLOW, 'low', '1.1'))).toEqual({ key: FLOW, message });
    expect(fault(typed(USUAL_RANGES, FLOW, 'low', '1.2'))).toEqual({ key: FLOW, message });
  });

  it('is what the file says against either end, in its words', () => {
    const end = 'cycle.1.phases.0.engineSpeed.1';
    // The pull starts at 2500 rpm.
    expect(fault(typed(added(end), end, 'low', '1000'))).toEqual({
      key: end,
      message: 'Range of engine speed, pull, end: The pull ends at 1000 rpm but starts at 2500 rpm.',
    });
  });

  it('is too short a list: one input has no rank', () => {
    const keys = rowsOf(USUAL_RANGES).map(({ key }) => key);
    const message = 'Tick at least two inputs: one is ranked against another.';
    expect(fault(keys.slice(1).reduce(withTick, USUAL_RANGES))).toEqual({ message });
    expect(fault(keys.slice(2).reduce(withTick, USUAL_RANGES))).toBeUndefined();
  });
});

it('two inputs are ranked in four runs and not in three: the least is their count and two more', () => {
  const keys = rowsOf(USUAL_RANGES).map(({ key }) => key);
  const inputs = variedInputs(rowsOf(keys.slice(2).reduce(withTick, USUAL_RANGES)));
  const study = conduct(studySensitivity(CAR.scenario, inputs, 4, 1));
  expect(study?.ranking.map(({ input }) => input.name).toSorted()).toEqual([
    'core conductance, air side',
    'core conductance, coolant side',
  ]);
  expect(conduct(studySensitivity(CAR.scenario, inputs, 3, 1))).toBeUndefined();
});

describe('the words of the list', () => {
  it('are one line for all of it', () => {
    const summary = (own: OwnRanges) => summaryOf(rowsOf(own));
    expect(summary(USUAL_RANGES)).toBe('Varied: 8 inputs, each over its usual range');
    const own = typed(added('core.airDrop'), FLOW, 'low', '0.97');
    expect(summary(withTick(own, 'swallowing exponent'))).toBe(
      'Varied: 8 inputs, 2 of them over a typed range; 1 left out',
    );
    expect(summary(withTick(USUAL_RANGES, FLOW))).toBe('Varied: 7 inputs, each over its usual range; 1 left out');
  });

  it('have boxes as typed, written anew in another unit', () => {
    const own = typed(added('core.airDrop'), 'core.airDrop', 'low', '7,0');
    const row = rowOf('core.airDrop', own);
    expect([endText(row, 'low', METRIC), endText(row, 'high', METRIC)]).toEqual(['7,0', '9.9']);
    // 7 kPa are 1.01526 psi, 9.9 kPa 1.43587 psi.
    expect([endText(row, 'low', IMPERIAL), endText(row, 'high', IMPERIAL)]).toEqual(['1.015', '1.436']);
    expect(endText(rowOf('core.airDrop', typed(own, 'core.airDrop', 'low', 'much')), 'low', IMPERIAL)).toBe('much');
    expect(endText(rowOf('outside temperature', USUAL_RANGES), 'low', IMPERIAL)).toBe('-5.4');
  });

  it('say what the ends are', () => {
    expect(captionOf(rowOf(FLOW, USUAL_RANGES), METRIC)).toBe('times');
    expect(captionOf(rowOf('outside temperature', USUAL_RANGES), IMPERIAL)).toBe('°F added');
    expect(captionOf(rowOf('core.airDrop', added('core.airDrop')), METRIC)).toBe('kPa');
  });

  it('have ranges of an answer in the units of the page, in four figures', () => {
    const psi = rowOf('core.airDrop', typed(added('core.airDrop'), 'core.airDrop', 'low', '1 psi')).input;
    expect(rangeShown(psi, METRIC)).toBe('6.895 to 9.9 kPa');
    expect(rangeShown(psi, IMPERIAL)).toBe('1 to 1.436 psi');
    expect(rangeShown(rowOf(FLOW, USUAL_RANGES).input, IMPERIAL)).toBe('×0.9 to ×1.1');
    const day = typed(USUAL_RANGES, 'outside temperature', 'high', '-1');
    expect(rangeShown(rowOf('outside temperature', day).input, METRIC)).toBe('−3 to −1 K');
    expect(rangeShown(rowOf('outside temperature', USUAL_RANGES).input, IMPERIAL)).toBe('−5.4 to +5.4 °F');
    expect(rangeShown(rowOf('sensor.airShare', added('sensor.airShare')).input, METRIC)).toBe('0.9 to 1');
  });
});
