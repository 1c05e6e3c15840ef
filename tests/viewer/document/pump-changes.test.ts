import { describe, expect, it } from 'vitest';
import { curveFromParabola, parabolaFromCurve } from '../../../src/viewer/document/pump-changes.ts';
import { DEMO_SCENARIOS } from '../../../src/viewer/files/demo-scenarios.ts';
import { Session } from '../../../src/viewer/state/session.ts';

function opened() {
  const session = new Session();
  session.open(DEMO_SCENARIOS[0].text);
  return { session };
}

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

  it('comes back from a curve', () => {
    const { session } = opened();
    session.change(curveFromParabola('pump', 28, 26), 'curve');
    const { curve } = session.inHand.value?.scenario.values.pump ?? {};
    expect(session.change(parabolaFromCurve('pump', curve ?? []), 'two figures')).toEqual([]);
    expect(session.inHand.value?.scenario.values.pump.curve).toBeUndefined();
    expect(session.inHand.value?.scenario.values.pump.freeFlow).toBe(26);
  });
});
