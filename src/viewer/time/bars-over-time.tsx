import { type ReadonlySignal, useComputed } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { useSize } from '../figures/use-size.ts';
import type { PageProps } from '../page.tsx';
import { barRange, outsideOf, shareOut } from './bars.ts';
import { Bars } from './bars-view.tsx';
import { type GaugeMark, haveRoom, heightsOf, missOf } from './gauge-marks.ts';
import { describeClock, type Phase, stepByPull } from './phases.ts';
import { inHand, type ShownRun } from './runs.ts';
import { explainBase, explainMarks } from './sentences.ts';
import { evenScale, pullsOnlyScale, type TimeScale } from './time-scale.ts';

/** Room left of time zero for the numbers of the height axis, and right of the end [px]. */
const LEFT = 52;
const LEFT_ON_PHONE = 40;
const RIGHT = 12;
/** Right of a pull that ends the run, for its number and name [px]. */
const RIGHT_OF_PULL = 34;
const PHONE = 500;

interface BarsOverTimeProps extends PageProps {
  readonly runs: ReadonlySignal<readonly ShownRun[]>;
  readonly phases: ReadonlySignal<readonly Phase[]>;
  readonly marks: ReadonlySignal<readonly GaugeMark[]>;
  /** s */
  readonly length: ReadonlySignal<number>;
  readonly isPullsOnly: ReadonlySignal<boolean>;
}

/** Bars above, the track of phases below, and one line through both at the time shown. */
export function BarsOverTime({ clock, display, runs, phases, marks, length, isPullsOnly }: BarsOverTimeProps) {
  const host = useRef<HTMLDivElement>(null);
  const size = useSize(host);
  const scale = useComputed(() => (isPullsOnly.value ? pullsOnlyScale(phases.value) : evenScale(length.value)));
  const left = useComputed(() => (size.value.width < PHONE ? LEFT_ON_PHONE : LEFT));
  const right = useComputed(() => (phases.value.at(-1)?.kind === 'pull' ? RIGHT_OF_PULL : RIGHT));
  const x = useComputed(() => {
    const { length: end, placeOf } = scale.value;
    const width = Math.max(1, size.value.width - left.value - right.value);
    return (time: number) => left.value + (end > 0 ? (placeOf(time) / end) * width : 0);
  });
  const hasMisses = useComputed(() => {
    const slots = shareOut(runs.value, { x: x.value, width: size.value.width - left.value - right.value });
    return haveRoom(
      marks.value.map((mark) => missOf(mark, display.units.value)),
      slots,
    );
  });
  const range = useComputed(() => barRange(runs.value, display.units.value, heightsOf(marks.value)));
  const units = display.units.value;
  const legend = [
    explainBase(outsideOf(runs.value), range.value[0], units),
    marks.value.length > 0 && explainMarks(runs.value, hasMisses.value, units),
  ].filter(Boolean);
  return (
    <>
      {legend.length > 0 && <p class="small bars-legend">{legend.join(' ')}</p>}
      <div class="bars" ref={host} style={{ '--left': `${left.value}px`, '--right': `${right.value}px` }}>
        <Bars
          clock={clock}
          display={display}
          runs={runs}
          phases={phases}
          marks={marks}
          hasMisses={hasMisses.value}
          range={range}
          size={size}
          x={x}
          left={left.value}
          right={right.value}
        />
        {runs.value.length === 0 && (
          <p class="small bars-empty">The peaks of all pulls stand here after the first run.</p>
        )}
        <Scrubber clock={clock} phases={phases} scale={scale} isIdle={inHand(runs.value)?.run.series === undefined} />
      </div>
    </>
  );
}

interface ScrubberProps {
  readonly clock: PageProps['clock'];
  readonly phases: ReadonlySignal<readonly Phase[]>;
  readonly scale: ReadonlySignal<TimeScale>;
  readonly isIdle: boolean;
}

/** The hand on the time: a native range over the track. */
function Scrubber({ clock, phases, scale, isIdle }: ScrubberProps) {
  const go = (time: number) => {
    const end = scale.value.timeOf(scale.value.length);
    clock.pinned.value = Math.min(end, Math.max(0, Math.round(10 * time) / 10));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const time = keyedTime(event, phases.value, clock.pinned.value, scale.value);
    if (time === undefined) return;
    event.preventDefault();
    go(time);
  };
  return (
    <input
      type="range"
      class="scrubber"
      aria-label="Time of the run"
      min={0}
      max={useComputed(() => scale.value.length)}
      step={0.1}
      disabled={isIdle}
      value={useComputed(() => scale.value.placeOf(clock.pinned.value))}
      aria-valuetext={useComputed(() => describeClock(phases.value, clock.pinned.value))}
      onInput={({ currentTarget }) => go(scale.value.timeOf(Number(currentTarget.value)))}
      onKeyDown={onKeyDown}
    />
  );
}

/** Where a key leads from a time; undefined for keys that mean nothing here. */
function keyedTime(
  { key, shiftKey }: KeyboardEvent,
  phases: readonly Phase[],
  time: number,
  scale: TimeScale,
): number | undefined {
  const step = shiftKey ? 1 : 0.1;
  if (key === 'ArrowRight' || key === 'ArrowUp') return time + step;
  if (key === 'ArrowLeft' || key === 'ArrowDown') return time - step;
  if (key === 'PageDown') return stepByPull(phases, time, 1);
  if (key === 'PageUp') return stepByPull(phases, time, -1);
  if (key === 'Home') return 0;
  if (key === 'End') return scale.timeOf(scale.length);
  return undefined;
}
