import { describe, expect, it } from 'vitest';
import type { HottestDay, PullSummary, RunStudy } from '../../../src/sim/index.ts';
import { describeNoEffect } from '../../../src/viewer/answer/no-effect.ts';
import {
  describeGain,
  describeHottestDay,
  describeKnown,
  describePulls,
  describeStudy,
} from '../../../src/viewer/answer/wording.ts';
import { readCar } from '../../../src/viewer/state/cars.ts';
import { IMPERIAL, METRIC } from '../../../src/viewer/state/display.ts';
import { shippedDocument } from '../../support/shipped.ts';

const KELVIN = 273.15;
const LIMIT = 58 + KELVIN;

/** A pull of 12 s with a peak in degC; over the limit it crosses where told. */
function pull(number: number, peak: number, crossedAtShare?: number, indicated = peak): PullSummary {
  return {
    pull: number,
    name: 'pull',
    block: number,
    start: 300 + 102 * (number - 1),
    duration: 12,
    peak: peak + KELVIN,
    peakTime: 312,
    soakPeak: 40 + KELVIN,
    indicatedPeak: indicated + KELVIN,
    indicatedPeakAfterLift: indicated + KELVIN,
    margin: LIMIT - (peak + KELVIN),
    ...(crossedAtShare === undefined ? {} : { crossedAtShare }),
    timeAboveLimit: 0,
    coolantIntoCoreAtStart: 30 + KELVIN,
    heatIntoCore: 1e5,
    driveWork: 1e5,
    latentHeat: 0,
    condensate: 0,
    atEnd: { coolantFlow: 13.2 / 6e4 } as PullSummary['atEnd'],
  };
}
const said = (words: readonly { text: string }[]) =>
  words
    .map(({ text }) => text)
    .join('')
    .replaceAll('\u00a0', ' ');

describe('the answer in words', () => {
  it('says where the limit is broken, by how much, where later pulls go and what a log would show', () => {
    const pulls = [pull(1, 63.5, 0.744, 57.7), pull(2, 65, 0.67), pull(3, 66.8, 0.6)];
    expect(said(describePulls(pulls, METRIC))).toBe(
      'Breaks the limit 8.9 s into pull 1 and peaks at 63.5 °C, 5.5 K over. Later pulls climb to 66.8 °C. A log of pull 1 would show only 57.7 °C: the sensor lags.',
    );
  });

  it('says never, and what is to spare, where no pull breaks the limit', () => {
    const pulls = [pull(1, 50.1), pull(2, 52), pull(3, 54.7)];
    expect(said(describePulls(pulls, METRIC))).toBe(
      'Never over 58.0 °C in three. Hottest is pull 3: 54.7 °C, 3.3 K to spare.',
    );
  });

  it('says the same in other units', () => {
    const text = said(describePulls([pull(1, 50)], IMPERIAL));
    expect(text).toContain('136.4 °F');
    expect(text).toContain('122.0 °F, 14.4 °F to spare');
  });

  it('has a word for a run without pulls', () => {
    expect(said(describePulls([], METRIC))).toMatch(/no pull/);
  });

  const study = (settled: RunStudy['answer']['settled'], low: number, high: number): RunStudy => ({
    answer: {
      limit: LIMIT,
      count: 8,
      pullsRun: 8,
      settled,
      countAtLowerConductance: low,
      countAtHigherConductance: high,
    },
  });

  it('tells never from not in this run, and how much hangs on the core', () => {
    const settledAt = { kind: 'settled', peak: 55 + KELVIN, afterPulls: 14 } as const;
    expect(said([{ text: describeStudy(study(settledAt, 8, 8), METRIC).settled }])).toBe(
      'Settles at 55.0 °C after 14 pulls, never over',
    );
    const later = describeStudy(study({ ...settledAt, peak: 59 + KELVIN, firstOverLimit: 11 }, 4, 8), METRIC);
    expect(said([{ text: later.settled }])).toBe('Repeated on, pull 11 breaks it; settles at 59.0 °C after 14 pulls');
    expect(said([{ text: later.doubt }])).toBe('4 with core conductance 5 % down, 8 with 5 % up');
  });

  it('says that the repeated run stopped, after what, and why; still rising is what a run does that goes on', () => {
    const rising = { kind: 'not settled', peak: 57 + KELVIN, afterPulls: 33 } as const;
    const stopped = {
      ...rising,
      stoppedBecause: ['coolant boils in the core: ', { temperature: 124.5 + KELVIN }, ' reached'],
    };
    const { settled, isStopped } = describeStudy(study(stopped, 8, 8), METRIC);
    expect(said([{ text: settled }])).toBe(
      'Repeated on, the run stops after 33 pulls, the last at 57.0 °C: coolant boils in the core: 124.5 °C reached',
    );
    expect(isStopped).toBe(true);
    // 124.5 degC is 256.1 degF.
    const inFahrenheit = describeStudy(study(stopped, 8, 8), { ...METRIC, temperature: 'degF' });
    expect(said([{ text: inFahrenheit.settled }])).toContain('coolant boils in the core: 256.1 °F reached');
    const still = describeStudy(study({ ...rising, afterPulls: 200 }, 8, 8), METRIC);
    expect(said([{ text: still.settled }])).toBe('Not settled yet: 57.0 °C after 200 pulls');
    expect(still.isStopped).toBeUndefined();
    const one = describeStudy(study({ ...rising, afterPulls: 1 }, 8, 8), METRIC);
    expect(said([{ text: one.settled }])).toBe('Not settled yet: 57.0 °C after 1 pull');
  });

  it('says what a part of a run tells of the whole', () => {
    const under = [pull(1, 50), pull(2, 51), pull(3, 52)];
    expect(describeKnown(under, 8)).toBe('Pulls 1 to 3 stay under. Pulls 4 to 8 are not known.');
    expect(describeKnown(under, 4)).toBe('Pulls 1 to 3 stay under. Pull 4 is not known.');
    expect(describeKnown(under, 3)).toBe('Pulls 1 to 3 stay under.');
    expect(describeKnown([pull(1, 50), pull(2, 59, 0.9)], 8)).toBe(
      'Pull 2 is over the limit: the count stands. Pulls 3 to 8 are not known.',
    );
    expect(describeKnown(under.slice(0, 1), 8)).toBe('Pull 1 stays under. Pulls 2 to 8 are not known.');
    expect(describeKnown([], 8)).toBe('No pull is solved.');
    expect(describeKnown([], 0)).toBe('There is no pull in this run.');
  });

  it('counts the gain and says which way the first pull went', () => {
    const before = [pull(1, 63.5, 0.7), pull(2, 65, 0.6)];
    expect(said([{ text: describeGain(before, [pull(1, 56.2), pull(2, 57)], METRIC) }])).toBe(
      '+2 pulls, pull 1 is 7.3 K cooler',
    );
    expect(said([{ text: describeGain(before, [pull(1, 64, 0.7), pull(2, 66, 0.6)], METRIC) }])).toBe(
      'no pull gained, pull 1 is 0.5 K hotter',
    );
  });
});

describe('no effect', () => {
  const tank = (litres: number) => {
    const document = shippedDocument('rolling-road-estate');
    const { car } = readCar('tank', { ...document, reservoir: { coolantVolume: litres, gain: 4, gainFrom: 'bay' } });
    if (car === undefined) throw new Error('no car');
    return car;
  };
  const before = [pull(1, 63.5, 0.7), pull(2, 66.8, 0.6)];

  it('is said plainly, with the reason where it is a tank', () => {
    const after = [pull(1, 63.2, 0.7), pull(2, 66.9, 0.6)];
    const { numbers = '', reason } =
      describeNoEffect(tank(12.3), ['reservoir.coolantVolume'], before, after, METRIC) ?? {};
    // 1.2 L of exchanger and 5.5 m of 16.5 mm line, 2.38 L, lie between core and core beside the tank: at 13.2 L/min 10.8 s.
    expect(numbers.replaceAll('\u00a0', ' ')).toBe(
      'No gain: pull 1 at 63.2 °C, \u22120.3 K; pull 2 at 66.9 °C, +0.1 K.',
    );
    expect(reason?.replaceAll('\u00a0', ' ')).toBe(
      'Coolant that leaves the core is back at it after 10.8 s at the soonest, too late to change a pull of 12.0 s much: with all of it equally warm at the start, no tank helps the first pull.',
    );
  });

  it('is called worse where it heats', () => {
    const said = describeNoEffect(tank(12.3), [], before, [pull(1, 74.8, 0.5), pull(2, 79.7, 0.4)], METRIC);
    expect(said?.numbers.replaceAll('\u00a0', ' ')).toBe(
      'Worse: pull 1 at 74.8 °C, +11.3 K; pull 2 at 79.7 °C, +12.9 K.',
    );
    expect(said?.reason).toBeUndefined();
  });

  it('is not said of a change that cools, or that moves the count', () => {
    expect(describeNoEffect(tank(12.3), [], before, [pull(1, 61, 0.8), pull(2, 65, 0.6)], METRIC)).toBeUndefined();
    expect(describeNoEffect(tank(12.3), [], before, [pull(1, 57.9), pull(2, 66.8, 0.9)], METRIC)).toBeUndefined();
  });
});

describe('the hottest day beside the count', () => {
  const beyond = { kind: 'limit', pull: 3 } as const;
  it.each<[HottestDay, number, string]>([
    [{ kind: 'found', temperature: 17.8 + KELVIN, beyond }, 8, 'all 8 up to 17.8 °C outside'],
    [{ kind: 'found', temperature: 17.8 + KELVIN, beyond }, 1, 'the pull up to 17.8 °C outside'],
    [{ kind: 'made on every day', upTo: 60 + KELVIN }, 8, 'all 8 on every day up to 60.0 °C'],
    [{ kind: 'made on no day', downTo: KELVIN - 40, because: beyond }, 8, 'all 8 on no day down to −40.0 °C'],
    [{ kind: 'too few pulls', pulls: 3 }, 8, ''],
  ])('%o of %d pulls', (day, pulls, expected) => {
    expect(describeHottestDay(day, pulls, METRIC).replaceAll('\u00a0', ' ')).toBe(expected);
  });

  it('is told in the chosen units: 17.8 °C are 64.0 °F', () => {
    const day: HottestDay = { kind: 'found', temperature: 17.8 + KELVIN, beyond };
    expect(describeHottestDay(day, 2, IMPERIAL).replaceAll('\u00a0', ' ')).toBe('all 2 up to 64.0 °F outside');
  });
});
