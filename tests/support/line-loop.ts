import {
  type FlowResistance,
  freeFlow,
  pumpPressure,
  segmentDrop,
  solveLoopFlow,
} from '../../src/sim/model/loop-flow.ts';
import type { PumpConfig } from '../../src/sim/scenario/config/loop.ts';

/** Flow [m3/s] of one pump through lines one after the other and a part that takes `dropFactor` Q^1.8. */
export function lineLoopFlow(
  pump: PumpConfig,
  voltageRatio: number,
  segments: readonly FlowResistance[],
  viscosity: number,
  density: number,
  dropFactor: number,
  guess: number,
): number {
  const rise = (flow: number): number =>
    segments.reduce(
      (sum, segment) => sum - segmentDrop(segment, flow, density, viscosity),
      pumpPressure(pump, voltageRatio, flow) - dropFactor * flow ** 1.8,
    );
  return solveLoopFlow(rise, freeFlow(pump, voltageRatio), guess, pump.curve.kind === 'parabola');
}
