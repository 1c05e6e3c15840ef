import { type ReadonlySignal, useComputed } from '@preact/signals';
import { LevelLines, placeOn } from '../figures/scales.tsx';
import { ticksBetween } from '../figures/ticks.ts';
import type { Size } from '../figures/use-size.ts';
import { briefly, degrees, fixed, scaleOf } from '../format.ts';
import type { PageProps } from '../page.tsx';
import {
  type Bar,
  barsThatMatter,
  LETTER,
  layOutBars,
  type NumberPlace,
  numberPlace,
  outsideOf,
  writtenPulls,
} from './bars.ts';
import { type TargetEvent, targetEvents } from './events.ts';
import { type GaugeMark, missOf, numberFoot, type PlacedMark, placeMarks } from './gauge-marks.ts';
import { GaugeMarks } from './gauge-marks-view.tsx';
import { endOf, isPull, type Phase, phaseAt } from './phases.ts';
import { inHand, type ShownRun } from './runs.ts';

/** Room above the highest bar for its number, and below the bars for the pulls' names and the track [px]. */
const TOP = 24;
const NAMES = 20;
const TRACK = 30;
const TRACK_HEIGHT = 14;
/** Two texts of the axis keep this far apart [px]. */
const CLEAR = 11;

interface BarsProps extends Pick<PageProps, 'clock' | 'display'> {
  readonly runs: ReadonlySignal<readonly ShownRun[]>;
  readonly phases: ReadonlySignal<readonly Phase[]>;
  readonly marks: ReadonlySignal<readonly GaugeMark[]>;
  readonly hasMisses: boolean;
  /** lowest and highest of the height axis [K] */
  readonly range: ReadonlySignal<readonly [number, number]>;
  readonly size: ReadonlySignal<Size>;
  readonly x: ReadonlySignal<(time: number) => number>;
  readonly left: number;
  readonly right: number;
}

/** The drawing of the bars and the track; a time that moves within a pull moves its line and redraws nothing else. */
export function Bars({ clock, display, runs, phases, marks, hasMisses, range, size, x, left, right }: BarsProps) {
  const cursor = useComputed(() => x.value(clock.shown.value).toFixed(1));
  const pullAtClock = useComputed(() => phaseAt(phases.value, clock.shown.value)?.pull ?? 0);
  const { width, height } = size.value;
  const shown = runs.value;
  const hand = inHand(shown);
  if (hand === undefined || width === 0) return <svg class="bars-drawing" aria-hidden="true" />;
  const units = display.units.value;
  const [low, high] = range.value;
  const outside = outsideOf(shown);
  const isOnAir = low >= outside;
  const floor = height - TRACK - NAMES;
  const y = placeOn(range.value, floor, TOP);
  const limit = hand.car.config.limit.chargeTemperature;
  const lines = isOnAir ? [y(limit)] : [y(limit), y(outside)];
  const { fromSi, toSi } = scaleOf('degC', units);
  const wholeDigits = fixed(fromSi(high), 0).length;
  const layout = layOutBars(shown, { x: x.value, y, width: width - left - right, wholeDigits });
  const placed = placeMarks(marks.value, {
    ...layout,
    y,
    limit: y(limit),
    right: width,
    write: hasMisses ? (mark) => missOf(mark, units) : undefined,
  });
  const free = Math.min(width - right, ...layout.bars.map((bar) => bar.x)) - left - 6;
  const ticks = ticksBetween(fromSi(low), fromSi(high), units.temperature === 'degC' ? 10 : 20).filter(
    (tick) => Math.abs(y(toSi(tick)) - y(limit)) > CLEAR && Math.abs(y(toSi(tick)) - floor) > CLEAR,
  );
  const written = layout.labels === 'few' ? barsThatMatter(layout.bars, pullAtClock.value) : new Set(layout.bars);
  const digits = layout.labels === 'whole' ? 0 : 1;
  const word = layout.slot >= 48 ? 'Pull ' : '';
  const digitsOfLast = String(layout.pulls.length).length;
  const names = new Set(writtenPulls(layout, word === '' ? 6 + 8 * digitsOfLast : 48, pullAtClock.value));
  const targets = targetEvents(hand);
  const isThin = layout.labels === 'few' && shown.length === 2;
  const unsolvedFrom = Math.min(hand.solvedTo, endOf(hand.phases));
  return (
    <svg class="bars-drawing" aria-hidden="true">
      <defs>
        <pattern id="over-hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect class="hatch-ground" width="6" height="6" />
          <line class="hatch-line" x1="0" x2="0" y1="0" y2="6" />
        </pattern>
      </defs>
      <LevelLines
        ticks={ticks}
        place={(tick) => y(toSi(tick))}
        write={(tick) => fixed(tick, 0)}
        from={left}
        to={width - right}
      />
      <line class="floor" x1={left} x2={width - right} y1={floor} y2={floor} />
      <text x={left - 6} y={floor + 4} text-anchor="end">
        {fixed(fromSi(low), 0)}
      </text>
      {!isOnAir && <line class="outside" x1={left} x2={width - right} y1={y(outside)} y2={y(outside)} />}
      <text x={left + 6} y={y(outside) - 5}>
        {fitting(free, `outside air ${degrees(outside, units, 0)}`, 'outside air')}
      </text>
      {targets.length > 0 && (
        <text x={left + 6} y={floor + 15}>
          {fitting(free, '▼ target pressure lost, △ regained', '▼ target lost, △ back')}
        </text>
      )}
      {layout.bars.map((bar) => (
        <OneBar key={`${bar.which}${bar.pull}`} bar={bar} floor={floor} />
      ))}
      <line class="limit" x1={left - 4} x2={width - right} y1={y(limit)} y2={y(limit)} />
      <line class="cursor" x1={cursor} x2={cursor} y1="4" y2={height} />
      <text class="strong" x={left - 6} y={y(limit) + 4} text-anchor="end">
        {briefly(fromSi(limit))}
      </text>
      <text class="strong" x={left + 6} y={y(limit) - 7}>
        {fitting(free, `Limit ${degrees(limit, units)}`, 'Limit')}
      </text>
      <GaugeMarks marks={placed} />
      {[...written].map((bar) => (
        <Peak
          key={`${bar.which}${bar.pull}`}
          bar={bar}
          floor={floor}
          digits={digits}
          place={numberPlace(bar, isThin, left, width)}
          marks={placed}
          lines={lines}
          fromSi={fromSi}
        />
      ))}
      {layout.pulls
        .filter(({ pull }) => names.has(pull))
        .map(({ pull, x: middle }) => (
          <text
            key={pull}
            class={pull === pullAtClock.value ? 'strong' : undefined}
            x={middle}
            y={floor + 15}
            text-anchor="middle"
          >
            {word}
            {pull}
          </text>
        ))}
      <Track phases={hand.phases} x={x.value} y={height - TRACK + (TRACK - TRACK_HEIGHT) / 2} from={unsolvedFrom} />
      <TargetMarks events={targets} x={x.value} y={height - TRACK + (TRACK - TRACK_HEIGHT) / 2} />
      {layout.pulls.map(({ pull, x: middle, end }) => (
        // biome-ignore lint/a11y/noStaticElementInteractions: by keys the scrubber goes from pull to pull
        <rect
          key={pull}
          class="slot"
          x={middle - layout.slot / 2}
          y="0"
          width={layout.slot}
          height={floor + NAMES}
          onClick={() => {
            clock.pinned.value = end;
          }}
        />
      ))}
    </svg>
  );
}

/** The longest of some texts that fits. */
const fitting = (room: number, ...texts: string[]): string => texts.find((text) => LETTER * text.length <= room) ?? '';

/** A bar: solid up to the limit, hatched above it; dashed where the pull is not solved. */
export function OneBar({ bar: { which, x, width, solved }, floor }: { bar: Bar; floor: number }) {
  if (solved === undefined) {
    const height = 0.5 * (floor - TOP);
    return (
      <g>
        <rect class="pull-unsolved" x={x + 0.5} y={floor - height} width={Math.max(1, width - 1)} height={height} />
        {width >= 8 && (
          <text x={x + width / 2} y={floor - height - 5} text-anchor="middle">
            ?
          </text>
        )}
      </g>
    );
  }
  const { isOver, limitTop, top } = solved;
  return (
    <g>
      <rect class={`pull-bar ${which}`} x={x} y={limitTop} width={width} height={Math.max(0, floor - limitTop)} />
      {isOver && (
        <rect
          class="pull-over"
          x={x + 0.75}
          y={top}
          width={Math.max(0.5, width - 1.5)}
          height={Math.max(2, limitTop - top - 2)}
        />
      )}
    </g>
  );
}

interface PeakProps {
  readonly bar: Bar;
  readonly floor: number;
  readonly digits: number;
  readonly place: NumberPlace;
  readonly marks?: readonly PlacedMark[];
  /** where lines across the bars are [px] */
  readonly lines: readonly number[];
  readonly fromSi: (kelvin: number) => number;
}

/** The number at a bar: inside where After stays under the limit, above everywhere else, clear of marks and lines. */
export function Peak({ bar: { which, width, solved }, floor, digits, place, marks = [], lines, fromSi }: PeakProps) {
  if (solved === undefined) return null;
  const { peak, isOver, top } = solved;
  const text = fixed(fromSi(peak), digits);
  const mayBeInside = which === 'after' && !isOver && width >= 10;
  const { foot, isInside } = numberFoot({ top, floor, span: spanOf(text, place), mayBeInside }, marks, lines);
  return (
    <text
      class={`peak${isInside ? ' inside' : ''}${digits === 0 ? ' small-peak' : ''}`}
      x={place.x}
      y={foot}
      text-anchor={place.anchor}
    >
      {text}
    </text>
  );
}

/** From where to where a text reaches [px]. */
function spanOf(text: string, { x, anchor }: NumberPlace): readonly [number, number] {
  const width = LETTER * text.length;
  const from = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return [from, from + width];
}

interface TrackProps {
  readonly phases: readonly Phase[];
  readonly x: (time: number) => number;
  readonly y: number;
  /** nothing is known from here on [s] */
  readonly from: number;
}

function Track({ phases, x, y, from }: TrackProps) {
  const end = endOf(phases);
  return (
    <g>
      <rect class="track" x={x(0)} y={y} width={Math.max(0, x(end) - x(0))} height={TRACK_HEIGHT} />
      {phases.map((phase) => {
        const left = x(phase.start);
        const width = x(phase.end) - left;
        if (isPull(phase)) {
          return (
            <rect
              key={phase.start}
              class="track-pull"
              x={left}
              y={y}
              width={Math.max(2, width)}
              height={TRACK_HEIGHT}
            />
          );
        }
        if (width < LETTER * phase.name.length + 14) return null;
        // A name that comes again with every pull says nothing new.
        if (phases.some((other) => other !== phase && other.name === phase.name)) return null;
        return (
          <text key={phase.start} x={left + 8} y={y + 11}>
            {phase.name}
          </text>
        );
      })}
      {from < end && <rect class="track-unsolved" x={x(from)} y={y} width={x(end) - x(from)} height={TRACK_HEIGHT} />}
    </g>
  );
}

interface TargetMarksProps {
  readonly events: readonly TargetEvent[];
  readonly x: (time: number) => number;
  readonly y: number;
}

/** Marks on the track: a filled triangle down where the target pressure is lost, an open one up where it is back. */
function TargetMarks({ events, x, y }: TargetMarksProps) {
  return (
    <g>
      {events.map(({ time, isLost }) => {
        const at = x(time);
        return (
          <path
            key={`${time}${isLost}`}
            class={isLost ? 'target-lost' : 'target-back'}
            d={isLost ? `M${at - 5} ${y - 5}h10l-5 9z` : `M${at - 5} ${y + TRACK_HEIGHT + 4}h10l-5 -9z`}
          >
            <title>{isLost ? 'target pressure lost' : 'target pressure regained'}</title>
          </path>
        );
      })}
    </g>
  );
}
