import { type ReadonlySignal, useComputed } from '@preact/signals';
import type { ColumnName } from '../../sim/index.ts';
import { colourScale } from '../colour-scale.ts';
import { ticksBetween } from '../figures/ticks.ts';
import { fixed, joined, type Scale, scaleOf } from '../format.ts';
import type { Display } from '../state/display.ts';
import { describeClock, type Phase } from '../time/phases.ts';
import type { ShownRun } from '../time/runs.ts';
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
  const scale = useComputed(() => scaleOf('degC', display.units.value));
  const colours = useComputed(() => colourScale(display.colourBy.value, pair.value));
  const lines = useComputed(() => mainLines(pair.value, common.value, scale.value, display.colourBy.value === 'air'));
  const limits = useComputed(() => runs.value.map(({ car }) => car.config.limit.chargeTemperature));
  const content = useComputed((): PlotContent => {
    const range = mainRange(colours.value, pair.value, limits.value);
    return {
      times: common.value.times,
      lines: lines.value,
      ...heightAxis(range, scale.value, limits.value.at(-1)),
      paintBeneath: (pen) => paintShades(pen, marks.value),
      paintAbove: (pen) => paintMarks(pen, marks.value, colours.value, scale.value, linked.view.peek()),
    };
  });
  const reading = useComputed(() => {
    const time = linked.clock.pinned.value;
    const [before, after] = pair.value.map((series) =>
      readingAt(series, 'chargeTemperature', time, display.units.value),
    );
    const said = [before && `Before ${joined(before)}`, after && `After ${joined(after)}`].filter(Boolean);
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

/** Air before the core belongs on the ruler only while the ruler is the air's. */
function mainLines(pair: SeriesPair, common: CommonTimes, { fromSi }: Scale, isAir: boolean): PlotContent['lines'] {
  return LINES.map(({ which, column }) => {
    const isShown = isAir || column !== 'dischargeTemperature';
    return sampled(common, isShown ? pair[which === 'before' ? 0 : 1] : undefined, column, fromSi);
  });
}

/** Two numbers of the axis keep apart by this share of its height. */
const CLEAR = 0.07;

/** The height axis in the shown unit; a number gives way to that of the limit. */
function heightAxis(
  range: readonly [number, number],
  scale: Scale,
  limit: number | undefined,
): Pick<PlotContent, 'range' | 'ticks'> {
  const low = scale.fromSi(range[0]);
  const high = scale.fromSi(range[1]);
  const ticks = ticksBetween(low, high, degreeStep(range, scale)).map((value) => {
    const isAtLimit = limit !== undefined && Math.abs(value - scale.fromSi(limit)) < CLEAR * (high - low);
    return { value, text: isAtLimit ? '' : fixed(value, 0) };
  });
  return { range: [low, high], ticks };
}
