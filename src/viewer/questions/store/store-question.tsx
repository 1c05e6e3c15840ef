import { useSignal } from '@preact/signals';
import { explainStore, firstPullOf, type StoreKind, storeSize } from '../../../sim/index.ts';
import { degrees, wordingIn } from '../../format.ts';
import type { PageProps } from '../../page.tsx';
import type { Car } from '../../state/cars.ts';
import { AnswerTable } from '../answer-table.tsx';
import { PullsWanted, pullsOf, whyNotPulls } from '../pulls-wanted.tsx';
import { QuestionFrame, Sentences } from '../question-frame.tsx';
import { useQuestion } from '../use-question.ts';
import { StoreFigure } from './store-figure.tsx';

/** How big a tank, or how much ice, is enough: the curve, the table and the words. */
export function StoreQuestion({ store, ...props }: PageProps & { readonly store: StoreKind }) {
  const { session, display } = props;
  const car = session.inHand.value;
  const units = display.units.value;
  const pulls = useSignal(Math.max(1, pullsOf(car)));
  const { found, ...asking } = useQuestion(props, 'store', { kind: store, pulls: pulls.value });
  const study = found?.result;
  return (
    <QuestionFrame
      title={store === 'tank' ? 'How big a tank is enough?' : 'How much ice is enough?'}
      inputs={<PullsWanted pulls={pulls} />}
      why={whyNotPulls(car, pulls.value)}
      {...asking}
    >
      {found && study && (
        <>
          <Sentences of={explainStore(study, firstPullLength(found.car), wordingIn(units))} />
          <StoreFigure study={study} limit={found.car.config.limit.chargeTemperature} units={units} />
          <AnswerTable
            name={store === 'tank' ? 'Pulls by coolant in the tank' : 'Pulls by ice in the tank'}
            heads={[store === 'tank' ? 'Tank' : 'Ice', 'Pulls', 'Peak of pull 1', `Peak of pull ${study.pulls}`]}
            rows={study.points.map(({ size, count, firstPeak, lastPeak }) => [
              storeSize(store, size),
              `${count} of ${study.pulls}`,
              ...[firstPeak, lastPeak].map((peak) => (Number.isFinite(peak) ? degrees(peak, units) : 'not run')),
            ])}
          />
        </>
      )}
    </QuestionFrame>
  );
}

/** s; 0 where the cycle has no pull */
const firstPullLength = ({ config }: Car): number => firstPullOf(config.cycle)?.duration ?? 0;
