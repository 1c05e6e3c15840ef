import { capitalised, degrees } from '../format.ts';
import type { PageProps } from '../page.tsx';
import { describeClock, plannedPhases } from '../time/phases.ts';

/** Whose numbers a saved picture shows, and from when: what stands above it. */
export function pictureHead({ session, clock, display }: PageProps): string[] {
  const [before, after] = [session.before.value, session.after.value];
  const inHand = session.inHand.value;
  if (before === undefined || inHand === undefined) return ['Soakbench'];
  const cars = after === undefined ? capitalised(before.label) : `Before: ${before.label}. After: ${after.label}`;
  const limit = degrees(inHand.config.limit.chargeTemperature, display.units.value);
  const time = describeClock(plannedPhases(inHand.config.cycle), clock.shown.value);
  const isPart = [session.beforeRun.value, session.afterRun.value].some(
    ({ kind }) => kind !== 'solved' && kind !== 'waiting',
  );
  return [
    `Soakbench: ${before.scenario.values.name}`,
    `${cars}. Limit ${limit}. At ${time}.${isPart ? ' Part of a run: the rest is not solved.' : ''}`,
  ];
}
