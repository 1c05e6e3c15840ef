import { type ReadonlySignal, type Signal, useComputed, useSignalEffect } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { type Size, useSize } from '../figures/use-size.ts';
import type { Clock } from '../state/clock.ts';
import { type LineLook, LinePlot, PLOT_LEFT, PLOT_RIGHT, type PlotContent } from './line-plot.ts';
import type { Palette } from './palette.ts';
import { followPointer } from './pointing.ts';
import { heldStretch, type Stretch, type View, zoomed } from './view.ts';

/** What all plots share: one time, one stretch of it, one mark while a stretch is being chosen. */
export interface Linked {
  readonly clock: Clock;
  readonly palette: ReadonlySignal<Palette>;
  readonly view: ReadonlySignal<View>;
  /** end of the line of time [s] */
  readonly length: ReadonlySignal<number>;
  readonly zoom: Signal<Stretch | undefined>;
  readonly mark: Signal<Stretch | undefined>;
}

interface PlotProps {
  readonly linked: Linked;
  readonly looks: readonly LineLook[];
  readonly content: ReadonlySignal<PlotContent>;
  readonly hasTimeAxis: boolean;
  /** name for screen readers, and what it says at the pinned time */
  readonly label: string;
  readonly reading: ReadonlySignal<string>;
  readonly describedBy: string;
}

/** A plot with the shared cursor: by mouse, finger and keys. */
export function Plot({ linked, looks, content, hasTimeAxis, label, reading, describedBy }: PlotProps) {
  const { clock, view, length } = linked;
  const host = useRef<HTMLDivElement>(null);
  const size = useSize(host);
  usePlot(host, size, linked, looks, content, hasTimeAxis);
  return (
    <div
      class="plot"
      ref={host}
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-describedby={describedBy}
      aria-valuemin={0}
      aria-valuemax={length}
      aria-valuenow={clock.pinned}
      aria-valuetext={reading}
      onKeyDown={(event) => {
        if (keyed(event, linked)) event.preventDefault();
      }}
    >
      <Mark linked={linked} size={size} class="plot-mark" stretch={linked.mark} />
      <Mark
        linked={linked}
        size={size}
        class="plot-cursor"
        stretch={useComputed(() => {
          const time = clock.shown.value;
          return length.value > 0 && time >= view.value.from && time <= view.value.to
            ? { from: time, to: time }
            : undefined;
        })}
      />
      <Face linked={linked} />
    </div>
  );
}

/** Builds the drawing once and keeps it up with size, numbers, stretch and colours. */
function usePlot(
  host: { current: HTMLDivElement | null },
  size: ReadonlySignal<Size>,
  { palette, view }: Linked,
  looks: readonly LineLook[],
  content: ReadonlySignal<PlotContent>,
  hasTimeAxis: boolean,
): void {
  const plot = useRef<LinePlot | undefined>(undefined);
  // Built once: everything that changes is handed over below.
  useLayoutEffect(() => {
    if (host.current === null) return;
    plot.current = new LinePlot(host.current, looks, palette.peek(), hasTimeAxis);
    return () => plot.current?.destroy();
  }, []);
  useSignalEffect(() => plot.current?.resize(size.value));
  useSignalEffect(() => plot.current?.paintIn(palette.value));
  useSignalEffect(() => plot.current?.show(content.value, view.value));
}

/** A stretch of time, or a moment, across the height of a plot. */
function Mark(props: {
  linked: Linked;
  size: ReadonlySignal<Size>;
  class: string;
  stretch: ReadonlySignal<Stretch | undefined>;
}) {
  const mark = useRef<HTMLDivElement>(null);
  useSignalEffect(() => {
    const { style } = mark.current as HTMLDivElement;
    const stretch = props.stretch.value;
    const { from, to } = props.linked.view.value;
    const perSecond = Math.max(1, props.size.value.width - PLOT_LEFT - PLOT_RIGHT) / (to - from);
    style.display = stretch === undefined ? 'none' : 'block';
    if (stretch === undefined) return;
    style.transform = `translateX(${PLOT_LEFT + (stretch.from - from) * perSecond}px)`;
    if (stretch.to > stretch.from) style.width = `${(stretch.to - stretch.from) * perSecond}px`;
  });
  return <div class={props.class} ref={mark} />;
}

/** The part of a plot that can be pointed at. */
function Face({ linked: { clock, view, zoom, mark, length } }: { linked: Linked }) {
  const face = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const element = face.current as HTMLDivElement;
    return followPointer(element, {
      stretch: () => view.peek(),
      sides: () => element.getBoundingClientRect(),
      onHover: (time) => {
        clock.hovered.value = time;
      },
      onPin: (time) => {
        clock.pinned.value = Math.round(10 * time) / 10;
      },
      onMark: (stretch) => {
        mark.value = stretch;
      },
      onZoom: (stretch) => {
        zoom.value = heldStretch(stretch, length.peek());
      },
      onReset: () => {
        zoom.value = undefined;
      },
    });
  }, [clock, view, zoom, mark, length]);
  return <div class="plot-face" ref={face} />;
}

/** How much plus and minus zoom. */
const KEY_ZOOM = 1.5;

/** Keys of the shared cursor; true for those that mean something. */
function keyed({ key, shiftKey }: KeyboardEvent, { clock, view, length, zoom }: Linked): boolean {
  const { from, to } = view.peek();
  const time = clock.pinned.peek();
  // About a pixel, and never less than the tenth that the scrubber steps by.
  const step = Math.max(0.1, Math.round((to - from) / 24) / 10) * (shiftKey ? 10 : 1);
  const moves: Record<string, number> = { ArrowRight: time + step, ArrowLeft: time - step, Home: from, End: to };
  if (key in moves) {
    clock.pinned.value = Math.min(length.peek(), Math.max(0, Math.round(10 * moves[key]) / 10));
  } else if (key === '+' || key === '=') zoom.value = zoomed(view.peek(), time, 1 / KEY_ZOOM, length.peek());
  else if (key === '-') zoom.value = zoomed(view.peek(), time, KEY_ZOOM, length.peek());
  else if (key === 'Escape' || key === '0') zoom.value = undefined;
  else return false;
  return true;
}
