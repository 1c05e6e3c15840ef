import { clockTime, difference, temperature } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';
import { isPull, type Phase } from './phases.ts';
import type { ShownRun } from './runs.ts';

/** The same numbers as the bars. */
export function BarTable({ runs, units }: { runs: readonly ShownRun[]; units: UnitChoice }) {
  const longest = runs.reduce<readonly Phase[]>((most, { phases }) => {
    const pulls = phases.filter(isPull);
    return pulls.length > most.length ? pulls : most;
  }, []);
  const { unit } = temperature(0, units);
  const { unit: step } = difference(0, units);
  const name = ({ which }: ShownRun) => (runs.length === 1 ? '' : which === 'before' ? 'Before, ' : 'After, ');
  const heads = ['peak', 'sensor at most', 'to the limit'];
  return (
    <table class="numbers">
      <caption class="spoken">Peak charge temperature of each pull</caption>
      <thead>
        <tr>
          <th scope="col">Pull</th>
          <th scope="col">ends at</th>
          {runs.flatMap((run) =>
            heads.map((head, k) => (
              <th scope="col" key={run.which + head}>
                {name(run)}
                {head}, {k === 2 ? step : unit}
              </th>
            )),
          )}
        </tr>
      </thead>
      <tbody>
        {longest.map(({ pull, end }) => (
          <tr key={pull}>
            <th scope="row">{pull}</th>
            <td>{clockTime(end)}</td>
            {runs.flatMap((run) => {
              const summary = run.pulls.find((each) => each.pull === pull);
              const cells =
                summary === undefined
                  ? ['?', '?', '?']
                  : [
                      temperature(summary.peak, units).value,
                      temperature(summary.indicatedPeak, units).value,
                      difference(summary.margin, units).value,
                    ];
              return cells.map((cell, k) => <td key={run.which + heads[k]}>{cell}</td>);
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
