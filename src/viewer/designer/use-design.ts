import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { CoreDesignStudy } from '../../sim/index.ts';
import type { PageProps } from '../page.tsx';
import type { Car } from '../state/cars.ts';

/** What a car's core comes to; no study where no pull comes to its end or its coolant stands still. */
interface FoundDesign {
  readonly of: Car;
  readonly study: CoreDesignStudy | undefined;
}

interface InUse {
  /** the newest there is, of this car or of the one before it */
  readonly found: FoundDesign | undefined;
  readonly isLate: boolean;
  readonly failure: string | undefined;
}

/** Keeps what follows from the measures up with the car in hand, while a hand moves too: a study takes three pulls. */
export function useDesign({ session, solving }: PageProps): InUse {
  const found = useSignal<FoundDesign | undefined>(undefined);
  const failure = useSignal<string | undefined>(undefined);
  const isBusy = useRef(false);
  const isGone = useRef(false);
  useEffect(
    () => () => {
      isGone.current = true;
    },
    [],
  );
  const wanted = (): Car | undefined => {
    const car = session.inHand.peek();
    return isGone.current || car?.config.core.geometry === undefined || found.peek()?.of === car ? undefined : car;
  };
  useSignalEffect(() => {
    void session.inHand.value;
    void keepUp();
  });
  // One at a time: what has changed meanwhile is worked out after it, the newest only.
  const keepUp = async () => {
    if (isBusy.current) return;
    isBusy.current = true;
    for (let car = wanted(); car !== undefined; car = wanted()) {
      const reply = await solving.studyCore(car);
      failure.value = reply.kind === 'failed' ? reply.message : undefined;
      if (reply.kind === 'studied') found.value = { of: car, study: reply.result };
      // One that was ended along with another study is asked for again; one that cannot be worked out is not.
      if (reply.kind === 'failed' && session.inHand.peek() === car) break;
    }
    isBusy.current = false;
  };
  return { found: found.value, isLate: found.value?.of !== session.inHand.value, failure: failure.value };
}
