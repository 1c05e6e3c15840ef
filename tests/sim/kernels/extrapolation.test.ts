import { describe, expect, test } from 'vitest';
import { Extrapolation } from '../../../src/sim/kernels/extrapolation.ts';

const parabola = (t: number) => 300 + 2 * t - 0.3 * t * t;
const line = (t: number) => 40 - 7 * t;

/** Both quantities at one time. */
function pointAt(time: number): Float64Array {
  return Float64Array.of(parabola(time), line(time));
}

function guessAt(history: Extrapolation, stage: 1 | 2, time: number): number[] {
  const out = new Float64Array(2);
  history.guess(stage, time, out);
  return [...out];
}

/** Tries both stages of a step and lets them stand. */
function takeStep(history: Extrapolation, stage1: number, stage2: number): void {
  history.tryPoint(1, stage1, pointAt(stage1));
  history.tryPoint(2, stage2, pointAt(stage2));
  history.accept();
}

describe('a guess', () => {
  test('of one known point is that point', () => {
    const history = new Extrapolation(2);
    history.restart(1, pointAt(1));
    expect(guessAt(history, 1, 9)).toEqual([parabola(1), line(1)]);
  });

  test('of two known points, the second only tried, lies on the line through them', () => {
    const history = new Extrapolation(2);
    history.restart(0, pointAt(0));
    history.tryPoint(1, 1, pointAt(1));
    const [onChord, onLine] = guessAt(history, 2, 3);
    expect(onLine).toBeCloseTo(line(3), 12);
    expect(onChord).toBeCloseTo(parabola(0) + 3 * (parabola(1) - parabola(0)), 12);
  });

  test.each([1, 2] as const)('for stage %i from three points meets a parabola', (stage) => {
    const history = new Extrapolation(2);
    history.restart(0, pointAt(0));
    takeStep(history, 0.3, 1);
    if (stage === 2) history.tryPoint(1, 1.6, pointAt(1.6));
    const [value, straight] = guessAt(history, stage, 4);
    expect(value).toBeCloseTo(parabola(4), 10);
    expect(straight).toBeCloseTo(line(4), 10);
  });

  test('follows the last three points alone', () => {
    const history = new Extrapolation(2);
    history.restart(-5, Float64Array.of(1e6, 1e6));
    takeStep(history, 0.3, 1);
    takeStep(history, 1.3, 2);
    expect(guessAt(history, 1, 3)[0]).toBeCloseTo(parabola(3), 10);
  });
});

test('a refused step leaves no trace', () => {
  const [refused, never] = [new Extrapolation(2), new Extrapolation(2)];
  for (const history of [refused, never]) {
    history.restart(0, pointAt(0));
    takeStep(history, 0.3, 1);
  }
  refused.tryPoint(1, 2, Float64Array.of(-1, -1));
  refused.tryPoint(2, 4, Float64Array.of(-1, -1));
  expect(guessAt(refused, 1, 2)).toEqual(guessAt(never, 1, 2));
});

test('a restart forgets what went before', () => {
  const history = new Extrapolation(2);
  history.restart(0, pointAt(0));
  takeStep(history, 0.3, 1);
  history.restart(2, Float64Array.of(5, 6));
  expect(guessAt(history, 1, 3)).toEqual([5, 6]);
});

test('a step of no length does not divide by nothing', () => {
  const history = new Extrapolation(2);
  history.restart(1, pointAt(1));
  takeStep(history, 1, 1);
  expect(guessAt(history, 1, 2)).toEqual([parabola(1), line(1)]);
});

test('points that came in are copied', () => {
  const history = new Extrapolation(2);
  const point = pointAt(0);
  history.restart(0, point);
  point.fill(-1);
  expect(guessAt(history, 1, 1)).toEqual([parabola(0), line(0)]);
});
