import type { PhaseConfig, Ramp } from '../scenario/config/cycle.ts';
import type { Config } from '../scenario/config.ts';
import type { Segment } from '../solver/stage-system.ts';

/** A pull's peak counts from this long after it opens [s], own choice; the solver ends a step there. */
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

/** What the cycle prescribes at one instant, SI; speeds in rpm, air speed in m/s at the exchanger's face. */
export interface DriveInputs {
  engineSpeed: number;
  manifoldPressure: number;
  airSpeed: number;
  exchangerPickUp: number;
  secondAirSpeed: number;
  secondPickUp: number;
  outside: number;
  outsidePressure: number;
  bayAboveOutside: number;
  engineMetal: number;
  oil: number;
}

export function makeInputs(): DriveInputs {
  return {
    engineSpeed: 0,
    manifoldPressure: 0,
    airSpeed: 0,
    exchangerPickUp: 0,
    secondAirSpeed: 0,
    secondPickUp: 0,
    outside: 0,
    outsidePressure: 0,
    bayAboveOutside: 0,
    engineMetal: 0,
    oil: 0,
  };
}

/** Writes into `inputs` what a segment prescribes at `time`; at its ends from its own side. */
export function readInputs({ phase, start, end }: DriveSegment, time: number, inputs: DriveInputs): void {
  const share = Math.min(1, Math.max(0, (time - start) / (end - start)));
  inputs.engineSpeed = rampAt(phase.engineSpeed, share);
  inputs.manifoldPressure = rampAt(phase.manifoldPressure, share);
  inputs.airSpeed = rampAt(phase.exchangerAir.speed, share);
  inputs.exchangerPickUp = rampAt(phase.exchangerAir.pickUp, share);
  inputs.secondAirSpeed = rampAt(phase.secondExchangerAir.speed, share);
  inputs.secondPickUp = rampAt(phase.secondExchangerAir.pickUp, share);
  inputs.outside = rampAt(phase.outsideTemperature, share);
  inputs.outsidePressure = rampAt(phase.outsidePressure, share);
  inputs.bayAboveOutside = phase.bayAboveOutside;
  inputs.engineMetal = phase.engineMetalTemperature;
  inputs.oil = phase.oilTemperature;
}

function rampAt(ramp: Ramp, share: number): number {
  return ramp.from + (ramp.to - ramp.from) * share;
}
