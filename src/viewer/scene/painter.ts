import type { Colour } from '../colour-scale.ts';
import type { CarRole } from '../state/cars.ts';
import type { Block, LineWeight } from './block.ts';
import type { Projection } from './projection.ts';

/** One block of a picture at one time. */
export interface FrameBlock {
  readonly role: CarRole;
  readonly block: Block;
  readonly projection: Projection;
  /** red, green, blue, 255 of each cell, i along the air and j along the coolant, row-major */
  readonly colours: Uint8ClampedArray;
  /** strips that carry no colour: tubes where the air is shown, fins where the coolant is */
  readonly neutralPart: 'fin' | 'tube' | undefined;
}

/** All that a painter needs to draw the blocks; sizes in pixels of the page. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  /** pixels of the screen per pixel of the page */
  readonly pixelRatio: number;
  readonly blocks: readonly FrameBlock[];
  /** lines, what the picture stands on, and what has no colour */
  readonly ink: Colour;
  readonly paper: Colour;
  readonly neutral: Colour;
}

/** Draws frames: with the graphics card or without. Both draw the same. */
export interface Painter {
  /** Paints a frame onto a cleared canvas of the frame's size in pixels of the screen. */
  paint(frame: Frame, onto: CanvasRenderingContext2D): void;
  dispose(): void;
}

/** How a line is drawn: width [pixels], cover, 0 to 1, and what it is drawn in. */
export interface LineStyle {
  readonly width: number;
  readonly cover: number;
  readonly in: 'ink' | 'paper';
  /** fainter on a small block, so that its colours stay clear */
  readonly fades: boolean;
}

/** A band of paper under the outlines: the darkest and the lightest temperatures come near to the ink. */
export const HALO: LineStyle = { width: 3.4, cover: 0.42, in: 'paper', fades: false };

export const LINES: Readonly<Record<LineWeight, LineStyle>> = {
  outline: { width: 1.2, cover: 0.95, in: 'ink', fades: false },
  layer: { width: 1, cover: 0.45, in: 'ink', fades: true },
  fin: { width: 1, cover: 0.3, in: 'ink', fades: true },
  cell: { width: 1, cover: 0.35, in: 'ink', fades: true },
};

/** Lines that fade have all their cover at this scale and none at nothing [pixels per length of a core]. */
const WHOLE_COVER_AT = 240;

export const strengthAt = (scale: number): number => Math.min(1, (scale / WHOLE_COVER_AT) ** 2);
