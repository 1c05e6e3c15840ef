import { beforeEach, describe, expect, it } from 'vitest';
import { summarisePulls } from '../../../src/sim/answers/pull-summary.ts';
import { simulate } from '../../../src/sim/simulate.ts';
import { askedChange, labelOf } from '../../../src/viewer/letter/asked.ts';
import { composeLetter } from '../../../src/viewer/letter/compose.ts';
import type { Car } from '../../../src/viewer/state/cars.ts';
import { METRIC } from '../../../src/viewer/state/display.ts';
import { Session } from '../../../src/viewer/state/session.ts';
import { plannedPhases } from '../../../src/viewer/time/phases.ts';
import type { ShownRun } from '../../../src/viewer/time/runs.ts';
import { shippedDocument } from '../../support/shipped.ts';

let session: Session;
beforeEach(() => {
  session = new Session();
  session.open(JSON.stringify(shippedDocument('rolling-road-estate')));
});
const cars = () => [session.before.value as Car, session.after.value] as const;
const asked = () => askedChange(...cars());

describe('what a letter asks about', () => {
  it('is the car as it stands, also on another day', () => {
    expect(asked()).toEqual({ kind: 'as it stands' });
    session.change({ 'ambient.temperature': 35, 'cycle.1.repeat': 4 }, 'day');
    expect(asked()).toEqual({ kind: 'as it stands' });
  });

  it('is a variant, and stays it on another day', () => {
    session.tryVariant('bigger core');
    expect(labelOf(asked())).toBe('with \u201cbigger core\u201d');
    session.change({ 'ambient.temperature': 35 }, 'day');
    expect(session.after.value?.label).toBe('6 changes');
    expect(asked()).toEqual({ kind: 'variant', name: 'bigger core' });
  });

  it('is the change by hand, by its own name', () => {
    session.change({ 'pump.freeFlow': 40 }, 'pump free flow 40 L/min');
    expect(labelOf(asked())).toBe('with pump free flow 40 L/min');
  });
});

/** A run as the page has it once it is whole. */
function shown(which: ShownRun['which'], car: Car): ShownRun {
  const series = simulate(car.config);
  const pulls = summarisePulls(series, car.config.limit.chargeTemperature);
  const run = { kind: 'solved', time: 0, duration: 0, pulls, series, of: car } as const;
  return { which, car, run, pulls, solvedTo: 0, phases: plannedPhases(car.config.cycle) };
}

describe('the letter of the page', () => {
  const letter = () => {
    const [before, after] = cars();
    const runs = [shown('before', before), ...(after ? [shown('after', after)] : [])];
    return composeLetter({ runs, asked: asked(), isOld: false }, [], METRIC);
  };

  it('answers for the other day alone where nothing was done to the car', () => {
    session.change({ 'ambient.temperature': -10 }, 'day');
    const written = letter();
    expect(written?.answer).toMatch(/^Yes\. It stays under 58\.0\u00a0°C in all 8;/);
    expect(written?.unlike).toBeUndefined();
    expect(written?.parts.map(({ part }) => part)).not.toContain('return');
  });

  it('compares a change with the car as it stands, and says where the day is another', () => {
    session.tryVariant('bigger core');
    expect(letter()?.answer).toMatch(
      /^Yes\. The car as it stands goes over 58\.0\u00a0°C in pull 1; with \u201cbigger core\u201d/,
    );
    session.change({ 'ambient.temperature': 35 }, 'day');
    expect(letter()?.unlike).toContain('the day is 27.0\u00a0°C before and 35.0\u00a0°C after');
  });
});
