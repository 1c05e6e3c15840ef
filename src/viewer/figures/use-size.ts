import { type ReadonlySignal, useSignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useLayoutEffect } from 'preact/hooks';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The size of an element, kept up with it; zero until it is on the page. */
export function useSize(element: RefObject<HTMLElement | null>): ReadonlySignal<Size> {
  const size = useSignal<Size>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    if (element.current === null) return;
    const observer = new ResizeObserver(([{ contentRect }]) => {
      const { width, height } = contentRect;
      if (width !== size.peek().width || height !== size.peek().height) size.value = { width, height };
    });
    observer.observe(element.current);
    return () => observer.disconnect();
  }, [element, size]);
  return size;
}
