import { type ReadonlySignal, useSignal, useSignalEffect } from '@preact/signals';
import type { Display } from '../state/display.ts';

/** Colours and font of the page for what is drawn on a canvas. */
export interface Palette {
  readonly ink: string;
  readonly ink2: string;
  readonly line: string;
  readonly edge: string;
  readonly panel: string;
  readonly pull: string;
  readonly before: string;
  readonly after: string;
  /** family only */
  readonly font: string;
}

function readPalette(): Palette {
  const style = getComputedStyle(document.documentElement);
  const token = (name: string) => style.getPropertyValue(name).trim();
  return {
    ink: token('--ink'),
    ink2: token('--ink2'),
    line: token('--line'),
    edge: token('--edge'),
    panel: token('--panel'),
    pull: token('--pull'),
    before: token('--before'),
    after: token('--accent'),
    font: getComputedStyle(document.body).fontFamily,
  };
}

/** The page's tokens, read again when light and dark change. */
export function usePalette(display: Display): ReadonlySignal<Palette> {
  const palette = useSignal(readPalette());
  useSignalEffect(() => {
    display.isDark.value;
    // The page has its new theme only when all that follows the signal has run.
    const frame = requestAnimationFrame(() => {
      palette.value = readPalette();
    });
    return () => cancelAnimationFrame(frame);
  });
  return palette;
}
