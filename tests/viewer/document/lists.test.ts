import { describe, expect, it } from 'vitest';
import {
  curveFromParabola,
  EVEN_AIR,
  halfwayAdded,
  itemAdded,
  itemRemoved,
  itemsAt,
  parabolaFromCurve,
  rowAdded,
  tableStarted,
} from '../../../src/viewer/document/lists.ts';
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
});

describe('the pump', () => {
  // Parabola of the demo pump: 28 kPa (1 - (Q / 26 L/min)^2). At half the free flow: 28 x 0.75 = 21 kPa.
  it('by two figures becomes points on its parabola, which the reader takes', () => {
    const { session } = opened();
    const issues = session.change(curveFromParabola('pump', 28, 26), 'curve');
    expect(issues).toEqual([]);
    const curve = session.inHand.value?.scenario.values.pump.curve;
    expect(curve?.[2]).toEqual({ flow: 13, pressure: 21 });
    expect(curve?.at(-1)).toEqual({ flow: 26, pressure: 0 });
  });

  it('by points becomes the two ends of its curve', () => {
    const points = [
      { flow: 0, pressure: 28 },
      { flow: 13, pressure: 21 },
      { flow: 26, pressure: 0 },
    ];
    expect(parabolaFromCurve('pump', points)).toMatchObject({ 'pump.shutOffPressure': 28, 'pump.freeFlow': 26 });
  });

  it('whose points stop short is run on straight to both axes', () => {
    // From (10, 20) to (20, 10) the line meets the axes at 30 kPa and 30 L/min.
    const points = [
      { flow: 10, pressure: 20 },
      { flow: 20, pressure: 10 },
    ];
    expect(parabolaFromCurve('pump', points)).toMatchObject({ 'pump.shutOffPressure': 30, 'pump.freeFlow': 30 });
  });

  it.each([
    // Halfway between (13, 21) and (19.5, 12.25), and between (19.5, 12.25) and (26, 0).
    [2, { flow: 16.25, pressure: 16.625 }, 3],
    [4, { flow: 22.75, pressure: 6.125 }, 4],
  ])('takes a point more beside point %i', (index, point, at) => {
    const { session, document } = opened();
    session.change(curveFromParabola('pump', 28, 26), 'curve');
    const curve = () => session.inHand.value?.scenario.values.pump.curve ?? [];
    expect(session.change(halfwayAdded(document(), 'pump.curve', curve(), index), 'add')).toEqual([]);
    expect(curve()[at]).toEqual(point);
    expect(curve()).toHaveLength(6);
  });

  it('comes back from a curve', () => {
    const { session } = opened();
    session.change(curveFromParabola('pump', 28, 26), 'curve');
    const { curve } = session.inHand.value?.scenario.values.pump ?? {};
    expect(session.change(parabolaFromCurve('pump', curve ?? []), 'two figures')).toEqual([]);
    expect(session.inHand.value?.scenario.values.pump.curve).toBeUndefined();
    expect(session.inHand.value?.scenario.values.pump.freeFlow).toBe(26);
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

describe('the table of spark and torque', () => {
  it('starts without a claim, at the limit and 20 K above', () => {
    const { session } = opened();
    expect(session.inHand.value?.scenario.values.chargeTable).toBeUndefined();
    expect(session.change(tableStarted(58), 'table')).toEqual([]);
    expect(session.inHand.value?.scenario.values.chargeTable).toEqual([
      { chargeTemperature: 58, spark: 0, torque: 0 },
      { chargeTemperature: 78, spark: 0, torque: 0 },
    ]);
    session.undo();
    expect(session.after.value).toBeUndefined();
  });

  it.each([
    // Halfway between (40, 0, 0) and (80, -2, -1); behind the last, on with its values.
    [0, { chargeTemperature: 60, spark: -1, torque: -0.5 }, 1],
    [1, { chargeTemperature: 100, spark: -2, torque: -1 }, 2],
  ])('takes a row more behind row %i', (index, row, at) => {
    const { session, document } = opened();
    const table = [
      { chargeTemperature: 40, spark: 0, torque: 0 },
      { chargeTemperature: 80, spark: -2, torque: -1 },
    ];
    session.change({ chargeTable: table }, 'table');
    expect(session.change(rowAdded(document(), table, index), 'add')).toEqual([]);
    expect(session.inHand.value?.scenario.values.chargeTable?.[at]).toEqual(row);
    expect(itemsAt(document(), 'chargeTable')).toHaveLength(3);
  });
});
