import './letter.css';
import { type ComponentChildren, Fragment } from 'preact';
import { useMemo } from 'preact/hooks';
import { decidingPull, type Letter } from '../../sim/index.ts';
import { Empty } from '../answer/empty.tsx';
import { explainNoAnswer } from '../answer/wording.ts';
import { capitalised, clockTime } from '../format.ts';
import type { PageProps } from '../page.tsx';
import { Picture } from '../scene/picture.tsx';
import type { Car } from '../state/cars.ts';
import { Clock } from '../state/clock.ts';
import { startTime } from '../time/phases.ts';
import { shownRuns } from '../time/runs.ts';
import { labelOf } from './asked.ts';
import { composeLetter } from './compose.ts';
import { Counts } from './counts.tsx';
import { sayInputs } from './inputs-said.ts';
import { LetterBars } from './letter-bars.tsx';
import { Letterhead } from './letterhead.tsx';
import { PullCurve } from './pull-curve.tsx';
import { Question } from './question.tsx';
import { slotPaths } from './slots.ts';
import { useSteps } from './use-steps.ts';
import { type Told, useTold } from './use-told.ts';

/** The same state as the workbench as the letter that the shop sends: read, edited where it stands, printed. */
export function LetterPage(props: PageProps) {
  const { session, display } = props;
  const [before, after] = [session.before.value, session.after.value];
  const told = useTold(session);
  if (before === undefined) {
    return (
      <main class="letter">
        <Empty {...props} />
      </main>
    );
  }
  return (
    <main class="letter">
      <Hatch />
      <div class="letter-top">
        <Letterhead display={display} />
        <button type="button" class="primary" onClick={() => window.print()}>
          Print
        </button>
      </div>
      <p class="letter-subject">{before.scenario.values.name}</p>
      <Question {...props} car={after ?? before} before={before} />
      <State {...props} told={told} />
      {told === undefined ? <Unanswered {...props} /> : <Body {...props} told={told} before={before} />}
    </main>
  );
}

/** The pattern of what is over the limit, for every drawing of the letter. */
function Hatch() {
  return (
    <svg class="letter-defs" aria-hidden="true">
      <defs>
        <pattern id="over-hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect class="hatch-ground" width="6" height="6" />
          <line class="hatch-line" x1="0" x2="0" y1="0" y2="6" />
        </pattern>
      </defs>
    </svg>
  );
}

/** What is under way or in the way; an answer from before the change is named so. */
function State({ session, display, solving, told }: PageProps & { readonly told: Told | undefined }) {
  const runs = shownRuns(session).map(({ run }) => run);
  const running = runs.find(({ kind }) => kind === 'running');
  const faulty = runs.find(({ kind }) => kind === 'stopped' || kind === 'failed');
  const isCancelled = runs.some(({ kind }) => kind === 'cancelled');
  const old = told?.isOld ? 'The letter below is from before the change. ' : '';
  return (
    <div class="letter-state" role="status">
      {session.drafts.value.length > 0 && <p>A value cannot be read: the letter is for the last good one.</p>}
      {faulty !== undefined && (
        <p>
          <b>No answer.</b> The run {faulty.kind === 'stopped' ? `stopped at ${clockTime(faulty.time)}` : 'failed'}:{' '}
          {explainNoAnswer(faulty, display.units.value)}. {old}
        </p>
      )}
      {faulty === undefined && isCancelled && (
        <p>
          You cancelled the run. {old}
          <button type="button" onClick={() => solving.resume()}>
            Finish the run
          </button>
        </p>
      )}
      {running !== undefined && (
        <p class="working">
          Working: {clockTime(running.time, 0)} of {clockTime(running.duration, 0)}. {old}
          <button type="button" onClick={() => solving.cancel()}>
            Cancel
          </button>
        </p>
      )}
    </div>
  );
}

/** No run is whole yet: what there is of them, and no sentence. */
function Unanswered({ session, display }: PageProps) {
  const runs = shownRuns(session);
  return <Counts runs={runs} labels={runs.map(({ car }) => car.label)} units={display.units.value} />;
}

function Body({ told, before, ...props }: PageProps & { readonly told: Told; readonly before: Car }) {
  const { display, session } = props;
  const units = display.units.value;
  const { runs, asked } = told;
  const steps = useSteps(props, before);
  const said = steps.sentences.join('\n');
  const letter = useMemo(() => composeLetter(told, said === '' ? [] : said.split('\n'), units), [told, said, units]);
  const hand = runs[runs.length - 1];
  const deciding = decidingPull(hand.pulls)?.pull;
  const clock = useMemo(() => new Clock(), []);
  clock.pinned.value = startTime(hand.pulls);
  if (letter === undefined) return null;
  const change = asked.kind === 'as it stands' ? hand.car.label : labelOf(asked);
  const isStudied =
    runs.every(({ run }) => run.study !== undefined) && (hand.pulls.length === 0 || hand.run.hottestDay !== undefined);
  const { changed, main } = sayInputs(before, session.after.value, units);
  return (
    <div class={told.isOld ? 'letter-body old' : 'letter-body'}>
      <div role="status">
        <p class="letter-answer">{letter.answer}</p>
      </div>
      {letter.unlike !== undefined && <Unlike session={session} said={letter.unlike} />}
      <Counts runs={runs} labels={['as it stands', change]} units={units} />
      <LetterBars runs={runs} units={units} />
      {letter.parts.map(({ part, ...told }) => (
        <Fragment key={part}>
          {part === 'log' && deciding !== undefined && (
            <Part heading={`The core at the end of pull ${deciding}`} paragraphs={[]}>
              <Picture {...props} clock={clock} />
            </Part>
          )}
          <Part {...told}>
            {part === 'log' && deciding !== undefined && <PullCurve runs={runs} pull={deciding} units={units} />}
          </Part>
        </Fragment>
      ))}
      {steps.canAsk && (
        <p class="letter-ask" role="status">
          {steps.state.kind === 'working' ? (
            <button type="button" onClick={steps.cancel}>
              Cancel: {steps.state.done} of {steps.state.of} runs so far
            </button>
          ) : (
            <button type="button" onClick={steps.ask}>
              Work out what each step would buy
            </button>
          )}
        </p>
      )}
      {!isStudied && <p class="small">Why, and how sure this is, are being worked out.</p>}
      <section class="letter-inputs" aria-label="Inputs">
        <h2>Inputs</h2>
        {changed.length > 0 && (
          <p>
            <b>Changed.</b> {capitalised(changed.join('; '))}.
          </p>
        )}
        <p>{capitalised(main.join('; '))}.</p>
      </section>
    </div>
  );
}

/** Before and After are asked differently, and the way to ask them alike. */
function Unlike({ session, said }: Pick<PageProps, 'session'> & { readonly said: string }) {
  const asked = Object.values(slotPaths(session.inHand.value?.document ?? {}));
  const paths = session.changes.value.filter((path) => asked.includes(path));
  return (
    <p class="letter-unlike">
      {said}{' '}
      <button type="button" onClick={() => session.alsoBefore(paths, 'ask both cars the same')}>
        Ask both as After
      </button>
    </p>
  );
}

interface PartProps extends Omit<Letter['parts'][number], 'part'> {
  readonly children?: ComponentChildren;
}

function Part({ heading, paragraphs, children }: PartProps) {
  return (
    <section class="letter-part" aria-label={heading}>
      <h2>{heading}</h2>
      {paragraphs.map((text) => (
        <p key={text}>{text}</p>
      ))}
      {children}
    </section>
  );
}
