import { type Signal, signal } from '@preact/signals';

/** How the blocks are drawn; nothing here touches a car or a number. */
export interface Drawing {
  readonly hasCellLines: Signal<boolean>;
  /** tubes drawn across the stack of a usual core */
  readonly tubes: Signal<number>;
  /** gap between layers pulled apart, in layers */
  readonly apart: Signal<number>;
}

export const TUBE_CHOICES = [4, 6, 8, 10, 12];
export const APART_CHOICES = { little: 0.4, usual: 0.8, wide: 1.4 };

export function makeDrawing(): Drawing {
  return { hasCellLines: signal(false), tubes: signal(8), apart: signal(APART_CHOICES.usual) };
}
