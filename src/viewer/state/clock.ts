import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { ColumnName, PhaseSpan, TimeSeries } from '../../sim/index.ts';

/**
 * The one time cursor of the page. `pinned` is where it was put, `hovered` what a plot is pointed at; what everything
 * shows is `shown`. Leaving a plot brings the pinned time back.
 */
export class Clock {
  readonly pinned: Signal<number> = signal(0);
  readonly hovered: Signal<number | undefined> = signal(undefined);
  readonly shown: ReadonlySignal<number> = computed(() => this.hovered.value ?? this.pinned.value);
  readonly isPlaying: Signal<boolean> = signal(false);
  /** simulated seconds a second */
  readonly speed: Signal<number> = signal(5);
}

/** A moment of a series: between two rows of the same phase. */
export interface Moment {
  readonly row: number;
  readonly nextRow: number;
  /** 0 at `row`, 1 at `nextRow` */
  readonly share: number;
  readonly phase: PhaseSpan | undefined;
}

/** Looks a time up; at a joint of two phases the earlier one holds, so that a pull's end is its peak. */
export function momentAt(series: TimeSeries, time: number): Moment {
  const times = series.columns.time;
  const phase = series.phases.find(({ end }) => time <= end) ?? series.phases[series.phases.length - 1];
  const first = phase?.firstRow ?? 0;
  const last = phase?.lastRow ?? series.rowCount - 1;
  let low = first;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (times[middle] <= time) low = middle;
    else high = middle;
  }
  const span = times[high] - times[low];
  const share = span > 0 ? Math.min(1, Math.max(0, (time - times[low]) / span)) : 0;
  return { row: low, nextRow: high, share, phase };
}

/** A recorded quantity at a moment, SI, linear between rows. */
export function columnAt(series: TimeSeries, name: ColumnName, { row, nextRow, share }: Moment): number {
  const values = series.columns[name];
  return values[row] + share * (values[nextRow] - values[row]);
}
