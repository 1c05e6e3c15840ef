import './answer.css';
import { counted, countPulls, type PullSummary, pullsOfCycle } from '../../sim/index.ts';
import { capitalised, clockTime, degrees } from '../format.ts';
import type { PageProps } from '../page.tsx';
import { type Car, type CarRole, type CarRun, ROLE_NAMES } from '../state/cars.ts';
import type { UnitChoice } from '../state/display.ts';
import { Announcement } from './announcement.tsx';
import { hottestDayOf } from './beside-count.tsx';
import { Causes } from './causes.tsx';
import { Cooling } from './cooling.tsx';
import { Empty } from './empty.tsx';
import { describeNoEffect } from './no-effect.ts';
import { describeGain, describeKnown, describePulls, describeStudy, explainNoAnswer, type Words } from './wording.ts';

/** The answer before everything else: how many pulls, for one car or for Before and After, and what holds it back. */
export function Answer(props: PageProps) {
  const { session } = props;
  const before = session.before.value;
  const after = session.after.value;
  if (before === undefined) return <Empty {...props} />;
  return (
    <section class={after === undefined ? 'answer one' : 'answer'} aria-label="Answer" tabIndex={-1}>
      <CarAnswer {...props} which="before" car={before} run={session.beforeRun.value} isAlone={after === undefined} />
      {after === undefined ? (
        <Sentence {...props} />
      ) : (
        <CarAnswer {...props} which="after" car={after} run={session.afterRun.value} isAlone={false} />
      )}
      <Causes {...props} />
      <Cooling {...props} />
      <Announcement {...props} />
    </section>
  );
}

interface CarAnswerProps extends PageProps {
  readonly which: CarRole;
  readonly car: Car;
  readonly run: CarRun;
  readonly isAlone: boolean;
}

function CarAnswer(props: CarAnswerProps) {
  const { which, car, run, isAlone, session } = props;
  const units = props.display.units.value;
  return (
    <section class={`car ${which}`} aria-label={isAlone ? 'Answer in pulls' : ROLE_NAMES[which]}>
      <h2>
        <i class="swatch" aria-hidden="true" />
        {isAlone ? capitalised(car.label) : `${ROLE_NAMES[which]}:`}
        {!isAlone && <span class="what">{car.label}</span>}
        {which === 'after' && run.kind === 'solved' && !session.isDragging.value && (
          <button type="button" class="link keep" onClick={() => session.keepAsBefore()}>
            Keep as Before
          </button>
        )}
      </h2>
      <Count {...props} />
      {!isAlone && <CarSentence {...props} />}
      {isAlone && run.pulls.length > 0 && run.kind !== 'stopped' && run.kind !== 'failed' && (
        <>
          <p class="under">stay at or under {degrees(car.config.limit.chargeTemperature, units)}</p>
          <p class="small hot-day">{capitalised(hottestDayOf(run, units))}</p>
        </>
      )}
    </section>
  );
}

/** The figure to read from two metres, and a tag beside it. */
function Count({ which, car, run, isAlone, session, display }: CarAnswerProps) {
  const units = display.units.value;
  const isPart = run.kind === 'running' && run.time > 0;
  if (run.kind === 'stopped') return <p class="verdict">No answer: the run stopped</p>;
  if (run.kind === 'failed') return <p class="verdict">No answer: the solver failed</p>;
  if (run.series === undefined && !isPart) return <p class="verdict">Solving…</p>;
  const count = countPulls(run.pulls);
  const broke = count < run.pulls.length;
  if (run.kind === 'cancelled' || isPart) {
    const solved = run.pulls.length;
    const of = isPart ? (broke ? `of ${solved} so far` : 'so far, all under') : `of ${solved} solved`;
    return (
      <div class="count">
        <b class="figure">{count}</b>
        <span class="of">{of}</span>
      </div>
    );
  }
  return (
    <div class="count">
      <b class="figure">{count}</b>
      <span class="of">of {counted(run.pulls.length, 'pull')}</span>
      {!isAlone && (
        <span class="tag">
          <span class="of-core">{tagOf(which, car, run, session, units)}</span>
          <span>{hottestDayOf(run, units)}</span>
        </span>
      )}
    </div>
  );
}

function tagOf(which: string, car: Car, run: CarRun, session: PageProps['session'], units: UnitChoice): string {
  if (which === 'after' && (session.isDragging.value || run.study === undefined)) {
    return run.of === car ? describeGain(session.beforeRun.value.pulls, run.pulls, units) : 'catching up';
  }
  return run.study === undefined ? '' : describeStudy(run.study, units).doubt;
}

/** What a run that is not whole has to say; nothing where it is whole. */
function StateSentence({
  car,
  run,
  session,
  display,
  solving,
}: Pick<CarAnswerProps, 'car' | 'run' | 'session' | 'display' | 'solving'>) {
  if (run.kind === 'running') {
    return (
      <div class="sentence">
        <p>
          Solving: {clockTime(run.time, 0)} of {clockTime(run.duration, 0)}.
        </p>
        <p class="under-way">
          <progress value={run.time} max={run.duration} aria-label="Solved so far" />
          <button type="button" class="state-act" onClick={() => solving.cancel()}>
            Cancel
          </button>
        </p>
      </div>
    );
  }
  if (run.kind === 'cancelled') {
    const planned = pullsOfCycle(car.config.cycle);
    return (
      <div class="sentence">
        <p>
          You cancelled at {clockTime(run.time, 0)}. {describeKnown(run.pulls, planned)}
        </p>
        <p class="acts">
          <button type="button" class="primary state-act" onClick={() => solving.resume()}>
            Finish the run
          </button>
        </p>
      </div>
    );
  }
  if (run.kind === 'stopped' && car === session.inHand.value) {
    return <p class="sentence">At {clockTime(run.time)}: why, and what to do, stands below. Nothing after is shown.</p>;
  }
  return (
    <p class="sentence">
      {run.kind === 'stopped' && `At ${clockTime(run.time)}: `}
      {explainNoAnswer(run, display.units.value)}. Nothing after that is shown.
    </p>
  );
}

/** Whether a run has told something that a whole answer may not be made of. */
const isUnfinished = (run: CarRun): boolean =>
  run.kind === 'running' ? run.time > 0 : run.kind !== 'solved' && run.kind !== 'waiting';

function CarSentence({ which, car, run, session, display, solving }: CarAnswerProps) {
  const units = display.units.value;
  if (isUnfinished(run))
    return <StateSentence car={car} run={run} session={session} display={display} solving={solving} />;
  const before = session.beforeRun.value.pulls;
  const noEffect =
    which === 'after' && before.length > 0
      ? describeNoEffect(car, session.changes.value, before, run.pulls, units)
      : undefined;
  return noEffect === undefined ? (
    <PullsSentence pulls={run.pulls} units={units} />
  ) : (
    <p class="sentence long">
      {noEffect.numbers}
      {noEffect.reason !== undefined && <span class="reason"> {noEffect.reason}</span>}
    </p>
  );
}

function PullsSentence({ pulls, units }: { readonly pulls: readonly PullSummary[]; readonly units: UnitChoice }) {
  return (
    <p class="sentence">
      <Said words={describePulls(pulls, units, false)} />
    </p>
  );
}

/** The long sentence of a car that stands alone. */
function Sentence({ session, display, solving }: PageProps) {
  const units = display.units.value;
  const run = session.beforeRun.value;
  const car = session.before.value;
  const study = run.study && describeStudy(run.study, units);
  if (car === undefined) return null;
  return (
    <section class="alone" aria-label="Answer in words">
      {session.draft.value !== undefined && <p class="last-good">The answer is for the last good value.</p>}
      {isUnfinished(run) ? (
        <StateSentence car={car} run={run} session={session} display={display} solving={solving} />
      ) : (
        run.series !== undefined && (
          <p class="sentence">
            <Said words={describePulls(run.pulls, units)} />
          </p>
        )
      )}
      {study !== undefined && (
        <p class={study.isStopped ? 'small beside stopped' : 'small beside'}>
          {[study.settled, study.doubt].filter(Boolean).join('. ')}.
        </p>
      )}
    </section>
  );
}

function Said({ words }: { readonly words: readonly Words[] }) {
  return <>{words.map(({ text, isStrong }) => (isStrong ? <b key={text}>{text}</b> : text))}</>;
}
