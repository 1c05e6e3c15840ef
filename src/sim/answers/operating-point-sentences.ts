import { decimals, figure } from '../units.ts';
import { meetingOf, meterNow } from './measured-flow.ts';
import type { OperatingPoint } from './operating-point.ts';
import type { Wording } from './wording.ts';

/** A line about the pumps and what they draw from; some are warnings. */
export interface LoopRemark {
  readonly text: string;
  readonly isWarning: boolean;
}

/** What else is worth a line: suction, wires, a measured flow, pumps that deliver nothing. */
export function explainOperatingPoint(
  { suction, wire, measured, heldShut }: OperatingPoint,
  wording: Pick<Wording, 'pressure' | 'flow'>,
): LoopRemark[] {
  const remarks: LoopRemark[] = heldShut.map((pump) => ({
    text: `The ${pump} is held shut by the stronger one beside it and delivers nothing.`,
    isWarning: true,
  }));
  const [margin, needed] = [Math.abs(suction.margin), suction.needed].map(wording.pressure);
  const isShort = suction.margin < suction.needed;
  remarks.push({
    text: isShort
      ? `Pump inlet ${suction.margin < 0 ? `${margin} below` : `only ${margin} above`} the vapour pressure of the coolant, and the pump needs ${needed} above it: it may cavitate. Mount the tank higher, or the pump nearer to it, with a wider line between them.`
      : `Pump inlet ${margin} above the vapour pressure of the coolant; the pump needs ${needed}.`,
    isWarning: isShort,
  });
  if (wire !== undefined) {
    const [lost, atPump] = [decimals(wire.drop, 2), wire.atPump.toFixed(2)];
    const text =
      Number(lost) === 0
        ? `${atPump} V at the battery and at the pump: nothing is lost in its wires.`
        : `${figure(wire.supply)} V at the battery, ${atPump} V at the pump: ${lost} V lost in its wires.`;
    remarks.push({ text, isWarning: false });
  }
  if (measured !== undefined) {
    const [meter, curves] = [measured.flow, measured.byCurves].map(wording.flow);
    remarks.push({
      text: `Measured ${meter}; the curves alone give ${curves}. ${meetingOf(measured)}.${meterNow(measured, wording.flow)}`,
      isWarning: false,
    });
  }
  return remarks;
}
