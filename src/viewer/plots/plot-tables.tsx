import { COLUMNS, type ColumnName } from '../../sim/index.ts';
import { named, scaleOf } from '../format.ts';
import type { UnitChoice } from '../state/display.ts';
import type { Phase } from '../time/phases.ts';
import { describeTrace, readingAt, type SeriesPair } from './readings.ts';
import { tableRows } from './table-rows.ts';
import type { Trace } from './traces.ts';
import type { View } from './view.ts';

interface TableProps {
  readonly pair: SeriesPair;
  readonly view: View;
  readonly phases: readonly Phase[];
  readonly units: UnitChoice;
}

interface Head {
  readonly column: ColumnName;
  readonly title: string;
}

const CHARGE: readonly Head[] = [
  { column: 'chargeTemperature', title: 'true' },
  { column: 'indicatedTemperature', title: 'indicated' },
];

/** The numbers of every plot, at the same times as they show. */
export function PlotTables({
  traces,
  sentence,
  ...table
}: TableProps & { traces: readonly Trace[]; sentence: string }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keys
    <section class="plot-tables" aria-label="Tables of the plots" tabIndex={0}>
      <p class="small">{sentence}</p>
      <NumberTable {...table} title="Charge temperature" heads={CHARGE} />
      {traces.map(({ column, title }) => (
        <div key={column}>
          <p class="small">{describeTrace(title, column, table.pair, table.view, table.units)}</p>
          <NumberTable {...table} title={title} heads={[{ column, title: '' }]} />
        </div>
      ))}
    </section>
  );
}

function NumberTable({
  title,
  heads,
  pair,
  view,
  phases,
  units,
}: TableProps & { title: string; heads: readonly Head[] }) {
  const runs = pair.flatMap((series, k) => (series === undefined ? [] : [{ series, name: ['Before', 'After'][k] }]));
  const isAlone = runs.length < 2;
  const [fileUnit] = COLUMNS[heads[0].column];
  const { unit } = scaleOf(fileUnit, units);
  const columns = runs.flatMap(({ series, name }) =>
    heads.map((head) => {
      const words = [isAlone ? '' : name, head.title].filter((word) => word !== '').join(', ');
      return { series, column: head.column, title: words === '' ? title : words };
    }),
  );
  return (
    <table class="numbers">
      <caption>
        {named(title, unit)}: {view.name}
      </caption>
      <thead>
        <tr>
          <th scope="col">{view.pull === undefined ? 'Time' : `Time into pull ${view.pull.pull}`}</th>
          {columns.map((each) => (
            <th scope="col" key={each.title}>
              {each.title}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {tableRows(view, phases).map(({ time, name }) => (
          <tr key={time}>
            <th scope="row">{name}</th>
            {columns.map((each) => (
              <td key={each.title}>{readingAt(each.series, each.column, time, units)?.value ?? '?'}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
