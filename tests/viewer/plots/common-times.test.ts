import { describe, expect, it } from 'vitest';
import { commonTimes, extremes, sampled } from '../../../src/viewer/plots/common-times.ts';
import { handMadeSeries } from '../time/hand-made.ts';

const same = (value: number) => value;

// A joint at 10 s, where the temperature leaps from 320 to 300 K.
const before = handMadeSeries({ time: [0, 4, 10, 10, 20], chargeTemperature: [300, 308, 320, 300, 310] });
// Other rows, the same joint, and an earlier end.
const after = handMadeSeries({ time: [0, 5, 10, 10, 15], chargeTemperature: [300, 305, 306, 290, 295] });

describe('two runs at common times', () => {
  const common = commonTimes([before, after]);

  it('has every row of both and the joint twice', () => {
    expect(common.times).toEqual([0, 4, 5, 10, 10, 15, 20]);
    expect(common.isRight).toEqual([false, false, false, false, true, false, false]);
  });

  it('goes through the rows of each and straight between them', () => {
    expect(sampled(common, before, 'chargeTemperature', same)).toEqual([300, 308, 310, 320, 300, 305, 310]);
  });

  it('says nothing behind the end of a run', () => {
    expect(sampled(common, after, 'chargeTemperature', same)).toEqual([300, 304, 305, 306, 290, 295, null]);
  });

  it('says nothing for a run that is not there', () => {
    expect(sampled(common, undefined, 'chargeTemperature', same)).toEqual(Array(7).fill(null));
    expect(commonTimes([undefined, undefined]).times).toEqual([]);
  });

  it('goes straight over a joint that only the other run has', () => {
    const smooth = handMadeSeries({ time: [0, 20], chargeTemperature: [300, 320] });
    const both = commonTimes([before, smooth]);
    expect(both.times).toEqual([0, 4, 10, 10, 20]);
    expect(sampled(both, smooth, 'chargeTemperature', same)).toEqual([300, 304, 310, 310, 320]);
  });

  it('shows values in the unit of the plot', () => {
    const shown = sampled(commonTimes([before]), before, 'chargeTemperature', (kelvin) => kelvin - 273);
    expect(shown).toEqual([27, 35, 47, 27, 37]);
  });

  it('finds the extremes over both', () => {
    expect(extremes([before, after], 'chargeTemperature')).toEqual([290, 320]);
    expect(extremes([undefined, undefined], 'chargeTemperature')).toBeUndefined();
  });
});
