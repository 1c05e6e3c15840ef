import { explainOperatingPoint, type OperatingPoint } from '../../sim/index.ts';
import { onScreen, wordingIn } from '../format.ts';
import type { PageProps } from '../page.tsx';
import { lossRows, percent, stepRows } from './readings.ts';

/** What takes the pressure, largest first; what one change would buy; and what else there is to say. */
export function Losses({ point, display }: PageProps & { readonly point: OperatingPoint }) {
  const units = display.units.value;
  const rows = lossRows(point, units);
  const largest = rows[0]?.share ?? 1;
  return (
    <>
      <div class="loop-losses">
        <h3>What takes the pressure</h3>
        <ol>
          {rows.map(({ name, share, pressure, flow }) => (
            <li key={name}>
              <span>
                {name}
                {flow && <span class="small"> at {flow}</span>}
              </span>
              <span>{pressure}</span>
              <span>{percent(share)}</span>
              <i aria-hidden="true" style={{ width: `${(100 * share) / largest}%` }} />
            </li>
          ))}
        </ol>
        {point.shares.length > 0 && (
          <p class="small">
            Two ways beside each other take the same pressure, so all shares together come to more than 100 %. A line in
            the same way as a pump takes from that pump alone.
          </p>
        )}
      </div>
      <div class="loop-steps">
        <h3>What one change would make of the flow</h3>
        <table class="numbers">
          <thead>
            <tr>
              <th scope="col">Change</th>
              <th scope="col">flow</th>
              <th scope="col">change</th>
            </tr>
          </thead>
          <tbody>
            {stepRows(point, units).map(([name, flow, change]) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{flow}</td>
                <td>{change}</td>
              </tr>
            ))}
          </tbody>
        </table>
        {explainOperatingPoint(point, wordingIn(units)).map(({ text, isWarning }) => (
          <p key={text} class={isWarning ? 'loop-warning' : 'small'}>
            {isWarning && <b>Look at this. </b>}
            {onScreen(text)}
          </p>
        ))}
      </div>
    </>
  );
}
