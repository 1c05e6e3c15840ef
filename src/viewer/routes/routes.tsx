import './routes.css';
import { explainRoutes, type RouteComparison, type TurnLine, WHY_NO_ANSWER } from '../../sim/index.ts';
import { FoldOut, ROUTES_ID } from '../fold-out.tsx';
import { joined, seconds, wordingIn } from '../format.ts';
import type { PageProps } from '../page.tsx';
import { type Car, valueAt } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';
import { StudyState } from '../study-state.tsx';
import { routeRows } from './route-rows.ts';
import { plenumSentence, turnRow } from './turns.ts';
import { type Found, useRoutes } from './use-routes.ts';

/** Where the recirculated air is taken from, before the core or behind it: both beside each other, and where they turn. */
export function Routes(props: PageProps) {
  const { session, display } = props;
  const study = useRoutes(props);
  const { found, isLate } = study;
  const head = <StudyState study={study} what="the routes" extent="some 200 short runs" />;
  return (
    <FoldOut id={ROUTES_ID} isOpen={display.isRoutesOpen} session={session} title="Bypass routes" head={head}>
      {found !== undefined && <Result {...props} found={found} isLate={isLate} />}
    </FoldOut>
  );
}

function Result({ found, isLate, ...props }: PageProps & { readonly found: Found; readonly isLate: boolean }) {
  const { result: study, key: of } = found;
  const units = props.display.units.value;
  if (study.comparison === undefined) return <p class="routes-none">{WHY_NO_ANSWER.noPartLoad}</p>;
  return (
    <div class={isLate ? 'routes-body late' : 'routes-body'}>
      <Comparison {...props} of={of} comparison={study.comparison} />
      <div class="routes-words">
        {explainRoutes(study.comparison, wordingIn(units)).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      <Turns lines={study.turns} units={units} />
    </div>
  );
}

interface ComparisonProps extends PageProps {
  readonly of: Car;
  readonly comparison: RouteComparison;
}

function Comparison({ comparison, of, session, display }: ComparisonProps) {
  const units = display.units.value;
  return (
    <div class="routes-compared">
      <table class="numbers">
        <caption>
          At the end of {comparison.phase} ({joined(seconds(comparison.lasted, 0))})
        </caption>
        <thead>
          <tr>
            <th scope="col">Recirculated air taken</th>
            <th scope="col">before the core</th>
            <th scope="col">behind it</th>
            <th scope="col">change</th>
          </tr>
        </thead>
        <tbody>
          {routeRows(comparison, units).map(({ name, before, after, change }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{before}</td>
              <td>{after}</td>
              <td>{change}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="routes-acts">
        {(['after core', 'before core'] as const)
          .filter((route) => route !== of.scenario.values.bypass.route)
          .map((route) => (
            <button
              type="button"
              key={route}
              onClick={() => {
                const inHand = session.inHand.value;
                const isShared = valueAt(inHand?.document, 'bypass.shareAfterCore') !== undefined;
                const words = `air ${route === 'after core' ? 'behind' : 'before'} the core`;
                session.change(
                  { 'bypass.route': route, ...(isShared && { 'bypass.shareAfterCore': undefined }) },
                  words,
                );
              }}
            >
              Take air {route === 'after core' ? 'behind' : 'before'} the core
            </button>
          ))}
      </p>
    </div>
  );
}

function Turns({ lines, units }: { readonly lines: readonly TurnLine[]; readonly units: UnitChoice }) {
  const plenum = plenumSentence(lines);
  return (
    <div class="routes-turns">
      <h3>Where it turns: the charge behind the core less before it</h3>
      <p class="small">
        One input moves, the rest of the car stays; ×1 is the car as it is. Plenum ×: the change turns there where the
        plenum is coupled so many times as hot. r is recirculated over engine air, ε the effectiveness of the core.{' '}
        {plenum}
      </p>
      <div class="turns">
        {lines.map((line) => {
          const { name, meaning, cells, turn } = turnRow(line, units);
          return (
            <table key={line.name}>
              <caption>
                <b>{name}</b>, {meaning}: <b>{turn}</b>
              </caption>
              <thead>
                <tr>
                  {cells.map(({ value, isOwn }) => (
                    <th scope="col" key={value} class={isOwn ? 'own' : undefined}>
                      {value}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                <tr>
                  {cells.map(({ value, isOwn, change, word, asides }) => (
                    <td key={value} class={isOwn ? 'own' : undefined}>
                      <span class="change">{change}</span>
                      <span>{word}</span>
                      {asides.map((aside) => (
                        <span key={aside} class="small">
                          {aside}
                        </span>
                      ))}
                    </td>
                  ))}
                </tr>
              </tbody>
            </table>
          );
        })}
      </div>
    </div>
  );
}
