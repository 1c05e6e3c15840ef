import type { SweepResult } from '../../../sim/index.ts';
import { colourScale, cssColour, inkOn } from '../../colour-scale.ts';
import type { UnitChoice } from '../../state/display.ts';
import type { ShownFigure, SweptNumber } from './sweep-shows.ts';
import { whyNoAnswer } from './sweep-words.ts';

interface SweepGridProps {
  readonly down: SweptNumber;
  readonly across: SweptNumber;
  readonly results: readonly SweepResult[];
  readonly figure: ShownFigure;
  readonly title: string;
  readonly units: UnitChoice;
}

/** One figure of the car against two of its numbers: picture and table in one. */
export function SweepGrid({ down, across, results, figure, title, units }: SweepGridProps) {
  const of = (row: number, column: number): SweepResult | undefined =>
    results.find(({ changes }) => changes[down.path] === row && changes[across.path] === column);
  const shown = results.flatMap((result) => figure.read(result) ?? []);
  const styleOf = colouring(figure, shown);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keys
    <section class="sweep-grid" aria-label={title} tabIndex={0}>
      <table>
        <caption>
          {title}: {down.title} down, {across.title} across
        </caption>
        <thead>
          <tr>
            <td />
            {across.values.map((value) => (
              <th key={value} scope="col">
                {across.write(value)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {down.values.map((row) => (
            <tr key={row}>
              <th scope="row">{down.write(row)}</th>
              {across.values.map((column) => {
                const result = of(row, column);
                const value = result && figure.read(result);
                const isOwn = isSame(row, down.own) && isSame(column, across.own);
                return (
                  <td
                    key={column}
                    class={isOwn ? 'own' : undefined}
                    style={value === undefined ? undefined : styleOf(value)}
                    title={result && whyNoAnswer(result, units)}
                  >
                    {value === undefined ? '–' : figure.write(value)}
                    {isOwn && <span class="spoken"> this car</span>}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Two values that differ by less are one, as a share: ends are rounded. */
const isSame = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-3 * Math.abs(b);

/** Most of the accent in a cell, so that ink can still be read on it. */
const FULL = 45;

/** Temperatures have the colours that they have all over the page; a count or a flow has the more of the accent. */
function colouring(figure: ShownFigure, shown: readonly number[]): (value: number) => Record<string, string> {
  const [low, high] = [Math.min(...shown), Math.max(...shown)];
  if (!figure.isTemperature) {
    return (value) => {
      const share = Math.round((FULL * (value - low)) / (high - low || 1));
      return { backgroundColor: `color-mix(in oklab, var(--accent) ${share}%, var(--panel))` };
    };
  }
  const ruler = colourScale('air', []);
  return (value) => {
    const colour = ruler.colourAt(figure.toSi(value));
    return colour === undefined ? {} : { backgroundColor: cssColour(colour), color: inkOn(colour) };
  };
}
