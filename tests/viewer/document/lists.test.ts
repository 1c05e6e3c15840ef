import { describe, expect, it } from 'vitest';
import { EVEN_AIR } from '../../../src/viewer/document/core-changes.ts';
import { halfwayAdded, itemAdded, itemRemoved, itemsAt } from '../../../src/viewer/document/lists.ts';
import { curveFromParabola } from '../../../src/viewer/document/pump-changes.ts';
import { DEMO_SCENARIOS } from '../../../src/viewer/files/demo-scenarios.ts';
import { Session } from '../../../src/viewer/state/session.ts';

function opened() {
  const session = new Session();
  session.open(DEMO_SCENARIOS[0].text);
  const document = () => session.inHand.value?.document ?? {};
  return { session, document };
}

describe('lists of the file', () => {
  it('one segment without brackets is a list of one', () => {
    expect(itemsAt(opened().document(), 'lines.afterPump')).toEqual([{ length: 1.4, lossCoefficient: 4.5 }]);
  });

  it('grow and shrink, and the car stays readable', () => {
    const { session, document } = opened();
    expect(session.change(itemAdded(document(), 'lines.afterPump', 0), 'add')).toEqual([]);
    expect(itemsAt(document(), 'lines.afterPump')).toHaveLength(2);
    expect(session.change(itemRemoved(document(), 'lines.afterPump', 0), 'remove')).toEqual([]);
    expect(itemsAt(document(), 'lines.afterPump')).toHaveLength(1);
  });

  it('a phase is doubled where it stands', () => {
    const { session, document } = opened();
    session.change(itemAdded(document(), 'cycle.1.phases', 1), 'add');
    const kinds = session.inHand.value?.config.cycle.block.map(({ kind }) => kind);
    expect(kinds).toEqual(['pull', 'idle', 'idle']);
  });

  it.each([
    // Halfway between (13, 21) and (19.5, 12.25), and between (19.5, 12.25) and (26, 0).
    [2, { flow: 16.25, pressure: 16.625 }, 3],
    [4, { flow: 22.75, pressure: 6.125 }, 4],
  ])('a curve takes a point more beside point %i', (index, point, at) => {
    const { session, document } = opened();
    session.change(curveFromParabola('pump', 28, 26), 'curve');
    const curve = () => session.inHand.value?.scenario.values.pump.curve ?? [];
    expect(session.change(halfwayAdded(document(), 'pump.curve', curve(), index), 'add')).toEqual([]);
    expect(curve()[at]).toEqual(point);
    expect(curve()).toHaveLength(6);
  });
});

describe('the air velocity', () => {
  it('starts even, and takes a point more halfway', () => {
    const { session, document } = opened();
    const points = () => session.inHand.value?.scenario.values.core.airVelocity ?? [];
    expect(session.change({ 'core.airVelocity': EVEN_AIR }, 'uneven air')).toEqual([]);
    expect(session.change({ 'core.airVelocity.1.speed': 3 }, 'faster')).toEqual([]);
    for (const [index, point, at] of [
      [0, { place: 0.5, speed: 2 }, 1],
      [2, { place: 0.75, speed: 2.5 }, 2],
    ] as const) {
      expect(session.change(halfwayAdded(document(), 'core.airVelocity', points(), index), 'add')).toEqual([]);
      expect(points()[at]).toEqual(point);
    }
    expect(session.inHand.value?.config.core.layout.airVelocity).toBeDefined();
  });
});
