import type { RouteStudy } from '../../sim/index.ts';
import type { PageProps } from '../page.tsx';
import type { Car } from '../state/cars.ts';
import { type FoundStudy, useKeptStudy, useWhyWait, type WantedStudy } from '../state/use-kept-study.ts';

/** What was worked out, and the car it belongs to. */
export type Found = FoundStudy<Car, RouteStudy>;

/** Keeps the routes up with the car in hand for as long as they are on screen. */
export function useRoutes({ session, solving }: PageProps) {
  const wait = useWhyWait(session);
  const kept = useKeptStudy((): WantedStudy<Car, RouteStudy> => {
    const car = session.inHand.value;
    const why = wait.value;
    if (car === undefined || why !== undefined) return { why: why ?? '' };
    return { key: car, start: () => solving.studyRoutes(car) };
  }, solving.cancelRoutes);
  /** whether the result belongs to a car that is no longer in hand */
  const isLate = kept.found !== undefined && kept.found.key !== session.inHand.value;
  return { ...kept, isLate };
}
