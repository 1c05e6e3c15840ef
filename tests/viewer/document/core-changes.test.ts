import { describe, expect, it } from 'vitest';
import type { JsonObject, Scenario } from '../../../src/sim/index.ts';
import { corePresets, hasCore, sizeBetween, sizeChanges } from '../../../src/viewer/document/core-changes.ts';
import { givenOtherwise } from '../../../src/viewer/document/test-point-changes.ts';
import { DEMO_SCENARIOS } from '../../../src/viewer/files/demo-scenarios.ts';
import { Session } from '../../../src/viewer/state/session.ts';

function opened(text = DEMO_SCENARIOS[0].text) {
  const session = new Session();
  session.open(text);
  const before = session.before.value;
  if (before === undefined) throw new Error('no car');
  const inHand = () => session.inHand.value?.scenario as Scenario;
  return { session, before, inHand };
}

describe('presets', () => {
  const { before } = opened();

  it('are the own core and the variants that change nothing but the core', () => {
    expect(corePresets(before.document).map(({ name }) => name)).toEqual(['Stock', 'one row wider', 'bigger core']);
  });

  it('leave out variants that stand on others or reach beyond the core', () => {
    const variants = [
      { name: 'based', basedOn: 'other', changes: { 'core.airDrop': 5 } },
      { name: 'more', changes: { 'core.airDrop': 5, 'pump.freeFlow': 60 } },
      { name: 'other', changes: { 'core.airDrop': 5 } },
    ];
    const names = corePresets({ ...before.document, variants }).map(({ name }) => name);
    expect(names).toEqual(['Stock', 'other']);
  });

  it('know which core a car has', () => {
    const [stock, oneRow, bigger] = corePresets(before.document);
    const document: JsonObject = { ...before.document, core: bigger.core };
    expect([stock, oneRow, bigger].map((preset) => hasCore(document, preset))).toEqual([false, false, true]);
    expect(hasCore(before.document, stock)).toBe(true);
  });
});

describe('the size of a core', () => {
  it('sets five keys in one preview, and the size is read back', () => {
    const { session, before, inHand } = opened();
    session.change(sizeChanges(before.scenario, { width: 1.45, depth: 1.3 }), 'core size');
    // Values of "bigger core" in the demo file, 45 % wider and 30 % deeper.
    expect(inHand().values.core.coolantConductance).toBeCloseTo(3582, -1);
    expect(inHand().values.core.airDrop).toBeCloseTo(6, 1);
    expect(session.changes.value).toHaveLength(5);
    expect(sizeBetween(before.scenario, inHand())).toEqual({ width: 1.45, depth: 1.3 });
  });

  it('of a core by a test point takes the test out, and puts it back at its own size', () => {
    const { session, before, inHand } = opened();
    session.change(givenOtherwise(before.scenario, 'core'), 'test');
    const tested = inHand();
    session.change(sizeChanges(tested, { width: 1.45, depth: 1.3 }), 'core size');
    expect(inHand().values.core.airConductance).toBeCloseTo(584, -1);
    expect(inHand().values.core.test).toBeUndefined();
    session.change(sizeChanges(tested, { width: 1, depth: 1 }), 'core size');
    expect(inHand().document).toEqual(tested.document);
  });

  it('is that of the printed variant', () => {
    const { session, before, inHand } = opened();
    session.tryVariant('bigger core');
    expect(sizeBetween(before.scenario, inHand())).toEqual({ width: 1.45, depth: 1.3 });
  });

  it('back at one is just what the file has, so After goes', () => {
    const { session, before } = opened(
      DEMO_SCENARIOS[0].text.replace('"coolantVolume": 0.8', '"coolantVolume": "0,8 L"'),
    );
    session.change(sizeChanges(before.scenario, { width: 1.2, depth: 1 }), 'core size');
    expect(session.after.value).toBeDefined();
    session.change(sizeChanges(before.scenario, { width: 1, depth: 1 }), 'core size');
    expect(session.after.value).toBeUndefined();
  });

  it('keeps other changes of the core and of the car', () => {
    const { session, before } = opened();
    session.change({ 'core.toBay': 2, 'pump.freeFlow': 60 }, 'others');
    session.change(sizeChanges(before.scenario, { width: 1.2, depth: 1 }), 'core size');
    session.change(sizeChanges(before.scenario, { width: 1, depth: 1 }), 'core size');
    expect(session.changes.value).toEqual(['core.toBay', 'pump.freeFlow']);
  });

  it('is none where one value was set alone', () => {
    const { session, before, inHand } = opened();
    session.change({ 'core.airConductance': 585 }, 'air');
    expect(sizeBetween(before.scenario, inHand())).toBeUndefined();
  });
});
