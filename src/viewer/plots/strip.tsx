import { type ReadonlySignal, useComputed } from '@preact/signals';
import { COLUMNS, toSi } from '../../sim/index.ts';
import { roundRange } from '../figures/ticks.ts';
import { fixed, scaleOf } from '../format.ts';
import type { Display } from '../state/display.ts';
import { type CommonTimes, extremes, sampled } from './common-times.ts';
import type { LineLook, PlotContent } from './line-plot.ts';
import type { MainMarks } from './main-model.ts';
import { paintShades } from './main-painter.ts';
import type { Pen } from './pen.ts';
import { type Linked, Plot } from './plot.tsx';
import { describeTrace, readingAt, type SeriesPair } from './readings.ts';
import type { Trace } from './traces.ts';

const LOOKS: readonly LineLook[] = [{ which: 'before' }, { which: 'after' }];

interface StripProps {
  readonly trace: Trace;
  readonly linked: Linked;
  readonly display: Display;
  readonly pair: ReadonlySignal<SeriesPair>;
  readonly common: ReadonlySignal<CommonTimes>;
  readonly marks: ReadonlySignal<MainMarks>;
}

/** One quantity below the charge temperature, at the same times. */
export function Strip({ trace, linked, display, pair, common, marks }: StripProps) {
  const { column, title } = trace;
  const numbers = useComputed(() => stripNumbers(trace, pair.value, common.value, display));
  const content = useComputed(() => ({
    ...numbers.value,
    paintBeneath: (pen: Pen) => paintShades(pen, marks.value),
  }));
  const reading = useComputed(() => {
    const [before, after] = bothReadings(linked.clock.pinned.value, trace, pair.value, display);
    return after === undefined ? (before ?? '') : `Before ${before ?? 'not known'}, After ${after}`;
  });
  const sentence = useComputed(() => describeTrace(title, column, pair.value, linked.view.value, display.units.value));
  const id = `strip-${column}`;
  return (
    <div class="strip">
      <h3>
        {title}
        <Reading trace={trace} linked={linked} pair={pair} display={display} />
      </h3>
      <p class="spoken" id={id}>
        {sentence}
      </p>
      <Plot
        linked={linked}
        looks={LOOKS}
        content={content}
        hasTimeAxis={false}
        label={`${title} over time`}
        reading={reading}
        describedBy={id}
      />
    </div>
  );
}

/** What hangs on the runs alone; what a change of the stretch or the marks leaves as it is. */
function stripNumbers({ column, from }: Trace, pair: SeriesPair, common: CommonTimes, display: Display): PlotContent {
  const [fileUnit] = COLUMNS[column];
  const scale = scaleOf(fileUnit, display.units.value);
  const lines = pair.map((series) => sampled(common, series, column, scale.fromSi));
  const found = extremes(pair, column);
  // Without a run there is nothing to put numbers to.
  if (found === undefined) return { times: common.times, lines, range: [0, 1], ticks: [] };
  const [low, high] = found.map(scale.fromSi);
  const start = from === undefined ? low : Math.min(low, scale.fromSi(toSi(from, fileUnit)));
  const range = roundRange(start, high, 2);
  const digits = range.every((end) => Math.abs(end - Math.round(end)) < 1e-6) ? 0 : 2;
  return {
    times: common.times,
    lines,
    range,
    ticks: range.map((value) => ({ value, text: fixed(value, digits) })),
  };
}

function bothReadings(time: number, { column }: Trace, pair: SeriesPair, display: Display): (string | undefined)[] {
  return pair.map((series) => readingAt(series, column, time, display.units.value)?.value);
}

type ReadingProps = Pick<StripProps, 'trace' | 'linked' | 'pair' | 'display'>;

/** Before and After at the time shown: "44.5 → 42.6 °C". */
export function Reading({ trace, linked, pair, display }: ReadingProps) {
  const values = useComputed(() => bothReadings(linked.clock.shown.value, trace, pair.value, display));
  const before = useComputed(() => values.value[0] ?? '?');
  const after = useComputed(() => values.value[1] ?? '?');
  const [fileUnit] = COLUMNS[trace.column];
  const { unit } = scaleOf(fileUnit, display.units.value);
  const [first, second] = pair.value;
  if (first === undefined && second === undefined) return null;
  return (
    <span class="reading">
      {second !== undefined && <span class="spoken">Before </span>}
      <span class={second === undefined ? 'value' : undefined}>{before}</span>
      {second !== undefined && (
        <>
          <span aria-hidden="true"> → </span>
          <span class="spoken"> after </span>
          <span class="value after">{after}</span>
        </>
      )}
      {`\u00a0${unit}`}
    </span>
  );
}
