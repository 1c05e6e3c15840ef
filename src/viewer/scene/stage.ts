import { effect, type Signal } from '@preact/signals';
import type { Colour } from '../colour-scale.ts';
import { FlatPainter } from './flat-painter.ts';
import type { CarRole } from './layout.ts';
import type { Painter } from './painter.ts';
import { cellToPixel } from './picking.ts';
import type { PictureModel } from './picture-model.ts';
import type { Point } from './projection.ts';
import type { CardContent, SolidPainter } from './solid-painter.ts';

/** What the canvas that is shown tells and lets do, as its property `soakbenchPicture`; for checks of the picture. */
export interface PictureHook {
  readonly drawing: 'flat' | 'solid';
  /** frames drawn since the picture was put up */
  readonly frames: number;
  /** pixel of the page, from the canvas's corner, in the middle of a cell (from 0) as a level face shows it */
  cellToPixel(car: CarRole, i: number, j: number): Point;
  /** red, green, blue and cover, 0 to 255 */
  pixelAt(x: number, y: number): readonly number[];
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
  private readonly isCardLost: Signal<boolean>;
  private readonly model: PictureModel;
  private readonly canvases: Readonly<Record<'flat' | 'solid', HTMLCanvasElement>>;
  private readonly flat: FlatPainter;
  private solid: SolidPainter | undefined;
  private frames = 0;
  private request = 0;
  private isOver = false;
  private readonly stops: (() => void)[] = [];

  constructor(model: PictureModel, flat: HTMLCanvasElement, solid: HTMLCanvasElement, isCardLost: Signal<boolean>) {
    this.isCardLost = isCardLost;
    this.model = model;
    this.canvases = { flat, solid };
    this.flat = new FlatPainter(flat);
    for (const canvas of [flat, solid]) Object.assign(canvas, { soakbenchPicture: this.hook() });
    this.showCanvas();
    const listen = (event: string, act: () => void) => {
      solid.addEventListener(event, act);
      this.stops.push(() => solid.removeEventListener(event, act));
    };
    listen('webglcontextlost', () => this.takeLoss(true));
    listen('webglcontextrestored', () => this.takeLoss(false));
    this.stops.push(
      effect(() => this.watch()),
      effect(() => this.startCard()),
    );
  }

  dispose(): void {
    this.isOver = true;
    for (const stop of this.stops) stop();
    cancelAnimationFrame(this.request);
    this.solid?.dispose();
    this.flat.dispose();
  }

  private get painter(): Painter {
    return this.solid === undefined || this.isCardLost.peek() ? this.flat : this.solid;
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
    const layout = this.model.layout.peek();
    if (layout === undefined) return;
    const style = getComputedStyle(this.canvases.flat);
    const pixelRatio = Math.min(FINEST, devicePixelRatio);
    this.painter.paint(this.model.frame(layout, pixelRatio, token(style, '--ink'), token(style, '--pull')));
    this.frames++;
    for (const canvas of Object.values(this.canvases)) canvas.dataset.frames = String(this.frames);
  }

  private startCard(): void {
    if (!this.model.cars.value.some(({ run }) => run.series !== undefined)) return;
    if (this.solid !== undefined || this.isOver) return;
    const start = () => void this.loadCard();
    if (typeof requestIdleCallback === 'undefined') setTimeout(start, PATIENCE / 10);
    else requestIdleCallback(start, { timeout: PATIENCE });
  }

  private isLoading = false;

  private async loadCard(): Promise<void> {
    if (this.isLoading || this.isOver) return;
    this.isLoading = true;
    const canvas = this.canvases.solid;
    const context = canvas.getContext('webgl2', { alpha: true, antialias: true });
    if (context === null) return;
    try {
      const { SolidPainter } = await import('./solid-painter.ts');
      if (this.isOver) return;
      this.solid = new SolidPainter(canvas, context);
    } catch {
      // The flat drawing says the same: it stays.
      return;
    }
    this.showCanvas();
    this.ask();
  }

  private takeLoss(isLost: boolean): void {
    if (isLost) this.solid?.forget();
    this.isCardLost.value = isLost;
    this.showCanvas();
  }

  private showCanvas(): void {
    const isSolid = this.painter !== this.flat;
    this.canvases.flat.hidden = isSolid;
    this.canvases.solid.hidden = !isSolid;
  }

  private hook(): PictureHook {
    const stage = this;
    return {
      get drawing() {
        return stage.painter === stage.flat ? 'flat' : 'solid';
      },
      get frames() {
        return stage.frames;
      },
      cellToPixel: (car, i, j) => {
        const placed = stage.model.layout.peek()?.blocks.find(({ role }) => role === car);
        if (placed === undefined) throw new RangeError(`no car "${car}" in the picture`);
        return cellToPixel(placed.block, placed.projection, { i, j });
      },
      pixelAt: (x, y) => stage.painter.pixelAt([x, y]),
      gpu: () => stage.solid?.content(),
      loseContext: () => stage.solid?.loseContext(),
      restoreContext: () => stage.solid?.restoreContext(),
    };
  }
}

/** A colour token of the page, written as #rrggbb. */
function token(style: CSSStyleDeclaration, name: string): Colour {
  const written = Number.parseInt(style.getPropertyValue(name).trim().slice(1), 16);
  return [(written >> 16) & 255, (written >> 8) & 255, written & 255];
}
