import { RECOVERED_WITHIN, type RestStudy } from './rest-time.ts';
import { countedPulls, type Wording, written } from './wording.ts';

/** How long to rest for so many pulls, and how soon the coolant has recovered from one. */
export function explainRest(study: RestStudy, wording: Wording): string[] {
  const { pulls, now, countNow, needed, curve, recovery, recoveryStopped } = study;
  const { rest: longest, count: countAtLongest } = curve[curve.length - 1];
  const has = `with the ${wording.duration(now)} of the cycle it is ${countNow}`;
  const said =
    needed === undefined
      ? `No rest makes ${countedPulls(pulls)}: ${has}${countAtLongest === countNow ? `, and with ${wording.duration(longest)} no more` : `, with ${wording.duration(longest)} ${countAtLongest}`}.`
      : `For ${countedPulls(pulls)} it takes ${wording.duration(needed)} of rest between them${needed <= curve[0].rest ? ' or less; no shorter one was tried' : ''}; ${has} of ${pulls}.`;
  const within = wording.difference(RECOVERED_WITHIN);
  const sentences = [said];
  if (countAtLongest < countNow) {
    sentences.push(
      `Longer is not better here: with ${wording.duration(longest)} it is ${countAtLongest}. What waits warms up, or melts.`,
    );
  }
  if (recoveryStopped !== undefined) {
    return [
      ...sentences,
      `In an hour of rest after the first pull the run stops: ${written(recoveryStopped, wording)}.`,
    ];
  }
  sentences.push(
    recovery === undefined
      ? `An hour after the first pull the coolant is still not back within ${within} of where that pull began.`
      : recovery === 0
        ? `The first pull leaves the coolant no more than ${within} warmer than where it began.`
        : `${wording.duration(recovery)} after the first pull the coolant is back within ${within} of where that pull began.`,
  );
  return sentences;
}
