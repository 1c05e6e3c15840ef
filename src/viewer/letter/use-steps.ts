import { explainSteps, upgradeClashes } from '../../sim/index.ts';
import { onScreen, wordingIn } from '../format.ts';
import type { PageProps } from '../page.tsx';
import { withUpgradedCars } from '../questions/upgrades/upgraded-cars.ts';
import { useBuiltQuestion } from '../questions/use-question.ts';
import type { Car } from '../state/cars.ts';

/** What the upgrades of the opened file would buy, once it is asked for; sentences of a car that has changed are gone. */
export function useSteps(props: PageProps, before: Car) {
  const list = before.scenario.values.upgrades ?? [];
  const { found, ...asking } = useBuiltQuestion(
    props,
    'upgrades',
    { list, withOrders: false },
    ({ scenario }, asked) => withUpgradedCars(scenario, asked),
    before,
  );
  const study = asking.isLate ? undefined : found?.result;
  const sentences =
    study === undefined
      ? []
      : explainSteps(study, list, upgradeClashes(list), wordingIn(props.display.units.value)).map(onScreen);
  return { ...asking, canAsk: list.length > 0 && study === undefined, sentences };
}
