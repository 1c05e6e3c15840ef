import { RECOVERED_WITHIN, type RestStudy } from './rest-time.ts';
import { countedPulls, type Wording, written } from './wording.ts';

/** How long to rest for so many pulls, and how soon the coolant has recovered from one. */
export function explainRest(study: RestStudy, wording: Wording): string[] {
  const { countNow, curve } = study;
  const { rest: longest, count: countAtLongest } = curve[curve.length - 1];
  const sentences = [neededWords(study, wording)];
  if (countAtLongest < countNow) {
    sentences.push(
      `Longer is not better here: with ${wording.duration(longest)} it is ${countAtLongest}. What waits warms up, or melts.`,
    );
  }
  return [...sentences, recoveryWords(study, wording)];
}

function neededWords({ pulls, now, countNow, needed, curve }: RestStudy, { duration }: Wording): string {
  const asItIs = `with the ${duration(now)} of the cycle it is ${countNow}`;
  if (needed !== undefined) {
    const orLess = needed <= curve[0].rest ? ' or less; no shorter one was tried' : '';
    return `For ${countedPulls(pulls)} it takes ${duration(needed)} of rest between them${orLess}; ${asItIs} of ${pulls}.`;
  }
  const { rest: longest, count } = curve[curve.length - 1];
  const atLongest = count === countNow ? `and with ${duration(longest)} no more` : `with ${duration(longest)} ${count}`;
  return `No rest makes ${countedPulls(pulls)}: ${asItIs}, ${atLongest}.`;
}

function recoveryWords({ recovery, recoveryStopped }: RestStudy, wording: Wording): string {
  const within = wording.difference(RECOVERED_WITHIN);
  if (recoveryStopped !== undefined)
    return `Over the first pull and an hour of rest after it the run stops: ${written(recoveryStopped, wording)}.`;
  if (recovery === undefined)
    return `An hour after the first pull the coolant is still not back within ${within} of where that pull began.`;
  return recovery === 0
    ? `The first pull leaves the coolant no more than ${within} warmer than where it began.`
    : `${wording.duration(recovery)} after the first pull the coolant is back within ${within} of where that pull began.`;
}
