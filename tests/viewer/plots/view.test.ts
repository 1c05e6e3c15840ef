import { describe, expect, it } from 'vitest';
import { heldStretch, timeTicks, unchanged, viewOf, zoomed } from '../../../src/viewer/plots/view.ts';
import { minutePhases } from '../time/hand-made.ts';

const phases = minutePhases(3);
const LENGTH = 240;
const at = (time: number) => viewOf(phases, LENGTH, 'one pull', time, undefined);

describe('the stretch of time that is shown', () => {
  // A pull of 12 s is shown from 2 s before it to 10 s after it.
  it.each([58, 60, 66, 72, 76])('is pull 1 at %s s', (time) => {
    expect(at(time)).toMatchObject({ from: 58, to: 82, zero: 60, name: 'pull 1', caption: 'seconds into pull 1' });
    expect(at(time).pull?.pull).toBe(1);
  });

  it('moves along with the time through a rest, 2 s ahead of it', () => {
    expect(at(95)).toMatchObject({ from: 73, to: 97, zero: 60, name: 'rest after pull 1' });
    expect(at(95).pull).toBeUndefined();
    expect(at(81)).toMatchObject({ from: 59, to: 83, name: 'pull 1' });
  });

  it('takes the next pull when its opening is near', () => {
    expect(at(117.9).to).toBeCloseTo(119.9, 9);
    expect(at(118)).toMatchObject({ from: 118, to: 142, name: 'pull 2' });
  });

  it('counts the warm-up from its start', () => {
    expect(at(10)).toMatchObject({ from: 0, to: 24, zero: 0, caption: 'seconds', name: 'warm-up' });
    expect(at(40)).toMatchObject({ from: 18, to: 42 });
  });

  it('does not go over the end', () => {
    expect(at(240)).toMatchObject({ from: 216, to: 240 });
  });

  it('is everything where the whole run is wanted, or nothing pulls', () => {
    expect(viewOf(phases, LENGTH, 'whole run', 66, undefined)).toMatchObject({ from: 0, to: 240, unit: 'minutes' });
    expect(viewOf(minutePhases(0), 60, 'one pull', 5, undefined)).toMatchObject({ from: 0, to: 60, unit: 'seconds' });
  });

  it('is the stretch that was zoomed to', () => {
    expect(viewOf(phases, LENGTH, 'one pull', 66, { from: 64, to: 68 })).toMatchObject({ from: 64, to: 68, zero: 60 });
  });

  it('stays the very same while nothing in it changes', () => {
    const first = at(60);
    expect(unchanged(first, at(70))).toBe(first);
    expect(unchanged(first, at(95))).not.toBe(first);
  });
});

describe('numbers of a time axis', () => {
  it('count from the opening of the pull', () => {
    const { times, texts, caption } = timeTicks(at(66), 380, 44);
    expect(times).toEqual([60, 64, 68, 72, 76, 80]);
    expect(texts).toEqual(['0', '4', '8', '12', '16', '20']);
    expect(caption).toBe('seconds into pull 1');
  });

  it('count minutes over the whole run, and seconds too where it is zoomed', () => {
    const whole = viewOf(phases, LENGTH, 'whole run', 66, undefined);
    expect(timeTicks(whole, 380, 60)).toMatchObject({ texts: ['0', '1', '2', '3', '4'], caption: 'minutes' });
    const near = viewOf(phases, LENGTH, 'whole run', 66, { from: 60, to: 75 });
    expect(timeTicks(near, 380, 44)).toMatchObject({
      texts: ['1:00', '1:02', '1:04', '1:06', '1:08', '1:10', '1:12', '1:14'],
      caption: 'minutes:seconds',
    });
  });

  it('say little where there is little room', () => {
    expect(timeTicks(at(66), 280, 44).caption).toBe('s into pull 1');
    expect(timeTicks(viewOf([], 0, 'one pull', 0, undefined), 280, 44).times).toEqual([]);
  });
});

describe('zoom', () => {
  it('keeps the time it is about in its place', () => {
    expect(zoomed({ from: 100, to: 140 }, 110, 0.5, LENGTH)).toEqual({ from: 105, to: 125 });
  });

  it('stays inside the run and ends where all of it is shown', () => {
    expect(heldStretch({ from: -10, to: 20 }, LENGTH)).toEqual({ from: 0, to: 30 });
    expect(heldStretch({ from: 220, to: 250 }, LENGTH)).toEqual({ from: 210, to: 240 });
    expect(heldStretch({ from: -10, to: 300 }, LENGTH)).toBeUndefined();
    expect(zoomed({ from: 0, to: 200 }, 100, 1.5, LENGTH)).toBeUndefined();
  });

  it('goes down to half a second', () => {
    expect(heldStretch({ from: 100, to: 100.1 }, LENGTH)).toEqual({ from: 100, to: 100.5 });
  });
});
