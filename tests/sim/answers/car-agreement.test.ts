import { describe, expect, it } from 'vitest';
import { explainAgreement } from '../../../src/sim/answers/agreement-sentences.ts';
import {
  type CarAgreement,
  doubtOfFit,
  type GaugeReading,
  studyCarAgreement,
} from '../../../src/sim/answers/car-agreement.ts';
import { withCoreConductance } from '../../../src/sim/answers/car-changes.ts';
import { summarisePulls } from '../../../src/sim/answers/pull-summary.ts';
import { conduct } from '../../../src/sim/answers/study.ts';
import { FILE_WORDING } from '../../../src/sim/answers/wording.ts';
import type { TimeSeries } from '../../../src/sim/results/time-series.ts';
import type { Config } from '../../../src/sim/scenario/config.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { handMadeSeries } from '../../support/hand-made-series.ts';
import { shippedConfig } from '../../support/shipped.ts';
import { shortConfig } from '../../support/short-session.ts';

/** What a gauge with steps of `step` K from 0 degC on shows at the end of each pull of a car. */
function readGauge(car: Config, step: number): GaugeReading[] {
  return summarisePulls(simulate(car), 0).map(({ pull, atEnd }) => ({
    pull,
    indicated: step * Math.round((atEnd.indicatedTemperature - 273.15) / step) + 273.15,
  }));
}

function agreementOf(config: Config, readings: readonly GaugeReading[], step = 1): CarAgreement {
  const agreement = conduct(studyCarAgreement(config, readings, step));
  if (agreement.kind !== 'compared') throw new Error(agreement.kind);
  return agreement;
}

const said = (agreement: CarAgreement): string => explainAgreement(agreement, FILE_WORDING).join(' ');

/**
 * A made-up car whose gauge at the end of pull k reads a_k + b_k ln f, f the factor on its core: least squares in
 * closed form give ln f = -sum b (a - r) / sum b^2.
 */
function madeUp(a: readonly number[], b: readonly number[], readings: readonly number[], step: number): CarAgreement {
  const config = shortConfig();
  const referenceOf = ({ core }: Config) => (core.airConductance.kind === 'power' ? core.airConductance.reference : 0);
  const respond = (car: Config): TimeSeries => {
    const log = Math.log(referenceOf(car) / referenceOf(config));
    const phases = a.map((value, k) => ({
      kind: 'pull' as const,
      rows: [[10 * k, 300] as const, [10 * k + 10, 300] as const],
      columns: { indicatedTemperature: [0, value + b[k] * log] },
    }));
    return handMadeSeries(phases) as TimeSeries;
  };
  const given = readings.map((indicated, k) => ({ pull: k + 1, indicated }));
  const study = studyCarAgreement(config, given, step);
  let turn = study.next();
  while (!turn.done) turn = study.next(turn.value.map((job) => respond(job.config)));
  if (turn.value.kind !== 'compared') throw new Error(turn.value.kind);
  return turn.value;
}

describe('the gauge against a model that is linear in the logarithm of the factor', () => {
  const a = [330, 333, 335];
  const b = [-10, -12, -20];

  it('finds the factor, its doubt and what is left of the misses in closed form', () => {
    const readings = [331.2, 334.4, 337.4];
    const { fit, pulls, meanMiss, rmsMiss, drift, verdict } = madeUp(a, b, readings, 1);
    // misses as typed -1.2, -1.4, -2.4; sum b m = 12 + 16.8 + 48 = 76.8, sum b^2 = 644: ln f = -0.119255
    const log = -76.8 / 644;
    expect(meanMiss).toBeCloseTo(-5 / 3, 9);
    expect(rmsMiss).toBeCloseTo(Math.sqrt((1.44 + 1.96 + 5.76) / 3), 9);
    expect(Math.log(fit.factor)).toBeCloseTo(log, 2.7);
    // left -0.00745, 0.03106, -0.01491; two standard errors 2 sqrt(0.0012422/2)/25.377, rounding 0.5 (42)/644
    expect(pulls.map(({ missLeft }) => missLeft)).toEqual([
      expect.closeTo(-1.2 - 10 * log, 1.7),
      expect.closeTo(-1.4 - 12 * log, 1.7),
      expect.closeTo(-2.4 - 20 * log, 1.7),
    ]);
    const doubt = (2 * Math.sqrt(0.0012422 / 2)) / 25.377 + 21 / 644;
    expect(Math.log(fit.high / fit.factor)).toBeCloseTo(doubt, 3);
    expect(Math.log(fit.factor / fit.low)).toBeCloseTo(doubt, 3);
    // slope over the pulls (0.01491 - 0.00745)/-2, from the first to the last twice that
    expect(drift).toBeCloseTo(-0.00745, 2);
    expect(verdict).toBe('core factor');
    expect(fit.isAtEnd).toBe(false);
  });

  it('agrees while every miss is within half a step of the gauge, and not a little beyond', () => {
    const off = (miss: number) => madeUp(a, b, [330.1 - miss, 333, 335], 1);
    expect(off(0.55).verdict).toBe('within the gauge');
    expect(off(0.65).verdict).toBe('core factor');
    expect(said(off(0.55))).toContain('no pull is off by more than half a step, 0.5 K');
    expect(said(off(0.65))).toContain('The typed one lies within that doubt');
  });

  it('says that a factor is at the end of the range', () => {
    // -20 ln 4 = -27.7 K is the most that a better core takes off the third pull
    const far = madeUp(a, [-20, -20, -20], [290, 293, 295], 1);
    expect(far.fit.isAtEnd).toBe(true);
    expect(far.fit.factor).toBeCloseTo(4, 9);
    expect(said(far)).toContain('at the end of the range that was searched, 0.25 to 4');
  });

  it('takes a drift of what is left over the pulls to store and exchanger, by its sign', () => {
    const cooler = madeUp(a, [-10, -10, -10], [332, 333, 333], 1);
    expect(cooler.verdict).toBe('no one factor');
    // misses -2, 0, 2 whatever the factor
    expect(cooler.drift).toBeCloseTo(4, 6);
    expect(said(cooler)).toMatch(/the car heats up 4\.0 K less than the model.*more coolant stored/);
    const hotter = madeUp(a, [-10, -10, -10], [328, 333, 337], 1);
    expect(said(hotter)).toMatch(/the car heats up 4\.0 K more than the model.*less coolant stored/);
    const mixed = madeUp(a, [-10, -10, -10], [332, 331, 337], 1);
    expect(said(mixed)).toContain('does not grow or fall from pull to pull');
  });
});

describe('the doubt of a fit', () => {
  it('is two standard errors of the slope against what is left, and the rounding', () => {
    // s^2 = (0.09 + 0.16)/1, sum d^2 = 500, sum |d| = 30
    expect(doubtOfFit([0.3, -0.4], [-20, -10], 0)).toBeCloseTo((2 * 0.5) / Math.sqrt(500), 12);
    expect(doubtOfFit([0.3, -0.4], [-20, -10], 1)).toBeCloseTo((2 * 0.5) / Math.sqrt(500) + 15 / 500, 12);
  });

  it('is the rounding alone with one reading, and endless where nothing hangs on the parameter', () => {
    expect(doubtOfFit([0.3], [-20], 1)).toBeCloseTo(0.5 / 20, 12);
    expect(doubtOfFit([0.3, 0.1], [0, 0], 1)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('readings made with a weaker core', () => {
  it.each(['rolling-road-estate', 'ridge-roadster'])('give its factor back within the doubt: %s', (file) => {
    const config = shippedConfig(file);
    const agreement = agreementOf(config, readGauge(withCoreConductance(config, 0.8), 1));
    expect(agreement.verdict).toBe('core factor');
    expect(agreement.fit.low).toBeLessThan(0.8);
    expect(agreement.fit.high).toBeGreaterThan(0.8);
    expect(agreement.fit.high - agreement.fit.low).toBeLessThan(0.1);
    expect(said(agreement)).toMatch(/A core conductance of 0\.8\d? ?.*air in it, low coolant flow/);
    const fine = agreementOf(config, readGauge(withCoreConductance(config, 0.8), 0.01), 0.01);
    expect(fine.fit.factor).toBeCloseTo(0.8, 2.5);
  });

  it('agree with the car that they were made with', () => {
    const config = shippedConfig('rolling-road-estate');
    expect(agreementOf(config, readGauge(config, 1)).verdict).toBe('within the gauge');
  });
});

it('tells a wrong tank as no one factor, and that the car heats up less from pull to pull', () => {
  const config = shippedConfig('ridge-roadster');
  const { reservoir } = config;
  const car = { ...config, reservoir: { ...reservoir, coolantVolume: reservoir.coolantVolume + 0.005 } };
  const agreement = agreementOf(config, readGauge(car, 1));
  expect(agreement.verdict).toBe('no one factor');
  expect(agreement.drift).toBeGreaterThan(1);
  expect(said(agreement)).toMatch(
    /points to the tank or the front exchanger rather than the core, to more coolant stored/,
  );
  expect(said({ ...agreement, hasExchanger: false })).toMatch(
    /points to the tank rather than the core, to more coolant stored than typed, or to other rests/,
  );
});

it('knows a pull that is not in the run', () => {
  const readings = [
    { pull: 1, indicated: 320 },
    { pull: 3, indicated: 320 },
  ];
  expect(conduct(studyCarAgreement(shortConfig(), readings, 1))).toEqual({
    kind: 'no such pull',
    pull: 3,
    pullsRun: 2,
  });
  expect(said(agreementOf(shortConfig(), readings.slice(0, 1)))).toContain('One reading cannot tell the core');
  // No core is as cold: no factor fits, and one pull does not run over the pulls.
  const cold = said(agreementOf(shortConfig(), [{ pull: 1, indicated: 250 }]));
  expect(cold).toContain('No one factor of core conductance fits');
  expect(cold).not.toContain('from pull to pull');
});
