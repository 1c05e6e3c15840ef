import type { PullSummary } from '../../sim/index.ts';
import { clockTime, difference, fixed, named, temperature } from '../format.ts';
import { ROLE_NAMES } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';
import { type GaugeMark, missOf } from './gauge-marks.ts';
import { isPull, type Phase } from './phases.ts';
import type { ShownRun } from './runs.ts';
import { byTable } from './shop-table.ts';

interface BarTableProps {
  readonly runs: readonly ShownRun[];
  readonly marks: readonly GaugeMark[];
  readonly units: UnitChoice;
}

/** The same numbers as the bars; the gauge, where it was read, beside the car in hand. */
export function BarTable({ runs, marks, units }: BarTableProps) {
  const longest = runs.reduce<readonly Phase[]>((most, { phases }) => {
    const pulls = phases.filter(isPull);
    return pulls.length > most.length ? pulls : most;
  }, []);
  const name = ({ which }: ShownRun) => (runs.length === 1 ? '' : `${ROLE_NAMES[which]}, `);
  const columns = runs.map((run) => ({ run, heads: headsOf(run, units) }));
  const gauge = marks.length === 0 ? [] : gaugeHeads(runs.length === 1 ? 'model' : 'After', units);
  return (
    <table class="numbers">
      <caption class="spoken">Peak charge temperature of each pull</caption>
      <thead>
        <tr>
          <th scope="col">Pull</th>
          <th scope="col">ends at</th>
          {columns.flatMap(({ run, heads }) =>
            heads.map(({ title }) => (
              <th scope="col" key={run.which + title}>
                {name(run)}
                {title}
              </th>
            )),
          )}
          {gauge.map(({ title }) => (
            <th scope="col" key={title}>
              {title}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {longest.map(({ pull, end }) => (
          <tr key={pull}>
            <th scope="row">{pull}</th>
            <td>{clockTime(end)}</td>
            {columns.flatMap(({ run, heads }) => {
              const summary = run.pulls.find((each) => each.pull === pull);
              return heads.map(({ title, read }) => (
                <td key={run.which + title}>{summary === undefined ? '?' : read(summary)}</td>
              ));
            })}
            {gauge.map(({ title, read }) => {
              const mark = marks.find((each) => each.pull === pull);
              return <td key={title}>{mark && read(mark)}</td>;
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Less water than this shows as nought [kg]. */
const LEAST_WATER = 0.00005;

interface Head<Of> {
  readonly title: string;
  readonly read: (of: Of) => string;
}

/** What is said of each pull whose end was read off the gauge. */
const gaugeHeads = (model: string, units: UnitChoice): Head<GaugeMark>[] => [
  {
    title: named('gauge at the end', temperature(0, units).unit),
    read: ({ gauge }) => temperature(gauge, units).value,
  },
  {
    title: named(`miss (${model} less gauge)`, difference(0, units).unit),
    read: (mark) => missOf(mark, units) || '?',
  },
];

/** What is said of each pull: water where some condenses, spark and torque where the shop has its table. */
function headsOf({ pulls, car }: ShownRun, units: UnitChoice): Head<PullSummary>[] {
  const { unit } = temperature(0, units);
  const { unit: step } = difference(0, units);
  const { chargeTable } = car.config;
  return [
    { title: named('peak', unit), read: ({ peak }) => temperature(peak, units).value },
    { title: named('indicated at most', unit), read: ({ indicatedPeak }) => temperature(indicatedPeak, units).value },
    { title: named('to the limit', step), read: ({ margin }) => difference(margin, units).value },
    ...(pulls.some(({ condensate }) => condensate > LEAST_WATER)
      ? [{ title: 'water, g', read: ({ condensate }: PullSummary) => fixed(1000 * condensate, 1) }]
      : []),
    ...(chargeTable === undefined
      ? []
      : [
          { title: 'spark by your table, deg', read: ({ peak }: PullSummary) => byTable(chargeTable, peak).spark },
          { title: 'torque by your table, %', read: ({ peak }: PullSummary) => byTable(chargeTable, peak).torque },
        ]),
  ];
}
