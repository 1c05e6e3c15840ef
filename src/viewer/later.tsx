import { type Signal, signal } from '@preact/signals';
import type { FunctionComponent } from 'preact';
import { useEffect } from 'preact/hooks';

/**
 * A part of the page whose script is fetched when it is first shown: what most visits never open need not be loaded.
 *
 * @param load - fetches the component; asked for once
 */
export function later<Props extends object>(load: () => Promise<FunctionComponent<Props>>): FunctionComponent<Props> {
  const loaded: Signal<{ readonly Part: FunctionComponent<Props> } | undefined> = signal(undefined);
  let isAsked = false;
  return function Later(props: Props) {
    useEffect(() => {
      if (isAsked) return;
      isAsked = true;
      void load().then((Part) => {
        loaded.value = { Part };
      });
    }, []);
    const Part = loaded.value?.Part;
    return Part === undefined ? <p class="small loading">Loading.</p> : <Part {...props} />;
  };
}
