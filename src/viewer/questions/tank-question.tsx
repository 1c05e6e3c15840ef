import { useSignal } from '@preact/signals';
import { explainStore, type StoreKind, storeSize } from '../../sim/index.ts';
import { joined, temperature, wordingIn } from '../format.ts';
import type { PageProps } from '../page.tsx';
import { PullsWanted, pullsOf, whyNoPulls } from './pulls-wanted.tsx';
import { QuestionFrame, Sentences } from './question-frame.tsx';
import { StoreFigure } from './store-figure.tsx';
import { useQuestion } from './use-question.ts';

/** How big a tank, or how much ice, is enough: the curve, the table and the words. */
export function TankQuestion({ store, ...props }: PageProps & { readonly store: StoreKind }) {
  const { session, display } = props;
  const car = session.inHand.value;
  const units = display.units.value;
  const pulls = useSignal(Math.max(1, pullsOf(car)));
  const { found, ...asking } = useQuestion(props, 'store', { kind: store, pulls: pulls.value });
  const study = found?.result;
  const first = car?.config.cycle;
  const pull = first && [...first.before, ...first.block].find(({ kind }) => kind === 'pull');
  return (
    <QuestionFrame
      title={store === 'tank' ? 'How big a tank is enough?' : 'How much ice is enough?'}
      inputs={<PullsWanted pulls={pulls} />}
      why={whyNoPulls(car)}
      {...asking}
    >
      {study && (
        <>
          <Sentences of={explainStore(study, pull?.duration ?? 0, wordingIn(units))} />
          <StoreFigure study={study} units={units} />
          <table class="numbers">
            <thead>
              <tr>
                <th scope="col">{store === 'tank' ? 'Tank' : 'Ice'}</th>
                <th scope="col">Pulls</th>
                <th scope="col">Peak of pull 1</th>
                <th scope="col">Peak of pull {study.pulls}</th>
              </tr>
            </thead>
            <tbody>
              {study.points.map(({ size, count, firstPeak, lastPeak }) => (
                <tr key={size}>
                  <th scope="row">{storeSize(store, size)}</th>
                  <td>
                    {count} of {study.pulls}
                  </td>
                  <td>{joined(temperature(firstPeak, units))}</td>
                  <td>{Number.isFinite(lastPeak) ? joined(temperature(lastPeak, units)) : 'not run'}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </QuestionFrame>
  );
}
