import { counted, countPulls } from '../../sim/index.ts';
import { clockTime, degrees, joined, scaleOf, signedDifference } from '../format.ts';
import { ROLE_NAMES } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';
import { describeTarget, targetEvents } from './events.ts';
import type { GaugeMark } from './gauge-marks.ts';
import { endOf } from './phases.ts';
import type { ShownRun } from './runs.ts';

/** What a run is called at the head of a sentence; a car alone needs no name. */
export const calledAs = ({ which }: ShownRun, isAlone: boolean): string => (isAlone ? '' : `${ROLE_NAMES[which]}: `);

/** The bars in words, one sentence a car. */
export function describeBars(runs: readonly ShownRun[], units: UnitChoice): string {
  if (runs.length === 0) return 'No run yet.';
  return runs
    .map((run) => {
      const target = describeTarget(targetEvents(run), run.phases);
      return [calledAs(run, runs.length === 1) + barsInWords(run, units), target].filter(Boolean).join(' ');
    })
    .join(' ');
}

function barsInWords({ pulls, phases, solvedTo, car }: ShownRun, units: UnitChoice): string {
  const inUnits = (kelvin: number): string => degrees(kelvin, units);
  const planned = phases.at(-1)?.pull ?? 0;
  if (planned === 0) return 'no pull in this run.';
  const isPart = solvedTo < endOf(phases);
  if (pulls.length === 0) return `no pull is solved yet, of ${planned}.`;
  const count = countPulls(pulls);
  const limit = inUnits(car.config.limit.chargeTemperature);
  const known = isPart ? `; the run is known up to ${clockTime(solvedTo)}` : '';
  const first = pulls[0];
  const hottest = pulls.reduce((a, b) => (b.peak > a.peak ? b : a));
  const peaks =
    hottest === first
      ? `the hottest, pull ${first.pull}, peaks at ${inUnits(first.peak)}`
      : `peaks go from ${inUnits(first.peak)} in pull ${first.pull} to ${inUnits(hottest.peak)} in pull ${hottest.pull}`;
  const of = isPart ? counted(pulls.length, 'solved pull') : counted(planned, 'pull');
  return `${count} of ${of} ${count === 1 ? 'stays' : 'stay'} at or under ${limit}; ${peaks}${known}.`;
}

/** That readings of the gauge stand at the bars, and how far the model is off; '' where there are none. */
export function describeMarks(marks: readonly GaugeMark[], units: UnitChoice): string {
  if (marks.length === 0) return '';
  const where =
    marks.length === 1
      ? `A gauge reading is shown at pull ${marks[0].pull}`
      : `Gauge readings are shown at ${marks.length} pulls`;
  const misses = marks.flatMap(({ model }) => (model === undefined ? [] : [model.miss]));
  if (misses.length === 0) return `${where}.`;
  const { unit } = scaleOf('K', units);
  const write = (miss: number): string => joined({ value: signedDifference(miss, units), unit });
  const [least, most] = [write(Math.min(...misses)), write(Math.max(...misses))];
  const span = least === most ? `is ${least}` : `goes from ${least} to ${most}`;
  return `${where}; model less gauge ${span}.`;
}

/** What the bars stand on where that is not outside air, from which they are a rise; '' where it is. */
export function explainBase(outside: number, base: number, units: UnitChoice): string {
  if (base >= outside) return '';
  const [from, air] = [base, outside].map((kelvin) => degrees(kelvin, units, 0));
  return `Bars stand on ${from}, below the outside air of ${air} (dashed).`;
}

/** What the marks on the bars are, for who looks at them. */
export function explainMarks(runs: readonly ShownRun[], hasMisses: boolean, units: UnitChoice): string {
  const model = runs.length > 1 ? 'After' : 'model';
  const misses = hasMisses ? `, number beside it: ${model} less gauge, ${scaleOf('K', units).unit}` : '';
  return `Dot: gauge at the end of the pull, tick: ${model} as a gauge reads it${misses}.`;
}
