import './plots.css';
import { type Signal, useComputed, useSignal, useSignalEffect } from '@preact/signals';
import { useMemo, useRef } from 'preact/hooks';
import { capitalised } from '../format.ts';
import type { PageProps } from '../page.tsx';
import type { PlotSpan } from '../state/display.ts';
import { inHand, lengthOf, shownRuns } from '../time/runs.ts';
import { Toggle } from '../time/toggle.tsx';
import { commonTimes } from './common-times.ts';
import { mainMarks } from './main-model.ts';
import { MainPlot } from './main-plot.tsx';
import { usePalette } from './palette.ts';
import type { Linked } from './plot.tsx';
import { PlotTables } from './plot-tables.tsx';
import type { SeriesPair } from './readings.ts';
import { describeCharge } from './sentences.ts';
import { Reading, Strip } from './strip.tsx';
import { TraceChoice } from './trace-choice.tsx';
import { tracesOf, USUAL_TRACES } from './traces.ts';
import { type Stretch, unchanged, type View, viewOf } from './view.ts';

const SPANS: readonly (readonly [PlotSpan, string])[] = [
  ['one pull', 'One pull'],
  ['whole run', 'Whole run'],
];
/** Between these widths of the page there is room for two strips only. */
const TWO_STRIPS = '(min-width: 860px) and (max-width: 1199px)';

/** Charge temperature over time, strips of other quantities below, all on one time. */
export function Plots({ session, clock, display }: PageProps) {
  const runs = useComputed(() => shownRuns(session));
  const phases = useComputed(() => inHand(runs.value)?.phases ?? []);
  const length = useComputed(() => lengthOf(runs.value));
  const zoom = useSignal<Stretch | undefined>(undefined);
  const mark = useSignal<Stretch | undefined>(undefined);
  const lastView = useRef<View | undefined>(undefined);
  const view = useComputed(() => {
    const next = viewOf(phases.value, length.value, display.span.value, clock.pinned.value, zoom.value);
    lastView.current = unchanged(lastView.current, next);
    return lastView.current;
  });
  const palette = usePalette(display);
  const linked: Linked = { clock, palette, view, length, zoom, mark };
  useLeavingZoom(linked, display.span);

  const beforeSeries = useComputed(() => session.beforeRun.value.series);
  const afterSeries = useComputed(() =>
    session.after.value === undefined ? undefined : session.afterRun.value.series,
  );
  const pair = useComputed((): SeriesPair => [beforeSeries.value, afterSeries.value]);
  const common = useComputed(() => commonTimes(pair.value));
  const marks = useComputed(() => mainMarks(runs.value, view.value, display.units.value));
  const sentence = useComputed(() => capitalised(describeCharge(runs.value, view.value, display.units.value)));
  const name = useComputed(() => view.value.name);

  const usual = useMemo(() => (matchMedia(TWO_STRIPS).matches ? USUAL_TRACES.slice(0, 2) : USUAL_TRACES), []);
  const columns = display.traces.value ?? usual;
  const traces = tracesOf(columns);
  const isTable = useSignal(false);
  const charge = { column: 'chargeTemperature', title: 'Charge temperature' } as const;
  return (
    <section class="plots" aria-label="Plots">
      <div class="plots-head">
        <h2>
          Charge<span class="plots-wide"> temperature</span>
          {useComputed(() => (name.value === '' ? '' : `, ${name.value}`))}
        </h2>
        <SpanChoice span={display.span} />
      </div>
      <div class="plots-tools">
        <p class="small plots-legend">
          <b>Solid</b> true, <b>dashed</b>
          <span class="plots-wide"> as a</span> sensor<span class="plots-wide"> reads</span>
          {display.colourBy.value === 'air' && (
            <>
              , <b>thin</b> before the core
            </>
          )}
          .<span class="plots-more"> The colour bar is the core’s scale too.</span>
        </p>
        {zoom.value !== undefined && (
          <button
            type="button"
            onClick={() => {
              zoom.value = undefined;
            }}
          >
            Show all
          </button>
        )}
        <TraceChoice
          chosen={columns}
          choose={(next) => {
            display.traces.value = next;
          }}
        />
        <Toggle isOn={isTable} label="Table" />
      </div>
      {isTable.value ? (
        <PlotTables
          traces={traces}
          sentence={sentence.value}
          pair={pair.value}
          view={view.value}
          phases={phases.value}
          units={display.units.value}
        />
      ) : (
        <>
          <div class="main-plot">
            <p class="small plots-sentence plots-more" id="charge-sentence">
              {sentence}
            </p>
            <p class="main-reading">
              <Reading trace={charge} linked={linked} pair={pair} display={display} />
            </p>
            <MainPlot
              linked={linked}
              display={display}
              runs={runs}
              phases={phases}
              pair={pair}
              common={common}
              marks={marks}
              describedBy="charge-sentence"
            />
          </div>
          <div class="strips">
            {traces.map((trace) => (
              <Strip
                key={trace.column}
                trace={trace}
                linked={linked}
                display={display}
                pair={pair}
                common={common}
                marks={marks}
              />
            ))}
          </div>
        </>
      )}
    </section>
  );
}

/** A zoom is left as soon as the time is moved out of it, or another span is chosen. */
function useLeavingZoom({ clock, zoom }: Linked, span: Signal<PlotSpan>): void {
  useSignalEffect(() => {
    const time = clock.pinned.value;
    const stretch = zoom.peek();
    if (stretch !== undefined && (time < stretch.from || time > stretch.to)) zoom.value = undefined;
  });
  useSignalEffect(() => {
    span.value;
    zoom.value = undefined;
  });
}

function SpanChoice({ span }: { span: Signal<PlotSpan> }) {
  return (
    <fieldset class="choice">
      <legend class="spoken">Stretch of time</legend>
      {SPANS.map(([value, label]) => (
        <label key={value}>
          <input
            type="radio"
            name="plot-span"
            checked={span.value === value}
            onChange={() => {
              span.value = value;
            }}
          />
          <span>{label}</span>
        </label>
      ))}
    </fieldset>
  );
}
