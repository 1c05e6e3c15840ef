import { causeInWords } from '../../sim/index.ts';
import { FoldOutButton, LOOP_ID, QUESTIONS_ID, ROUTES_ID } from '../fold-out.tsx';
import { kelvins, MINUS } from '../format.ts';
import type { PageProps } from '../page.tsx';
import { CAUSE_NAMES } from './wording.ts';

/** What is folded away below the causes. */
function FoldOuts({ display }: Pick<PageProps, 'display'>) {
  return (
    <div class="fold-outs">
      <FoldOutButton id={ROUTES_ID} isOpen={display.isRoutesOpen}>
        Bypass routes
      </FoldOutButton>
      <FoldOutButton id={LOOP_ID} isOpen={display.isLoopOpen}>
        Coolant loop
      </FoldOutButton>
      <FoldOutButton id={QUESTIONS_ID} isOpen={display.isQuestionsOpen}>
        More answers
      </FoldOutButton>
    </div>
  );
}

/** What holds the car in hand back: the fall of the deciding pull's peak if one part were ideal, largest first. */
export function Causes({ session, display }: PageProps) {
  const units = display.units.value;
  const before = session.beforeRun.value.study?.bottleneck;
  const after = session.after.value === undefined ? undefined : session.afterRun.value.study?.bottleneck;
  const shown = after ?? before;
  const isLate = session.after.value !== undefined && after === undefined;
  if (shown === undefined) {
    return (
      <section class="causes" aria-label="What holds it back">
        <h2>What holds it back</h2>
        <p class="small">
          {session.before.value === undefined
            ? 'Listed after the first run.'
            : 'Worked out when the run is whole: it takes one more run for each part.'}
        </p>
        {session.before.value !== undefined && <FoldOuts display={display} />}
      </section>
    );
  }
  const still = after !== undefined && before?.heldBackBy[0] === after.heldBackBy[0] ? 'still ' : '';
  const hasRise = shown.falls.some(({ fall }) => kelvins(fall, units).startsWith(MINUS));
  const largest = Math.max(...shown.falls.map(({ fall }) => fall));
  return (
    <section class="causes" aria-label="What holds it back">
      <h2>
        What holds it back: {still}
        {causeInWords(shown.heldBackBy)}
      </h2>
      <p class="small">
        Fall of pull {shown.pull}’s peak if one part were ideal{hasRise && ', − a rise'}
        {isLate && <span class="late">. After: worked out when you let go.</span>}
      </p>
      <ol>
        {shown.falls.map(({ part, fall }, k) => (
          <li key={part} class={k === 0 ? 'first' : ''}>
            <button type="button" onClick={() => display.openPart(part)}>
              <span>{CAUSE_NAMES[part]}</span>
              <span>{kelvins(fall, units)}</span>
            </button>
            <i aria-hidden="true" style={{ width: `${Math.max(0, (100 * fall) / largest)}%` }} />
          </li>
        ))}
      </ol>
      <FoldOuts display={display} />
    </section>
  );
}
