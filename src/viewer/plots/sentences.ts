import { degrees, joined, kelvins, seconds } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';
import { inHand, type ShownRun } from '../time/runs.ts';
import { calledAs, describeBars } from '../time/sentences.ts';
import type { View } from './view.ts';

/** The plot of the charge temperature in words. */
export function describeCharge(runs: readonly ShownRun[], view: View, units: UnitChoice): string {
  if (inHand(runs) === undefined) return 'No run yet.';
  const { pull } = view;
  if (pull === undefined) return describeBars(runs, units);
  return runs.map((run) => calledAs(run, runs.length === 1) + pullInWords(run, pull.pull, units)).join(' ');
}

function pullInWords({ pulls }: ShownRun, number: number, units: UnitChoice): string {
  const pull = pulls.find((each) => each.pull === number);
  if (pull === undefined) return `pull ${number} is not solved.`;
  const { peak, margin, crossedAtShare, duration, indicatedPeak } = pull;
  const away = kelvins(Math.abs(margin), units);
  const over =
    crossedAtShare === undefined
      ? `${away} under the limit`
      : `${away} over the limit, which it passes ${joined(seconds(crossedAtShare * duration))} in`;
  const indicated = degrees(indicatedPeak, units);
  return `pull ${number} peaks at ${degrees(peak, units)}, ${over}; indicated ${indicated} at most.`;
}
