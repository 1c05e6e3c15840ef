import { endOf, isPull, type Phase } from './phases.ts';

/** A strictly rising way from time to a place on a line, and back; places are counted in s, like times. */
export interface TimeScale {
  /** place of the end of the run */
  readonly length: number;
  readonly placeOf: (time: number) => number;
  readonly timeOf: (place: number) => number;
}

/** With pulls only, every other phase is this share of the shortest pull: a gap that parts two bars. */
const GAP = 0.25;

/** Time as it runs. */
export function evenScale(duration: number): TimeScale {
  const same = (value: number) => Math.min(duration, Math.max(0, value));
  return { length: duration, placeOf: same, timeOf: same };
}

/** Pulls at their full length with the time between them folded to a gap; a cycle without pulls stays as it is. */
export function pullsOnlyScale(phases: readonly Phase[]): TimeScale {
  const shortest = Math.min(...phases.filter(isPull).map(({ start, end }) => end - start));
  if (!Number.isFinite(shortest)) return evenScale(endOf(phases));
  const times = [0];
  const places = [0];
  for (const phase of phases) {
    const length = phase.end - phase.start;
    times.push(phase.end);
    places.push(places[places.length - 1] + (isPull(phase) ? length : Math.min(length, GAP * shortest)));
  }
  return {
    length: places[places.length - 1],
    placeOf: (time) => interpolate(times, places, time),
    timeOf: (place) => interpolate(places, times, place),
  };
}

function interpolate(from: readonly number[], to: readonly number[], value: number): number {
  const right = from.findIndex((each) => each >= value);
  if (right === 0) return to[0];
  if (right < 0) return to[to.length - 1];
  const share = (value - from[right - 1]) / (from[right] - from[right - 1]);
  return to[right - 1] + share * (to[right] - to[right - 1]);
}
