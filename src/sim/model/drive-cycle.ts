import type { Config, PhaseConfig, Ramp } from '../scenario/config.ts';
import type { Segment } from '../solver/stage-system.ts';

/** A pull's peak counts from this long after it opens [s]; the solver ends a step there. */
export const PEAK_COUNTS_FROM = 1;

/** One phase of the cycle, laid on the time axis. */
export interface DriveSegment extends Segment {
  readonly phase: PhaseConfig;
  /** number of the repetition, from 1; 0 outside the repeated block */
  readonly block: number;
}

/** Lays the phases of a cycle one after the other, from time 0. */
export function layOutCycle(config: Config): DriveSegment[] {
  const { before, block, repeats, after } = config.cycle;
  const { longestStep, longestStepInPull } = config.numerics;
  const segments: DriveSegment[] = [];
  let time = 0;
  const add = (phase: PhaseConfig, blockNumber: number) => {
    const isPull = phase.kind === 'pull';
    const end = time + phase.duration;
    segments.push({
      phase,
      block: blockNumber,
      start: time,
      end,
      longestStep: isPull ? longestStepInPull : longestStep,
      stops: isPull && phase.duration > PEAK_COUNTS_FROM ? [time + PEAK_COUNTS_FROM] : [],
    });
    time = end;
  };
  for (const phase of before) add(phase, 0);
  for (let n = 1; n <= repeats; n++) for (const phase of block) add(phase, n);
  for (const phase of after) add(phase, 0);
  return segments;
}

/** Value of a ramp at a share 0 to 1 of its phase. */
export function rampAt(ramp: Ramp, share: number): number {
  return ramp.from + (ramp.to - ramp.from) * share;
}
