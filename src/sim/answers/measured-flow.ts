import { asMeasured, CoolantRing, meterSetting } from '../model/coolant-ring.ts';
import type { Config } from '../scenario/config.ts';

/** A flow that was measured of a car, and what its loop and its curves make of it [m3/s]. */
export interface MeasuredFlow {
  readonly flow: number;
  /** what the curves alone would give of the car that it was measured on */
  readonly byCurves: number;
  /** resistance over that of the scenario; absent where no resistance gives that flow and the curves decide */
  readonly resistanceFactor?: number;
  /** what the meter would read, where the loop has changed since */
  readonly now?: number;
}

/** How the loop meets the flow that was measured, without a full stop. */
export function meetingOf({ resistanceFactor }: MeasuredFlow): string {
  return resistanceFactor === undefined
    ? 'No resistance gives that flow with these pumps, so the curves stand'
    : `All resistances are taken ${resistanceFactor.toFixed(2)} times to meet the meter`;
}

/** What has become of the flow that was measured, as a sentence behind another; '' where the loop is as it was. */
export function meterNow({ now }: MeasuredFlow, flow: (flow: number) => string): string {
  return now === undefined ? '' : ` With what has changed since, the meter would read ${flow(now)}.`;
}

/** A flow nearer to another than this share is the same: roots are found to far less. */
const SAME_FLOW = 1e-6;

/** The flow that was measured of a car, and what its loop and its curves make of it; undefined where none was. */
export function measuredIn(config: Config): MeasuredFlow | undefined {
  if (config.measuredFlow === undefined) return undefined;
  const { flow, temperature, voltageRatio } = config.measuredFlow;
  const { measuredFlow: _, ...byCurves } = asMeasured(config);
  const read = (ring: CoolantRing): number => ring.flowAt(meterSetting(voltageRatio), temperature);
  const ring = new CoolantRing(config);
  const measured = { flow, byCurves: read(new CoolantRing(byCurves)) };
  if (Number.isNaN(ring.resistanceFactor)) return measured;
  const now = read(ring);
  return {
    ...measured,
    resistanceFactor: ring.resistanceFactor,
    ...(Math.abs(now / flow - 1) > SAME_FLOW && { now }),
  };
}
