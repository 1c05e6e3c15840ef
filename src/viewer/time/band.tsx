import './band.css';
import { type ReadonlySignal, type Signal, useComputed, useSignal, useSignalEffect } from '@preact/signals';
import { clockTime } from '../format.ts';
import type { PageProps } from '../page.tsx';
import { readingsOf } from '../state/gauge.ts';
import { BarTable } from './bar-table.tsx';
import { BarsOverTime } from './bars-over-time.tsx';
import { gaugeMarks } from './gauge-marks.ts';
import { describeTime, nameOf, type Phase, stepByPull } from './phases.ts';
import { PlayButton } from './play-button.tsx';
import { isFree, play } from './playback.ts';
import { inHand, lengthOf, shownRuns } from './runs.ts';
import { describeBars, describeMarks } from './sentences.ts';
import { Toggle } from './toggle.tsx';

const SPEEDS = [0.5, 1, 2, 5, 10];
/** A phase is entered this far behind its start [s]: at the joint itself the phase before it still holds. */
const JUST_INSIDE = 0.1;

/** Peaks of all pulls as bars on the line of time, and the hand on the clock with it. */
export function Band(props: PageProps) {
  const { session, clock, display } = props;
  const runs = useComputed(() => shownRuns(session));
  const phases = useComputed(() => inHand(runs.value)?.phases ?? []);
  const length = useComputed(() => lengthOf(runs.value));
  const marks = useComputed(() => gaugeMarks(inHand(runs.value), readingsOf(session.gauge.value)));
  const sentence = useComputed(() => {
    const units = display.units.value;
    return [describeBars(runs.value, units), describeMarks(marks.value, units)].filter(Boolean).join(' ');
  });
  const isPullsOnly = useSignal(false);
  const isTable = useSignal(false);
  usePlayback(props, runs);
  const step = (direction: 1 | -1) => {
    clock.pinned.value = stepByPull(phases.value, clock.pinned.value, direction);
  };
  const isEmpty = runs.value.length === 0;
  return (
    <section class="band" aria-label="Pulls and time">
      <div class="band-controls">
        <PlayButton session={session} clock={clock} />
        <SpeedChoice speed={clock.speed} />
        <button type="button" class="band-step" disabled={isEmpty} onClick={() => step(-1)}>
          Previous<span class="band-long"> pull</span>
        </button>
        <button type="button" class="band-step" disabled={isEmpty} onClick={() => step(1)}>
          Next<span class="band-long"> pull</span>
        </button>
        <GoTo clock={clock} phases={phases} />
        <p class="band-clock">
          <b hidden={isEmpty}>{useComputed(() => clockTime(clock.shown.value))}</b>{' '}
          <span class="small" hidden={isEmpty}>
            <span class="band-length">of {useComputed(() => clockTime(length.value, 0))} · </span>
            {useComputed(() => describeTime(phases.value, clock.shown.value))}
          </span>
        </p>
        <h2>
          Peak <span class="band-long">charge temperature </span>of each pull
        </h2>
        <Toggle isOn={isPullsOnly} label="Pulls only" />
        <Toggle isOn={isTable} label="Table" />
      </div>
      {isTable.value ? (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keys
        <section class="band-table" aria-label="Table of pulls" tabIndex={0}>
          <p class="small">{sentence}</p>
          <BarTable runs={runs.value} marks={marks.value} units={display.units.value} />
        </section>
      ) : (
        <>
          <p class="spoken">{sentence}</p>
          <BarsOverTime
            {...props}
            runs={runs}
            phases={phases}
            marks={marks}
            length={length}
            isPullsOnly={isPullsOnly}
          />
        </>
      )}
    </section>
  );
}

/** Runs the clock while it plays, and lets Space start and stop it wherever no control has its own use for it. */
function usePlayback(
  { session, clock, display }: PageProps,
  runs: ReadonlySignal<readonly { readonly solvedTo: number }[]>,
): void {
  const hasRun = useComputed(() => session.inHandRun.value.series !== undefined);
  useSignalEffect(() => {
    if (!clock.isPlaying.value) return undefined;
    if (!hasRun.value) {
      clock.isPlaying.value = false;
      return undefined;
    }
    const end = Math.max(...runs.peek().map(({ solvedTo }) => solvedTo));
    return play(clock, end, display.hasReducedMotion.value);
  });
  useSignalEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== ' ' || !isFree(event.target) || !hasRun.peek()) return;
      event.preventDefault();
      clock.isPlaying.value = !clock.isPlaying.peek();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  });
}

function SpeedChoice({ speed }: { speed: Signal<number> }) {
  return (
    <label>
      <span class="spoken">Speed</span>
      <select
        value={String(speed.value)}
        onChange={({ currentTarget }) => {
          speed.value = Number(currentTarget.value);
        }}
      >
        {SPEEDS.map((each) => (
          <option key={each} value={String(each)}>
            {each}×
          </option>
        ))}
      </select>
    </label>
  );
}

/** A list of all phases; the one chosen is gone to, at its start. */
function GoTo({ clock, phases }: { clock: PageProps['clock']; phases: ReadonlySignal<readonly Phase[]> }) {
  return (
    <label>
      <span class="spoken">Go to phase</span>
      <select
        class="go-to"
        value=""
        disabled={phases.value.length === 0}
        onChange={({ currentTarget }) => {
          const phase = phases.value[Number(currentTarget.value)];
          clock.pinned.value = Math.min(phase.end, phase.start + JUST_INSIDE);
          currentTarget.value = '';
        }}
      >
        <option value="" hidden>
          Go to
        </option>
        {phases.value.map((phase, index) => (
          <option key={phase.start} value={String(index)}>
            {clockTime(phase.start, 0)} {nameOf(phase)}
          </option>
        ))}
      </select>
    </label>
  );
}
