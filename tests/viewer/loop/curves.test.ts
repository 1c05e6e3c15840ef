import { describe, expect, it } from 'vitest';
import { areDrawnAlike, axesFor, curvesView } from '../../../src/viewer/loop/curves.ts';
import { IMPERIAL, METRIC } from '../../../src/viewer/state/display.ts';
import { HAND_MADE, perMinute } from './hand-made.ts';

describe('pump against loop', () => {
  const axes = axesFor([HAND_MADE], METRIC);
  const view = curvesView(HAND_MADE, axes, METRIC);

  it('has round axes that hold label and shut-off pressure', () => {
    expect(axes.flow.ticks).toEqual([expect.closeTo(0), 10, 20, 30, 40]);
    expect(axes.pressure.ticks).toEqual([expect.closeTo(0), 10, 20, 30, 40]);
  });

  it('marks the crossing, the label and the straight line where they are', () => {
    expect(view.crossing).toEqual([axes.flow.place(20), axes.pressure.place(30)]);
    expect(view.rating).toEqual([axes.flow.place(40), axes.pressure.place(0)]);
    expect(view.straight?.line).toEqual([
      [axes.flow.place(0), axes.pressure.place(40)],
      [axes.flow.place(40), axes.pressure.place(0)],
    ]);
    expect(view.straight?.crossing[0]).toBeCloseTo(axes.flow.place(17.3704), 2);
    expect(view.straight?.crossing[1]).toBeCloseTo(axes.pressure.place(22.6296), 2);
  });

  it('draws both curves through the crossing, up to the edge of the paper', () => {
    for (const curve of [view.pump, view.loop]) {
      expect(curve[20][0]).toBeCloseTo(view.crossing[0], 6);
      expect(curve[20][1]).toBeCloseTo(view.crossing[1], 6);
      for (const [, y] of curve) {
        expect(y).toBeGreaterThanOrEqual(axes.pressure.place(40) - 1e-9);
        expect(y).toBeLessThanOrEqual(axes.pressure.place(0) + 1e-9);
      }
    }
    // 0.075 Q^2 is 40 kPa at 23.1 L/min.
    const [x, y] = view.loop[view.loop.length - 1];
    expect(x).toBeCloseTo(axes.flow.place(Math.sqrt(40 / 0.075)), 0);
    expect(y).toBeCloseTo(axes.pressure.place(40), 6);
  });

  it('shares its axes with a larger pump, and is the same in other units', () => {
    const larger = { ...HAND_MADE, rating: perMinute(90) };
    expect(axesFor([HAND_MADE, larger], METRIC).flow.ticks.at(-1)).toBe(100);
    const imperial = axesFor([HAND_MADE], IMPERIAL);
    // 40 L/min are 10.57 gpm, 40 kPa are 5.80 psi.
    expect(imperial.flow.ticks.at(-1)).toBe(15);
    expect(imperial.pressure.ticks.at(-1)).toBe(6);
    expect(curvesView(HAND_MADE, imperial, IMPERIAL).crossing[0]).toBeCloseTo(imperial.flow.place(20 / 3.785411784), 6);
  });

  it('tells a point that is drawn otherwise from one that is not', () => {
    expect(areDrawnAlike(HAND_MADE, { ...HAND_MADE, phase: 'rest' }, axes, METRIC)).toBe(true);
    expect(areDrawnAlike(HAND_MADE, { ...HAND_MADE, flow: perMinute(19) }, axes, METRIC)).toBe(false);
  });
});
