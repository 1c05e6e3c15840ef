import { capitalised } from '../format.ts';
import type { PageProps } from '../page.tsx';
import { type CarRun, ROLE_NAMES } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';
import { shownRuns } from '../time/runs.ts';
import { describeHottestDay, describeStudy } from './wording.ts';

/** Empty as long as it is not worked out. */
export const hottestDayOf = ({ hottestDay, pulls }: CarRun, units: UnitChoice): string =>
  hottestDay === undefined ? '' : describeHottestDay(hottestDay, pulls.length, units);

/** What stands beside the count where there is room, in a place of its own: a narrow screen has it below the bars. */
export function BesideCount({ session, display }: PageProps) {
  const units = display.units.value;
  const runs = shownRuns(session);
  return (
    <>
      {runs.map(({ which, run }) => {
        const study = run.study && describeStudy(run.study, units);
        const said = [study?.settled, study?.doubt, capitalised(hottestDayOf(run, units))].filter(Boolean).join('. ');
        return (
          said !== '' && (
            <p key={which} class="beside-count small">
              {runs.length > 1 && <b>{`${ROLE_NAMES[which]}. `}</b>}
              {said}.
            </p>
          )
        );
      })}
    </>
  );
}
