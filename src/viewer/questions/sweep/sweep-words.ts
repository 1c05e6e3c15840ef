import { counted, type SweepResult, written } from '../../../sim/index.ts';
import { capitalised, onScreen, wordingIn } from '../../format.ts';
import type { UnitChoice } from '../../state/display.ts';
import type { ShownFigure, SweptNumber } from './sweep-shows.ts';

/** Where the pulls are most and fewest, between which values the figure shown goes, and what has no answer. */
export function explainSweep(
  numbers: readonly SweptNumber[],
  results: readonly SweepResult[],
  { read, say }: ShownFigure,
  show: string,
  units: UnitChoice,
): string[] {
  const placeOf = ({ changes }: SweepResult): string =>
    numbers.map(({ path, name, say: write }) => `${name} ${write(Number(changes[path]))}`).join(', ');
  const made = results.filter(({ pulls_run }) => pulls_run !== undefined && pulls_run > 0);
  const sentences: string[] = [];
  if (made.length > 0) {
    const counts = made.map(({ pulls = 0 }) => pulls);
    const [fewest, most] = [Math.min(...counts), Math.max(...counts)];
    const best = made.filter(({ pulls }) => pulls === most);
    const planned = best[0].pulls_run ?? 0;
    const nearest = best.toSorted((a, b) => farOff(numbers, a) - farOff(numbers, b))[0];
    sentences.push(
      fewest === most
        ? `All of these cars make ${most} of ${counted(planned, 'pull')}; coolest with ${placeOf(made.toSorted(byPeak)[0])}.`
        : `Most pulls: ${most} of ${planned}, in ${best.length} of ${results.length} cars; of these ${placeOf(nearest)} is nearest to this car. Fewest: ${fewest}.`,
    );
  }
  const figures = results.flatMap((result) => read(result) ?? []);
  if (figures.length > 0 && show !== 'pulls') {
    sentences.push(`${capitalised(show)}: ${say(Math.min(...figures))} to ${say(Math.max(...figures))}.`);
  }
  return [...sentences, ...withoutAnswer(results, units)];
}

const byPeak = (a: SweepResult, b: SweepResult): number => (a.hottest_peak_degC ?? 0) - (b.hottest_peak_degC ?? 0);

/** How far a car is from the one in hand, each number as a share of the span that it was taken through. */
function farOff(numbers: readonly SweptNumber[], { changes }: SweepResult): number {
  return Math.hypot(
    ...numbers.map(({ path, own, values }) => {
      const span = Math.max(...values) - Math.min(...values);
      return (Number(changes[path]) - own) / span;
    }),
  );
}

/** What the file refuses and which runs stop, each with the first reason. */
function withoutAnswer(results: readonly SweepResult[], units: UnitChoice): string[] {
  const refused = results.filter((result) => result.refused !== undefined);
  const stopped = results.filter((result) => result.stoppedBecause !== undefined);
  const of = (count: number) => `${count} of ${results.length} cars`;
  return [
    ...(refused.length > 0 ? [`The file refuses ${of(refused.length)}: ${whyNoAnswer(refused[0], units)}`] : []),
    ...(stopped.length > 0 ? [`The run of ${of(stopped.length)} stops early: ${whyNoAnswer(stopped[0], units)}.`] : []),
  ];
}

/** Why a car has no answer, or none beyond the time at which its run stopped. */
export function whyNoAnswer({ refused, stoppedBecause }: SweepResult, units: UnitChoice): string | undefined {
  const why = refused?.[0] ?? (stoppedBecause && written(stoppedBecause, wordingIn(units)));
  return why && onScreen(why);
}
