import { beforeEach, describe, expect, it } from 'vitest';
import type { JsonObject } from '../../../src/sim/index.ts';
import { choiceChanges } from '../../../src/viewer/document/choices.ts';
import { proposals } from '../../../src/viewer/document/proposals.ts';
import { valueAt } from '../../../src/viewer/state/cars.ts';
import { Session } from '../../../src/viewer/state/session.ts';
import { shippedDocument } from '../../support/shipped.ts';

const KIND = 'compressor.kind';
let session: Session;
beforeEach(() => {
  session = new Session();
  session.open(JSON.stringify(shippedDocument('motorway-wagon')));
});
const document = (): JsonObject => session.inHand.value?.document ?? {};
const typed = (path: string) => valueAt(document(), path);
const choose = (path: string, value: string | undefined) =>
  session.change(choiceChanges(document(), path, value), path, { path, text: value ?? '' });

describe('another kind of compressor', () => {
  it('waits as a draft for what is missing, and the car runs on as it was', () => {
    const issues = choose(KIND, 'centrifugal');
    const missing = issues.filter(({ found }) => found === 'nothing').map(({ path }) => path);
    expect(missing.sort()).toEqual([
      'bypass.recirculation',
      'compressor.boostOutletPressure',
      'compressor.boostSpeed',
      'compressor.quotedFlow',
    ]);
    expect(session.drafts.value.map(({ path, text }) => [path, text])).toEqual([[KIND, 'centrifugal']]);
    expect(session.after.value).toBeUndefined();
  });

  it.each(['centrifugal', 'turbine-driven'])(
    '%s: the proposed values make a car that runs, in one step back and forth',
    (kind) => {
      const issues = choose(KIND, kind);
      const [draft] = session.drafts.value;
      const car = session.inHand.value;
      if (car === undefined) throw new Error('no car');
      const all = proposals(car, draft.changes, { recirculation: 0.6 });
      const missing = issues.filter(({ found }) => found === 'nothing').map(({ path }) => [path, all[path]]);
      session.change({ ...draft.changes, ...Object.fromEntries(missing) }, kind, draft);
      expect(session.drafts.value).toEqual([]);
      expect(session.after.value?.config.compressor.kind).toBe(kind);
      // What this kind has no use for is out of the file, and comes back whole.
      expect(typed('compressor.sweptVolume')).toBeUndefined();
      expect(session.undoSteps.value).toHaveLength(1);
      session.undo();
      expect(typed('compressor.sweptVolume')).toBe(1.32);
      expect(document()).toBe(session.before.value?.document);
    },
  );

  it('proposes the boost of the quoted point: 1.65 times 101.325 kPa at 9300 rpm', () => {
    const car = session.inHand.value;
    if (car === undefined) throw new Error('no car');
    const proposed = proposals(car, {}, {});
    expect(proposed['compressor.boostOutletPressure']).toBe(167);
    expect(proposed['compressor.boostSpeed']).toBe(9300);
    // 1.32 L x 9300/min at 100 kPa and 36 degC, 1.1269 kg/m3: 0.2306 kg/s
    expect(proposed['compressor.quotedFlow']).toBe(0.231);
    // Pulls end at 6200 rpm: 9300/6200
    expect(proposed['compressor.driveRatio']).toBe(1.5);
    expect(proposed['compressor.sweptVolume']).toBe(1.32);
  });
});

describe('the route of the recirculated air', () => {
  it('asks for the share that part of each needs, and drops it with the word', () => {
    const issues = choose('bypass.route', 'part of each');
    expect(issues.map(({ path }) => path)).toEqual(['bypass.shareAfterCore']);
    const [draft] = session.drafts.value;
    session.change({ ...draft.changes, 'bypass.shareAfterCore': 0.5 }, 'share', draft);
    expect(session.after.value?.config.bypass.shareAfterCore).toBe(0.5);
    expect(choose('bypass.route', 'after core')).toEqual([]);
    expect(typed('bypass.shareAfterCore')).toBeUndefined();
    expect(session.after.value?.config.bypass.shareAfterCore).toBe(1);
    session.undo();
    expect(typed('bypass.shareAfterCore')).toBe(0.5);
  });
});

describe('two values that need each other', () => {
  it('are taken together once both are typed', () => {
    session.change({ 'room.volume': 200 }, 'room');
    expect(session.after.value).toBeUndefined();
    session.change({ 'room.extraction': 0.5 }, 'extraction');
    expect(session.after.value?.config.room).toMatchObject({ volume: 200, extraction: 0.5 });
    expect(session.drafts.value).toEqual([]);
    session.undo();
    expect(session.after.value).toBeUndefined();
  });

  it('stay drafts where one of them is no value', () => {
    session.change({ 'room.volume': '2oo' }, 'room');
    session.change({ 'room.extraction': 0.5 }, 'extraction');
    expect(session.after.value).toBeUndefined();
    expect(session.drafts.value).toHaveLength(2);
  });

  it('have a first value for the room: 4 changes of 180 m3 an hour are 0.2 m3/s', () => {
    const car = session.inHand.value;
    if (car === undefined) throw new Error('no car');
    expect(proposals(car, { 'room.volume': 180 }, {})['room.extraction']).toBe(0.2);
  });
});
