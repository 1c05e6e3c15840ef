import { ICE_DENSITY } from '../fluids/ice.ts';
import type { StoreKind, StoreStudy } from './tank-size.ts';
import { tooFewPulls } from './why-no-answer.ts';
import { countedPulls, type Wording } from './wording.ts';

/** A size in words: "2.3 L", "10.0 kg". */
export const storeSize = (kind: StoreKind, size: number): string =>
  kind === 'tank' ? `${(1000 * size).toFixed(1)} L` : `${size.toFixed(1)} kg`;

/**
 * How big a tank, or how much ice, is enough.
 *
 * @param study - of one kind of store
 * @param pullLength - of the first pull [s]
 */
export function explainStore(
  study: StoreStudy,
  pullLength: number,
  wording: Pick<Wording, 'temperature' | 'difference' | 'duration'>,
): string[] {
  const { kind, pulls, tooFew, points, smallest, knee, tooLarge, now, soonestReturn } = study;
  const isNone = (size: number): boolean => kind === 'ice' && size === 0;
  const named = (size: number): string => {
    if (kind === 'tank') return `a tank of ${storeSize(kind, size)}`;
    return isNone(size) ? 'no ice' : `${storeSize(kind, size)} of ice`;
  };
  const sentences: string[] = [];
  const whole = points.filter(({ lastPeak }) => Number.isFinite(lastPeak));
  const [least, most] = [whole[0], whole[whole.length - 1]];
  if (smallest !== undefined) {
    const isThere = !isNone(smallest) && smallest <= now && !tooLarge.includes(now);
    const own = isNone(now) ? 'none' : storeSize(kind, now);
    const orLess = smallest > 0 && smallest === points[0].size ? ' or less; no smaller one was tried' : '';
    sentences.push(
      `For ${countedPulls(pulls)} it takes ${named(smallest)}${orLess}; the car has ${isThere ? 'that' : own}.`,
    );
    if (kind === 'ice' && smallest > 0) {
      const held = storeSize('tank', study.coolant + smallest / ICE_DENSITY);
      sentences.push(`The tank must hold ${held}: that ice and ${storeSize('tank', study.coolant)} of coolant.`);
    }
  } else if (tooFew !== undefined) {
    sentences.push(tooFewPulls(tooFew, pulls));
  } else {
    const best = Math.max(...points.map(({ count }) => count));
    sentences.push(
      `No ${kind === 'tank' ? 'tank' : 'amount of ice'} tried, up to ${storeSize(kind, points[points.length - 1].size)}, makes ${countedPulls(pulls)}: the most is ${best}.`,
    );
  }
  if (study.chilledTo !== undefined) {
    sentences.push(`With ice the tank's coolant is taken to start at ${wording.temperature(study.chilledTo)}.`);
  }
  if (least !== undefined && most !== undefined && least !== most) {
    const gain = least.lastPeak - most.lastPeak;
    const word = gain >= 0 ? 'lower' : 'higher';
    sentences.push(
      `From ${isNone(least.size) ? 'no ice' : storeSize(kind, least.size)} to ${storeSize(kind, most.size)} the peak of pull ${pulls} comes out ${wording.difference(Math.abs(gain))} ${word}.`,
    );
  }
  if (knee !== undefined) sentences.push(`Past ${storeSize(kind, knee)} each step more buys less.`);
  if (tooLarge.length > 0) {
    const sizes = tooLarge.map((size) => storeSize(kind, size)).join(', ');
    const why = kind === 'tank' ? ', since a larger tank sheds its heat more slowly' : '';
    sentences.push(`More is not always better: with ${sizes} it is fewer again${why}.`);
  }
  const late = kind === 'tank' && explainLateReturn(soonestReturn, pullLength, wording);
  if (late) sentences.push(late);
  return sentences;
}

/** Coolant that is back after this share of a pull cannot change its peak much: own judgement. */
const LATE = 0.5;

/** Why a tank as warm as the rest does little for a pull; undefined where the coolant is back in time. */
export function explainLateReturn(
  soonest: number,
  pullLength: number,
  { duration }: Pick<Wording, 'duration'>,
): string | undefined {
  if (!(soonest > LATE * pullLength && Number.isFinite(soonest))) return undefined;
  return `Coolant that leaves the core is back at it after ${duration(soonest)} at the soonest, too late to change a pull of ${duration(pullLength)} much: with all of it equally warm at the start, no tank helps the first pull.`;
}
