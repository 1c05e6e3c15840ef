import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, it } from 'vitest';
import { NOTHING_READ, readingsOf, withReading } from '../../../src/viewer/state/gauge.ts';
import { Session } from '../../../src/viewer/state/session.ts';

const demo = (file: string) => readFileSync(new URL(`../../../scenarios/${file}.json`, import.meta.url), 'utf8');
const ESTATE = demo('rolling-road-estate');
const COUPE = demo('session-coupe');

describe('readings', () => {
  it('keep their pull when one before them is left out or taken away', () => {
    const gauge = withReading(withReading(NOTHING_READ, 2, 57), 0, 52);
    expect(gauge).toEqual({ byPull: [52, null, 57], step: 1 });
    expect(readingsOf(gauge)).toEqual([
      { pull: 1, indicated: 325.15 },
      { pull: 3, indicated: 330.15 },
    ]);
    expect(readingsOf(withReading(gauge, 0, null))).toEqual([{ pull: 3, indicated: 330.15 }]);
  });
});

describe('the gauge of a car', () => {
  let session: Session;
  const read = () => session.gauge.value.byPull;
  beforeEach(() => {
    session = new Session();
    session.open(ESTATE);
    session.gauge.value = { byPull: [52, 55], step: 0.5 };
  });

  it('stays while parts are changed, tried, kept and taken back', () => {
    session.change({ 'core.airConductance': 468 }, 'core');
    session.tryVariant('bigger core');
    session.keepAsBefore();
    session.describe({ name: 'Mine' });
    session.undo();
    session.undo();
    session.redo();
    expect(session.gauge.value).toEqual({ byPull: [52, 55], step: 0.5 });
  });

  it('goes with the file, and comes back with it', () => {
    session.open(COUPE);
    expect(session.gauge.value).toEqual(NOTHING_READ);
    session.gauge.value = { byPull: [44], step: 1 };
    session.change({ 'core.airConductance': 468 }, 'core');
    session.undo();
    expect(read()).toEqual([44]);
    session.undo();
    expect(session.gauge.value).toEqual({ byPull: [52, 55], step: 0.5 });
    session.redo();
    expect(read()).toEqual([44]);
  });

  it('goes with New, and stays where a file cannot be read', () => {
    session.open('{');
    expect(read()).toEqual([52, 55]);
    session.clear();
    expect(read()).toEqual([]);
    session.undo();
    expect(read()).toEqual([52, 55]);
  });

  it('is cleared in one step that can be undone, and keeps its step', () => {
    const car = session.inHand.value;
    session.clearReadings();
    expect(session.gauge.value).toEqual({ byPull: [], step: 0.5 });
    expect(session.undoSteps.value.map(({ label }) => label)).toEqual(['clear readings']);
    session.clearReadings();
    expect(session.undoSteps.value).toHaveLength(1);
    session.undo();
    expect(read()).toEqual([52, 55]);
    expect(session.inHand.value).toBe(car);
    session.redo();
    expect(read()).toEqual([]);
  });
});
