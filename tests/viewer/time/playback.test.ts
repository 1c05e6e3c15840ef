import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Clock } from '../../../src/viewer/state/clock.ts';
import { play } from '../../../src/viewer/time/playback.ts';

let frames: FrameRequestCallback[];
const nextFrame = (now: number) => {
  const [frame] = frames.splice(0, 1);
  frame?.(now);
};

beforeEach(() => {
  frames = [];
  vi.useFakeTimers({ now: 0 });
  vi.stubGlobal('requestAnimationFrame', (frame: FrameRequestCallback) => frames.push(frame));
  vi.stubGlobal('cancelAnimationFrame', () => {
    frames = [];
  });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

function playing(at: number): Clock {
  const clock = new Clock();
  clock.pinned.value = at;
  clock.speed.value = 10;
  clock.isPlaying.value = true;
  return clock;
}

describe('playing', () => {
  it('moves by the time since the last frame, times the speed', () => {
    const clock = playing(20);
    play(clock, 100, false);
    nextFrame(50);
    expect(clock.pinned.value).toBeCloseTo(20.5, 9);
    nextFrame(70);
    expect(clock.pinned.value).toBeCloseTo(20.7, 9);
  });

  it('does not leap over the time that the page slept', () => {
    const clock = playing(20);
    play(clock, 100, false);
    nextFrame(60_000);
    expect(clock.pinned.value).toBeCloseTo(21, 9);
  });

  it('stops at the end and keeps its place', () => {
    const clock = playing(99.8);
    play(clock, 100, false);
    nextFrame(50);
    expect(clock.pinned.value).toBe(100);
    expect(clock.isPlaying.value).toBe(false);
    expect(frames).toEqual([]);
  });

  it('begins again from the end', () => {
    const clock = playing(100);
    play(clock, 100, false);
    expect(clock.pinned.value).toBe(0);
  });

  it('asks for no frame once it is stopped', () => {
    const stop = play(playing(20), 100, false);
    expect(frames).toHaveLength(1);
    stop();
    expect(frames).toEqual([]);
  });

  it('steps twice a second where motion is to be reduced', () => {
    const clock = playing(20);
    const stop = play(clock, 100, true);
    expect(frames).toEqual([]);
    vi.advanceTimersByTime(1000);
    expect(clock.pinned.value).toBeCloseTo(30, 9);
    stop();
    vi.advanceTimersByTime(1000);
    expect(clock.pinned.value).toBeCloseTo(30, 9);
  });
});
