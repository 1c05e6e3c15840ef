import 'uplot/dist/uPlot.min.css';
import uPlot from 'uplot';
import type { Size } from '../figures/use-size.ts';
import type { Palette } from './palette.ts';
import { Pen } from './pen.ts';
import { timeTicks, type View } from './view.ts';

/** How a line is drawn: Before grey, After in the accent; dashed as a sensor reads; thin where it is beside the point. */
export interface LineLook {
  readonly which: 'before' | 'after';
  readonly isDashed?: boolean;
  readonly isThin?: boolean;
}

/** All that a plot shows at a moment, in shown units; times stay seconds. */
export interface PlotContent {
  readonly times: number[];
  /** one for each line, null where it has nothing to say */
  readonly lines: (number | null)[][];
  readonly range: readonly [number, number];
  readonly ticks: readonly { readonly value: number; readonly text: string }[];
  /** beneath the grid */
  readonly paintBeneath?: (pen: Pen) => void;
  /** above the lines */
  readonly paintAbove?: (pen: Pen) => void;
}

/** Room left and right of every plot, so that one time stands at one place in all of them [px]. */
export const PLOT_LEFT = 56;
export const PLOT_RIGHT = 8;
const TIME_AXIS = 22;
/** Two numbers of the time axis need this much room [px]. */
const TIME_ROOM = 44;

/**
 * One uPlot that is built once and then only handed new numbers. Its own cursor, legend and drag are off: time is
 * shared over all plots by the page's clock, not by plots that watch each other.
 */
export class LinePlot {
  private readonly plot: uPlot;
  private palette: Palette;
  private content: PlotContent = { times: [], lines: [], range: [0, 1], ticks: [] };
  private view: View = { from: 0, to: 1, zero: 0, unit: 'seconds', caption: '', name: '' };

  /** @param hasTimeAxis - false for a strip that stands below a plot with the same times */
  constructor(host: HTMLElement, looks: readonly LineLook[], palette: Palette, hasTimeAxis: boolean) {
    this.palette = palette;
    const options: uPlot.Options = {
      width: Math.max(1, host.clientWidth),
      height: Math.max(1, host.clientHeight),
      padding: [hasTimeAxis ? 18 : 6, PLOT_RIGHT, hasTimeAxis ? 0 : 6, 0],
      legend: { show: false },
      cursor: { show: false },
      scales: { x: { time: false }, y: { range: () => [...this.content.range] } },
      series: [{}, ...looks.map((look) => this.series(look))],
      axes: [this.timeAxis(hasTimeAxis), this.heightAxis()],
      hooks: {
        drawClear: [() => this.paint(this.content.paintBeneath)],
        draw: [() => this.paint(this.content.paintAbove)],
      },
    };
    this.plot = new uPlot(options, [[0, 1], ...looks.map(() => [null, null])], host);
  }

  /** Hands over new numbers, a new stretch of time, or both, and draws once. */
  show(content: PlotContent, view: View): void {
    this.content = content;
    this.view = view;
    const isEmpty = content.times.length === 0;
    const times = isEmpty ? [view.from, view.to] : content.times;
    const lines = isEmpty ? content.lines.map(() => [null, null]) : content.lines;
    this.plot.batch(() => {
      this.plot.setData([times, ...lines], false);
      this.plot.setScale('x', { min: view.from, max: view.to });
    });
  }

  /** Draws again in other colours. */
  paintIn(palette: Palette): void {
    this.palette = palette;
    this.plot.redraw(false);
  }

  resize({ width, height }: Size): void {
    if (width >= 1 && height >= 1) this.plot.setSize({ width, height });
  }

  destroy(): void {
    this.plot.destroy();
  }

  private paint(paint: ((pen: Pen) => void) | undefined): void {
    if (paint !== undefined) Pen.draw(this.plot, this.palette, uPlot.pxRatio, paint);
  }

  private series({ which, isDashed, isThin }: LineLook): uPlot.Series {
    return {
      stroke: () => this.palette[which],
      width: isDashed || isThin ? 1.5 : 2.5,
      ...(isDashed ? { dash: [5, 4] } : {}),
      points: { show: false },
      // Points between two pixels, or a slow rise becomes a stair.
      pxAlign: 0,
    };
  }

  private timeAxis(isShown: boolean): uPlot.Axis {
    const ticks = (plot: uPlot) => timeTicks(this.view, plot.bbox.width / uPlot.pxRatio, TIME_ROOM);
    return {
      show: isShown,
      size: isShown ? TIME_AXIS : 0,
      gap: 4,
      font: this.font(),
      stroke: () => this.palette.ink2,
      splits: (plot) => ticks(plot).times,
      values: (plot) => {
        const { times, texts, caption } = ticks(plot);
        // The caption stands at the right end, in the same line.
        const last = plot.bbox.width / uPlot.pxRatio - 6.5 * caption.length - 18;
        return times.map((time, k) => (plot.valToPos(time, 'x') > last ? '' : texts[k]));
      },
      grid: { show: false },
      ticks: { show: false },
    };
  }

  private heightAxis(): uPlot.Axis {
    return {
      size: PLOT_LEFT,
      gap: 8,
      font: this.font(),
      stroke: () => this.palette.ink2,
      splits: () => this.content.ticks.map(({ value }) => value),
      values: () => this.content.ticks.map(({ text }) => text),
      grid: { stroke: () => this.palette.line, width: 1 },
      ticks: { show: false },
    };
  }

  private font(): string {
    return `12px ${this.palette.font}`;
  }
}
