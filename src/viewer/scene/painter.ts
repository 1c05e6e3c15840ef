import type { Colour } from '../colour-scale.ts';
import type { Block, LineWeight } from './block.ts';
import type { CarRole } from './layout.ts';
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
  readonly ink: Colour;
  readonly neutral: Colour;
}

/** Draws frames: with the graphics card or without. Both draw the same. */
export interface Painter {
  /** Paints a frame onto a cleared canvas of the frame's size in pixels of the screen. */
  paint(frame: Frame, onto: CanvasRenderingContext2D): void;
  dispose(): void;
}

/** Width [pixels] and cover of lines; those that fade are fainter on a small block, so that its colours stay clear. */
export const LINES: Readonly<Record<LineWeight, { width: number; cover: number; fades: boolean }>> = {
  outline: { width: 1.2, cover: 0.9, fades: false },
  layer: { width: 1, cover: 0.45, fades: true },
  fin: { width: 1, cover: 0.3, fades: true },
  cell: { width: 1, cover: 0.35, fades: true },
};

/** Lines that fade have all their cover at this scale and none at nothing [pixels per length of a core]. */
const WHOLE_COVER_AT = 240;

export const strengthAt = (scale: number): number => Math.min(1, (scale / WHOLE_COVER_AT) ** 2);
