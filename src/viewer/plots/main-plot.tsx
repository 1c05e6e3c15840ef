import { type ReadonlySignal, useComputed } from '@preact/signals';
import type { ColumnName } from '../../sim/index.ts';
import { colourScale } from '../colour-scale.ts';
import { fixed, joined, scaleOf } from '../format.ts';
import type { Display } from '../state/display.ts';
import { describeClock, type Phase } from '../time/phases.ts';
import type { ShownRun } from '../time/runs.ts';
import { ticksBetween } from '../time/ticks.ts';
import { type CommonTimes, sampled } from './common-times.ts';
import type { LineLook, PlotContent } from './line-plot.ts';
import { degreeStep, type MainMarks, mainRange } from './main-model.ts';
import { paintMarks, paintShades } from './main-painter.ts';
import { type Linked, Plot } from './plot.tsx';
import { readingAt, type SeriesPair } from './readings.ts';

/** Lines of the main plot; what is drawn last lies on top. */
const LINES: readonly (LineLook & { readonly column: ColumnName })[] = [
  { which: 'before', column: 'dischargeTemperature', isThin: true },
  { which: 'after', column: 'dischargeTemperature', isThin: true },
  { which: 'before', column: 'indicatedTemperature', isDashed: true },
  { which: 'after', column: 'indicatedTemperature', isDashed: true },
  { which: 'before', column: 'chargeTemperature' },
  { which: 'after', column: 'chargeTemperature' },
];

interface MainPlotProps {
  readonly linked: Linked;
  readonly display: Display;
  readonly runs: ReadonlySignal<readonly ShownRun[]>;
  readonly phases: ReadonlySignal<readonly Phase[]>;
  readonly pair: ReadonlySignal<SeriesPair>;
  readonly common: ReadonlySignal<CommonTimes>;
  readonly marks: ReadonlySignal<MainMarks>;
  readonly describedBy: string;
}

/** Charge temperature against the limit, with the core's colours as its height axis. */
export function MainPlot({ linked, display, runs, phases, pair, common, marks, describedBy }: MainPlotProps) {
  const content = useComputed((): PlotContent => {
    const scale = scaleOf('degC', display.units.value);
    const colours = colourScale(display.colourBy.value, pair.value);
    const limits = runs.value.map(({ car }) => car.config.limit.chargeTemperature);
    const range = mainRange(colours, pair.value, limits);
    const [low, high] = range.map(scale.fromSi);
    const limit = marks.value.limit && scale.fromSi(marks.value.limit.kelvin);
    const step = degreeStep(range, scale);
    const isAir = display.colourBy.value === 'air';
    return {
      times: common.value.times,
      lines: LINES.map(({ which, column }) => {
        const series = pair.value[which === 'before' ? 0 : 1];
        // Air before the core belongs on the ruler only while the ruler is the air's.
        const isShown = column !== 'dischargeTemperature' || isAir;
        return sampled(common.value, isShown ? series : undefined, column, scale.fromSi);
      }),
      range: [low, high],
      ticks: ticksBetween(low, high, step).map((value) => {
        const isAtLimit = limit !== undefined && Math.abs(value - limit) < 0.07 * (high - low);
        return { value, text: isAtLimit ? '' : fixed(value, 0) };
      }),
      paintBeneath: (pen) => paintShades(pen, marks.value),
      paintAbove: (pen) => paintMarks(pen, marks.value, colours, scale, linked.view.peek()),
    };
  });
  const reading = useComputed(() => {
    const time = linked.clock.pinned.value;
    const [before, after] = pair.value.map((series) =>
      readingAt(series, 'chargeTemperature', time, display.units.value),
    );
    const said = [before && `before ${joined(before)}`, after && `after ${joined(after)}`].filter(Boolean);
    const values = after === undefined && before !== undefined ? joined(before) : said.join(', ');
    return `${describeClock(phases.value, time)}: ${values}`;
  });
  return (
    <Plot
      linked={linked}
      looks={LINES}
      content={content}
      hasTimeAxis={true}
      label="Charge temperature over time"
      reading={reading}
      describedBy={describedBy}
    />
  );
}
