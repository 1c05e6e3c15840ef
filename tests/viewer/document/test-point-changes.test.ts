import { expect, it } from 'vitest';
import { type JsonObject, type Scenario, toConfig } from '../../../src/sim/index.ts';
import { givenOtherwise, isTested } from '../../../src/viewer/document/test-point-changes.ts';
import { DEMO_SCENARIOS } from '../../../src/viewer/files/demo-scenarios.ts';
import { Session } from '../../../src/viewer/state/session.ts';

it.each(['core', 'exchanger'] as const)('the %s goes to a test point and back, and stays what it is', (part) => {
  const session = new Session();
  session.open(DEMO_SCENARIOS[0].text);
  const inHand = () => session.inHand.value?.scenario as Scenario;
  const own = toConfig(inHand())[part];
  expect(session.change(givenOtherwise(inHand(), part), 'test')).toEqual([]);
  expect(isTested(inHand(), part)).toBe(true);
  expect((inHand().document[part] as JsonObject).airConductance).toBeUndefined();
  const tested = toConfig(inHand())[part];
  for (const side of ['airConductance', 'coolantConductance'] as const) {
    const [before, after] = [own?.[side], tested?.[side]];
    if (before?.kind !== 'power' || after?.kind !== 'power') throw new Error('not by test points');
    expect(after.reference / before.reference).toBeCloseTo(1, 3);
    expect(after.atFlow / before.atFlow).toBeCloseTo(1, 3);
  }
  session.putBack(session.changes.value, 'all');
  expect(session.after.value).toBeUndefined();
  session.undo();
  expect(session.change(givenOtherwise(inHand(), part), 'conductances')).toEqual([]);
  expect(isTested(inHand(), part)).toBe(false);
  const back = toConfig(inHand())[part]?.airConductance;
  expect(back).toHaveProperty('atFlow', own?.airConductance.kind === 'power' ? own.airConductance.atFlow : undefined);
});
