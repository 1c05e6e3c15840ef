import type uPlot from 'uplot';
import type { Palette } from './palette.ts';

/** Draws on a plot's canvas in CSS pixels and in the plot's own scales. */
export class Pen {
  readonly context: CanvasRenderingContext2D;
  readonly palette: Palette;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  private readonly plot: uPlot;
  private readonly ratio: number;

  constructor(plot: uPlot, palette: Palette, ratio: number) {
    this.plot = plot;
    this.palette = palette;
    this.ratio = ratio;
    this.context = plot.ctx;
    const { left, top, width, height } = plot.bbox;
    this.left = left / ratio;
    this.top = top / ratio;
    this.right = (left + width) / ratio;
    this.bottom = (top + height) / ratio;
  }

  /** Runs a drawing with the canvas as it was before. */
  static draw(plot: uPlot, palette: Palette, ratio: number, paint: (pen: Pen) => void): void {
    plot.ctx.save();
    plot.ctx.scale(ratio, ratio);
    paint(new Pen(plot, palette, ratio));
    plot.ctx.restore();
  }

  x(time: number): number {
    return this.plot.valToPos(time, 'x', true) / this.ratio;
  }

  y(shown: number): number {
    return this.plot.valToPos(shown, 'y', true) / this.ratio;
  }

  /** A time's place, held inside the plot. */
  heldX(time: number): number {
    return Math.min(this.right, Math.max(this.left, this.x(time)));
  }

  line(x1: number, y1: number, x2: number, y2: number, colour: string, width: number, dash: number[] = []): void {
    const { context } = this;
    context.beginPath();
    context.setLineDash(dash);
    context.moveTo(x1, y1);
    context.lineTo(x2, y2);
    context.strokeStyle = colour;
    context.lineWidth = width;
    context.stroke();
    context.setLineDash([]);
  }

  dot(x: number, y: number, radius: number, fill: string, rim?: { colour: string; width: number }): void {
    const { context } = this;
    context.beginPath();
    context.arc(x, y, radius, 0, 2 * Math.PI);
    context.fillStyle = fill;
    context.fill();
    if (rim === undefined) return;
    context.strokeStyle = rim.colour;
    context.lineWidth = rim.width;
    context.stroke();
  }

  /** Width of a text [px]. */
  widthOf(text: string, size: number, weight = 400): number {
    this.context.font = `${weight} ${size}px ${this.palette.font}`;
    return this.context.measureText(text).width;
  }

  /** A text on its line, with a rim in the ground's colour where lines run behind it. */
  text(
    text: string,
    x: number,
    y: number,
    { size = 12, weight = 400, colour = this.palette.ink2, align = 'left', hasRim = false }: TextLook = {},
  ): void {
    const { context } = this;
    context.font = `${weight} ${size}px ${this.palette.font}`;
    context.textAlign = align;
    context.textBaseline = 'alphabetic';
    if (hasRim) {
      context.lineJoin = 'round';
      context.lineWidth = 4;
      context.strokeStyle = this.palette.panel;
      context.strokeText(text, x, y);
    }
    context.fillStyle = colour;
    context.fillText(text, x, y);
  }
}

interface TextLook {
  readonly size?: number;
  readonly weight?: number;
  readonly colour?: string;
  readonly align?: CanvasTextAlign;
  readonly hasRim?: boolean;
}
