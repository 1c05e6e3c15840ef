import type { SweepResult } from '../../sim/index.ts';
import { capitalised, onScreen } from '../format.ts';
import type { ShownFigure, SweptNumber } from './sweep-shows.ts';

/** Where the pulls are most and fewest, between which values the figure shown goes, and what has no answer. */
export function explainSweep(
  numbers: readonly Pick<SweptNumber, 'path' | 'name' | 'say'>[],
  results: readonly SweepResult[],
  { read, say }: ShownFigure,
  show: string,
): string[] {
  const placeOf = ({ changes }: SweepResult): string =>
    numbers.map(({ path, name, say: write }) => `${name} ${write(Number(changes[path]))}`).join(', ');
  const made = results.filter(({ pulls_run }) => pulls_run !== undefined && pulls_run > 0);
  const sentences: string[] = [];
  if (made.length > 0) {
    // Of equals the cooler one: among cars with all pulls the best is not the first that was tried.
    const ranked = made.toSorted(
      (a, b) => (b.pulls ?? 0) - (a.pulls ?? 0) || (a.hottest_peak_degC ?? 0) - (b.hottest_peak_degC ?? 0),
    );
    const [best, worst] = [ranked[0], ranked[ranked.length - 1]];
    const told = (result: SweepResult) => `${result.pulls} of ${result.pulls_run} with ${placeOf(result)}`;
    sentences.push(
      best.pulls === worst.pulls
        ? `All of these cars make ${best.pulls} of ${best.pulls_run} pulls; coolest with ${placeOf(best)}.`
        : `Most pulls: ${told(best)}. Fewest: ${told(worst)}.`,
    );
  }
  const figures = results.flatMap((result) => read(result) ?? []);
  if (figures.length > 0 && show !== 'pulls') {
    sentences.push(`${capitalised(show)}: ${say(Math.min(...figures))} to ${say(Math.max(...figures))}.`);
  }
  return [...sentences, ...withoutAnswer(results)];
}

/** What the file refuses and which runs stop, each with the first reason. */
function withoutAnswer(results: readonly SweepResult[]): string[] {
  const refused = results.flatMap((result) => result.refused?.[0] ?? []);
  const stopped = results.flatMap((result) => result.stopped_because ?? []);
  const of = (count: number) => `${count} of ${results.length} cars`;
  return [
    ...(refused.length > 0 ? [`The file refuses ${of(refused.length)}: ${onScreen(refused[0])}`] : []),
    ...(stopped.length > 0 ? [`The run of ${of(stopped.length)} stops early: ${onScreen(stopped[0])}.`] : []),
  ];
}
