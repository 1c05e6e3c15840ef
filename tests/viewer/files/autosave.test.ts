import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { operatingPoint } from '../../../src/sim/index.ts';
import { keepStored, type Store } from '../../../src/viewer/files/autosave.ts';
import { DEMO_SCENARIOS } from '../../../src/viewer/files/demo-scenarios.ts';
import { Display, IMPERIAL } from '../../../src/viewer/state/display.ts';
import { Session } from '../../../src/viewer/state/session.ts';

class MemoryStore implements Store {
  readonly texts = new Map<string, string>();
  getItem = (key: string) => this.texts.get(key) ?? null;
  setItem(key: string, text: string) {
    this.texts.set(key, text);
  }
  removeItem = (key: string) => {
    this.texts.delete(key);
  };
}

/** A visit to the page; `leave` is what happens when it is closed. */
function visit(store: Store | undefined) {
  const session = new Session();
  const display = new Display();
  const leave = keepStored(session, display, store);
  return { session, display, leave };
}

let store: MemoryStore;
beforeEach(() => {
  vi.useFakeTimers();
  store = new MemoryStore();
});
afterEach(() => vi.useRealTimers());

describe('a first visit', () => {
  it('opens the first demo car', () => {
    const { session, display } = visit(store);
    expect(session.before.value?.scenario.values.name).toBe(DEMO_SCENARIOS[0].name);
    expect(display.notice.value).toBeUndefined();
  });
});

describe('a later visit', () => {
  it('can undo and redo what was done before it, as far as the last twenty steps', () => {
    const first = visit(store);
    for (let k = 1; k <= 25; k++) first.session.change({ 'core.airConductance': 390 + k }, `core ${390 + k}`);
    first.session.undo();
    vi.runAllTimers();

    const { session } = visit(store);
    const conductance = () =>
      (session.inHand.value?.document.core as { airConductance: number } | undefined)?.airConductance;
    expect(session.undoSteps.value).toHaveLength(20);
    expect(conductance()).toBe(414);
    session.redo();
    expect(conductance()).toBe(415);
    for (let k = 0; k < 21; k++) session.undo();
    expect(conductance()).toBe(394);
    expect(session.before.value?.document).toEqual(first.session.before.value?.document);
  });

  it('has the cars whose flow was measured before they were changed, with the same resistances', () => {
    const first = visit(store);
    first.session.change({ 'pump.measuredFlow': 10 }, 'measured');
    first.session.change({ 'pump.freeFlow': 52 }, 'pump');
    first.session.change({ 'pump.freeFlow': 60 }, 'pump');
    const flow = (session: Session) => {
      const car = session.after.value;
      return (car && operatingPoint(car.config)?.flow) ?? Number.NaN;
    };
    const flows = [flow(first.session)];
    vi.runAllTimers();
    const { session } = visit(store);
    expect(flow(session)).toBe(flows[0]);
    for (const each of [first.session, session]) each.undo();
    expect(flow(session)).toBe(flow(first.session));
    expect(flow(session)).toBeLessThan(flows[0]);
  });

  it('takes a car that is on screen as it is where undo leads back to it', () => {
    const first = visit(store);
    first.session.change({ 'core.airConductance': 468 }, 'core 468');
    vi.runAllTimers();
    const { session } = visit(store);
    const { value: before } = session.before;
    session.undo();
    expect(session.before.value).toBe(before);
    expect(session.after.value).toBeUndefined();
  });

  it('can undo the emptying of the page', () => {
    const first = visit(store);
    first.session.clear();
    vi.runAllTimers();
    const { session } = visit(store);
    expect(session.before.value).toBeUndefined();
    session.undo();
    expect(session.before.value?.scenario.values.name).toBe(DEMO_SCENARIOS[0].name);
  });

  it('comes without steps where they cannot be read, and keeps the cars', () => {
    const first = visit(store);
    first.session.change({ 'core.airConductance': 468 }, 'core 468');
    vi.runAllTimers();
    const [[key, text]] = [...store.texts];
    const stored = JSON.parse(text);
    for (const broken of [
      { ...stored.steps, undo: [{ label: 'core', before: 7, after: null }] },
      { ...stored.steps, cars: [{ label: 'core', document: { name: 'no car' } }] },
      { undo: 3 },
    ]) {
      store.setItem(key, JSON.stringify({ ...stored, steps: broken }));
      const { session, display } = visit(store);
      expect(session.undoSteps.value).toEqual([]);
      expect(session.after.value?.label).toBe('core 468');
      expect(display.notice.value).toBeUndefined();
    }
  });

  it('finds the strips and the drawing as they were chosen, and leaves out what it does not know', () => {
    const first = visit(store);
    first.display.traces.value = ['airFlow', 'coolantFlow'];
    first.display.drawing.hasCellLines.value = true;
    first.display.drawing.tubes.value = 12;
    first.display.drawing.apart.value = 1.4;
    vi.runAllTimers();
    const second = visit(store);
    // In the order of the list of traces.
    expect(second.display.traces.value).toEqual(['coolantFlow', 'airFlow']);
    expect(second.display.drawing.hasCellLines.value).toBe(true);
    expect(second.display.drawing.tubes.value).toBe(12);
    expect(second.display.drawing.apart.value).toBe(1.4);
    const [[key, text]] = [...store.texts];
    const stored = JSON.parse(text);
    store.setItem(
      key,
      JSON.stringify({ ...stored, view: { ...stored.view, traces: ['airFlow', 'noise'], tubes: 4000 } }),
    );
    const third = visit(store);
    expect(third.display.traces.value).toEqual(['airFlow']);
    expect(third.display.drawing.tubes.value).toBe(8);
  });

  it('finds both cars, their names, what could not be read, and the view', () => {
    const first = visit(store);
    first.session.open(DEMO_SCENARIOS[1].text, 'mine');
    first.session.change({ 'core.airConductance': 468 }, 'core 468');
    first.session.change({ 'lines.bore': '16,5x' }, 'bore');
    first.session.change({ 'pump.freeFlow': undefined }, 'free flow', { path: 'pump.freeFlow', text: '' });
    first.display.units.value = IMPERIAL;
    first.display.theme.value = 'dark';
    first.display.camera.value = 'air side';
    vi.runAllTimers();

    const { session, display } = visit(store);
    expect(session.before.value?.label).toBe('mine');
    expect(session.before.value?.document).toEqual(first.session.before.value?.document);
    expect(session.after.value?.document).toEqual(first.session.after.value?.document);
    expect(session.after.value?.label).toBe('core 468');
    expect(session.drafts.value).toMatchObject([
      { path: 'lines.bore', text: '16,5x' },
      { path: 'pump.freeFlow', text: '', changes: { 'pump.freeFlow': undefined } },
    ]);
    expect(session.undoSteps.value.map(({ label }) => label)).toEqual(
      first.session.undoSteps.value.map(({ label }) => label),
    );
    expect(display.units.value).toEqual(IMPERIAL);
    expect(display.theme.value).toBe('dark');
    expect(display.camera.value).toBe('air side');
  });

  it('finds what the gauge showed, of the file before too', () => {
    const first = visit(store);
    first.session.gauge.value = { byPull: [52, null, 57.5], step: 0.5 };
    first.session.open(DEMO_SCENARIOS[1].text);
    first.session.gauge.value = { byPull: [44], step: 1 };
    vi.runAllTimers();
    const { session } = visit(store);
    expect(session.gauge.value).toEqual({ byPull: [44], step: 1 });
    session.undo();
    expect(session.gauge.value).toEqual({ byPull: [52, null, 57.5], step: 0.5 });
  });

  it.each([
    ['a reading beyond any gauge', { byPull: [52, 1e9], step: 1 }],
    ['a reading that is no number', { byPull: ['52'], step: 1 }],
    ['no step', { byPull: [52] }],
    ['no list', { byPull: 52, step: 1 }],
  ])('has nothing on the gauge where %s was stored', (_, gauge) => {
    const first = visit(store);
    first.session.change({ 'core.airConductance': 468 }, 'core 468');
    vi.runAllTimers();
    const [[key, text]] = [...store.texts];
    store.setItem(key, JSON.stringify({ ...JSON.parse(text), gauge }));
    const { session } = visit(store);
    expect(session.gauge.value).toEqual({ byPull: [], step: 1 });
    expect(session.after.value?.label).toBe('core 468');
  });

  it('finds what was done right before the page was left', () => {
    const first = visit(store);
    first.session.change({ 'core.airConductance': 468 }, 'core');
    first.leave();
    expect(visit(store).session.after.value?.scenario.values.core.airConductance).toBe(468);
  });

  it('finds the empty page after New', () => {
    const first = visit(store);
    first.session.clear();
    vi.runAllTimers();
    expect(visit(store).session.before.value).toBeUndefined();
  });

  it('stores a drag once, not at every step', () => {
    const { session } = visit(store);
    vi.runAllTimers();
    const write = vi.spyOn(store, 'setItem');
    for (let value = 400; value < 440; value++) session.preview({ 'core.airConductance': value }, 'core');
    vi.runAllTimers();
    expect(write).toHaveBeenCalledTimes(1);
  });
});

describe('a stored text that cannot be read', () => {
  it.each([
    ['no JSON', '{'],
    ['no object', '[1]'],
    ['another version', '{"version":2}'],
    ['a car that is none', '{"version":1,"before":{"label":"x","document":{"format":"other"}}}'],
    ['a car without a document', '{"version":1,"before":"x"}'],
    ['an odd view', '{"version":1,"before":7,"view":{"units":{"temperature":"degX"},"theme":3}}'],
  ])('%s: is set aside, said, and the demo car opens', (_, text) => {
    store.texts.set('soakbench', text);
    const { session, display } = visit(store);
    expect(session.before.value?.scenario.values.name).toBe(DEMO_SCENARIOS[0].name);
    expect(store.texts.get('soakbench: set aside')).toBe(text);
    expect(display.notice.value).toMatch(/could not be read/);
    expect(display.units.value.temperature).toBe('degC');
  });

  it('with a sound Before and a faulty After keeps Before', () => {
    const first = visit(store);
    first.session.change({ 'core.airConductance': 468 }, 'core');
    first.leave();
    const text = store.texts.get('soakbench') ?? '';
    store.texts.set('soakbench', text.replace('"airConductance":468', '"airConductance":0'));
    const { session, display } = visit(store);
    expect(session.before.value?.scenario.values.core.airConductance).toBe(390);
    expect(session.after.value).toBeUndefined();
    expect(display.notice.value).toMatch(/could not be read in full/);
  });
});

describe('a storage', () => {
  it('that is full is said, and the page goes on', () => {
    const { session, display } = visit(store);
    store.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
    session.change({ 'core.airConductance': 468 }, 'core');
    expect(() => vi.runAllTimers()).not.toThrow();
    expect(display.notice.value).toMatch(/storage is full/);
    expect(session.after.value).toBeDefined();
  });

  it('that is forbidden is said, and the demo car opens', () => {
    const { session, display } = visit(undefined);
    expect(session.before.value).toBeDefined();
    expect(display.notice.value).toMatch(/stores nothing/);
  });

  it('that throws on reading is said, and the demo car opens', () => {
    store.getItem = () => {
      throw new DOMException('no', 'SecurityError');
    };
    const { session, display } = visit(store);
    expect(session.before.value).toBeDefined();
    expect(display.notice.value).toMatch(/cannot be used/);
  });
});

describe('the head of the letter', () => {
  it("is there again in the shop's own words, and takes nothing that is no text", () => {
    const first = visit(store);
    first.display.letterhead.value = { shop: 'Sample shop', customer: 'The owner', date: '' };
    vi.runAllTimers();
    expect(visit(store).display.letterhead.value).toEqual({ shop: 'Sample shop', customer: 'The owner', date: '' });

    const text = store.texts.get('soakbench') ?? '';
    store.setItem('soakbench', text.replace('"Sample shop"', '7').replace('"date"', '"other"'));
    expect(visit(store).display.letterhead.value).toEqual({ shop: '', customer: 'The owner', date: '' });
  });
});
