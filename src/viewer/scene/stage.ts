import { effect, type Signal } from '@preact/signals';
import type { Colour } from '../colour-scale.ts';
import type { CarRole } from '../state/cars.ts';
import { FlatPainter } from './flat-painter.ts';
import type { Painter } from './painter.ts';
import { cellToPixel } from './picking.ts';
import type { PictureModel } from './picture-model.ts';
import type { Point } from './projection.ts';
import type { CardContent, SolidPainter } from './solid-painter.ts';

/** What the canvas tells and lets do, as its property `soakbenchPicture`; for checks of the picture. */
export interface PictureHook {
  readonly drawing: 'flat' | 'solid';
  /** frames drawn since the picture was put up */
  readonly frames: number;
  /** pixel of the page, from the canvas's corner, in the middle of a cell (from 0) as a level face shows it */
  cellToPixel(car: CarRole, i: number, j: number): Point;
  /** red, green, blue and cover, 0 to 255 */
  pixelAt(x: number, y: number): readonly number[];
  /** the blocks as they are now, at so many pixels per pixel of the page; undefined where nothing is drawn */
  drawnAt(fineness: number): HTMLCanvasElement | undefined;
  /** what the graphics card holds; undefined where none draws */
  gpu(): CardContent | undefined;
  loseContext(): void;
  restoreContext(): void;
}

/** Screens finer than this are drawn at this many pixels per pixel of the page. */
const FINEST = 2;
/** The graphics card is asked for at the latest this long after the first answer [ms]. */
const PATIENCE = 2000;

/**
 * Draws the blocks when, and only when, something that they show has changed. Starts flat; once there is an answer on
 * screen it loads what draws with the graphics card, and goes back to flat where that is not to be had or is lost.
 */
export class Stage {
  private readonly model: PictureModel;
  private readonly canvas: HTMLCanvasElement;
  private readonly isCardLost: Signal<boolean>;
  private readonly flat = new FlatPainter();
  private readonly card = document.createElement('canvas');
  private solid: SolidPainter | undefined;
  private isAsked = false;
  private frames = 0;
  private request = 0;
  private isOver = false;
  private readonly stops: (() => void)[];

  constructor(model: PictureModel, canvas: HTMLCanvasElement, isCardLost: Signal<boolean>) {
    this.model = model;
    this.canvas = canvas;
    this.isCardLost = isCardLost;
    Object.assign(canvas, { soakbenchPicture: this.hook() });
    this.card.addEventListener('webglcontextlost', this.takeLoss);
    this.card.addEventListener('webglcontextrestored', this.takeReturn);
    this.stops = [effect(() => this.watch()), effect(() => this.askForCard())];
  }

  dispose(): void {
    this.isOver = true;
    for (const stop of this.stops) stop();
    cancelAnimationFrame(this.request);
    this.card.removeEventListener('webglcontextlost', this.takeLoss);
    this.card.removeEventListener('webglcontextrestored', this.takeReturn);
    this.solid?.dispose();
    this.flat.dispose();
  }

  /** Reads everything that a frame depends on, and asks for one. */
  private watch(): void {
    const { layout, scale, cars, props } = this.model;
    void [layout.value, scale.value, cars.value, props.clock.shown.value, this.isCardLost.value];
    void [props.display.colourBy.value, props.display.isDark.value];
    this.ask();
  }

  private ask(): void {
    if (this.request !== 0 || this.isOver) return;
    this.request = requestAnimationFrame(() => {
      this.request = 0;
      this.draw();
    });
  }

  private draw(): void {
    this.drawOnto(this.canvas, Math.min(FINEST, devicePixelRatio));
    this.frames++;
    this.canvas.dataset.frames = String(this.frames);
    this.canvas.dataset.drawing = this.drawing;
  }

  /** Draws the blocks; a canvas without any is left empty. */
  private drawOnto(canvas: HTMLCanvasElement, pixelRatio: number): void {
    const layout = this.model.layout.peek();
    const context = canvas.getContext('2d');
    if (context === null) return;
    const { width: wide, height: high } = layout ?? this.model.size.peek();
    const [width, height] = [wide, high].map((size) => Math.floor(size * pixelRatio));
    if (canvas.width !== width || canvas.height !== height) Object.assign(canvas, { width, height });
    else context.clearRect(0, 0, width, height);
    if (layout === undefined) return;
    const style = getComputedStyle(this.canvas);
    const [ink, paper, neutral] = ['--ink', '--panel', '--pull'].map((name) => token(style, name));
    this.painter.paint(this.model.frame(layout, pixelRatio, { ink, paper, neutral }), context);
  }

  private get drawing(): 'flat' | 'solid' {
    return this.solid === undefined || this.isCardLost.peek() ? 'flat' : 'solid';
  }

  private get painter(): Painter {
    return this.drawing === 'solid' && this.solid !== undefined ? this.solid : this.flat;
  }

  /** Loads what draws with the graphics card, once there is an answer on screen and nothing else to do. */
  private askForCard(): void {
    if (this.isAsked || !this.model.cars.value.some(({ run }) => run.series !== undefined)) return;
    this.isAsked = true;
    const start = () => void this.loadCard();
    if (typeof requestIdleCallback === 'undefined') setTimeout(start, PATIENCE / 10);
    else requestIdleCallback(start, { timeout: PATIENCE });
  }

  private async loadCard(): Promise<void> {
    if (this.isOver) return;
    const context = this.card.getContext('webgl2', { alpha: true, antialias: true });
    if (context === null) return;
    // Where it cannot be loaded, the flat drawing stays: it says the same.
    const loaded = await import('./solid-painter.ts').catch(() => undefined);
    if (loaded === undefined || this.isOver) return;
    this.solid = new loaded.SolidPainter(this.card, context);
    this.ask();
  }

  private readonly takeLoss = (): void => {
    this.solid?.forget();
    this.isCardLost.value = true;
  };

  private readonly takeReturn = (): void => {
    this.isCardLost.value = false;
  };

  private hook(): PictureHook {
    const stage = this;
    return {
      get drawing() {
        return stage.drawing;
      },
      get frames() {
        return stage.frames;
      },
      cellToPixel: (car, i, j) => {
        const placed = stage.model.layout.peek()?.blocks.find(({ role }) => role === car);
        if (placed === undefined) throw new RangeError(`no car "${car}" in the picture`);
        return cellToPixel(placed.block, placed.projection, { i, j });
      },
      pixelAt: (x, y) => {
        const ratio = stage.canvas.width / (stage.model.layout.peek()?.width ?? 1);
        const data = stage.canvas.getContext('2d')?.getImageData(Math.floor(x * ratio), Math.floor(y * ratio), 1, 1);
        return [...(data?.data ?? [])];
      },
      drawnAt: (fineness) => {
        if (stage.model.layout.peek() === undefined) return undefined;
        const canvas = document.createElement('canvas');
        stage.drawOnto(canvas, fineness);
        return canvas;
      },
      gpu: () => stage.solid?.content(),
      loseContext: () => stage.solid?.loseContext(),
      restoreContext: () => stage.solid?.restoreContext(),
    };
  }
}

/** A colour token of the page, written as #rrggbb, or #rgb where that is the same. */
function token(style: CSSStyleDeclaration, name: string): Colour {
  const digits = style.getPropertyValue(name).trim().slice(1);
  const whole = digits.length === 3 ? [...digits].map((digit) => digit + digit).join('') : digits;
  const written = Number.parseInt(whole, 16);
  return [written >> 16, (written >> 8) & 255, written & 255];
}
