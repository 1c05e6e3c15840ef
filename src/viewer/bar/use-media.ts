import { type ReadonlySignal, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';

/** Whether a media query holds, kept up to date. */
export function useMedia(query: string): ReadonlySignal<boolean> {
  const holds = useSignal(window.matchMedia(query).matches);
  useEffect(() => {
    const list = window.matchMedia(query);
    const take = () => {
      holds.value = list.matches;
    };
    take();
    list.addEventListener('change', take);
    return () => list.removeEventListener('change', take);
  }, [query, holds]);
  return holds;
}
