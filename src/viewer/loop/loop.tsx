import './loop.css';
import { useComputed } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { type OperatingPoint, operatingPoint, WHY_NO_ANSWER } from '../../sim/index.ts';
import { useSize } from '../figures/use-size.ts';
import { FoldOut, LOOP_ID } from '../fold-out.tsx';
import { degrees } from '../format.ts';
import type { PageProps } from '../page.tsx';
import type { Car } from '../state/cars.ts';
import { Curves } from './curves-figure.tsx';
import { Losses } from './losses.tsx';
import { SchemeFigure } from './scheme-figure.tsx';

/** A car and where its pump and loop meet; no point where no pump is ever on. */
export interface PointOf {
  readonly name: string;
  readonly role: 'before' | 'after';
  readonly car: Car;
  readonly point: OperatingPoint | undefined;
}

/** The coolant loop: its parts, where pump and loop meet, and what takes the pressure. */
export function Loop(props: PageProps) {
  const { session, display } = props;
  // About a millisecond a car: no work for another thread.
  const cars = useComputed((): PointOf[] => {
    const [before, after] = [session.before.value, session.after.value];
    return [
      ...(before
        ? [{ name: 'Before', role: 'before', car: before, point: operatingPoint(before.config) } as const]
        : []),
      ...(after ? [{ name: 'After', role: 'after', car: after, point: operatingPoint(after.config) } as const] : []),
    ];
  });
  const inHand = cars.value[cars.value.length - 1];
  return (
    <FoldOut id={LOOP_ID} isOpen={display.isLoopOpen} session={session} title="Coolant loop">
      {inHand?.point === undefined ? (
        <p class="small">{inHand && WHY_NO_ANSWER.noPump}</p>
      ) : (
        <Body {...props} cars={cars.value} car={inHand.car} point={inHand.point} />
      )}
    </FoldOut>
  );
}

interface BodyProps extends PageProps {
  readonly cars: readonly PointOf[];
  readonly car: Car;
  readonly point: OperatingPoint;
}

function Body({ cars, car, point, ...props }: BodyProps) {
  const host = useRef<HTMLDivElement>(null);
  const size = useSize(host);
  const units = props.display.units.value;
  return (
    <div class="loop-body" ref={host}>
      <p class="small">
        Flow and pressures in the phase “{point.phase}”, all coolant at {degrees(point.temperature, units, 0)}.
        Temperatures and ice at the time of the clock.
      </p>
      <SchemeFigure {...props} car={car} point={point} width={size.value.width} />
      <Curves {...props} cars={cars} />
      <Losses {...props} point={point} />
    </div>
  );
}
