import { type CarAgreement, CORE_FACTORS } from './car-agreement.ts';
import type { Wording } from './wording.ts';

/** What the comparison says, in whole sentences: the misses, the verdict, and what to look at. */
export function explainAgreement(agreement: CarAgreement, wording: Pick<Wording, 'difference'>): string[] {
  const { pulls, meanMiss, rmsMiss, fit, verdict, gaugeStep } = agreement;
  const { difference } = wording;
  const side = meanMiss < 0 ? 'below' : 'above';
  const hidden = difference(gaugeStep / 2);
  const doubt = `${fit.low.toFixed(2)} to ${fit.high.toFixed(2)}`;
  const sentences = [
    pulls.length === 1
      ? `At the end of one pull the model reads ${difference(Math.abs(meanMiss))} ${side} the gauge.`
      : `At the end of ${pulls.length} pulls the model reads ${difference(Math.abs(meanMiss))} ${side} the gauge on average, ${difference(rmsMiss)} rms.`,
  ];
  if (verdict === 'within the gauge') {
    sentences.push(
      `They agree within what the gauge can show: no pull is off by more than half a step, ${hidden}.`,
      `Anything from ${doubt} times the typed core conductance would agree about as well.`,
    );
  } else if (verdict === 'core factor') {
    sentences.push(
      `A core conductance of ${fit.factor.toFixed(2)} times the typed fits, ${doubt} with the doubt of gauge and misses; ${difference(fit.rmsLeft)} rms is left, no more than the gauge hides.`,
      causeOf(fit),
    );
  } else {
    sentences.push(
      `No one factor of core conductance fits: the best, ${fit.factor.toFixed(2)}, leaves ${difference(fit.rmsLeft)} rms where the gauge hides ${hidden}.`,
      ...(pulls.length === 1 ? [] : [pattern(agreement, difference)]),
    );
  }
  if (fit.isAtEnd) {
    sentences.push(
      `That factor is at the end of the range that was searched, ${CORE_FACTORS[0]} to ${CORE_FACTORS[1]}: look for a mistake in what was typed or read.`,
    );
  }
  if (pulls.length === 1) {
    sentences.push('One reading cannot tell the core from anything else: read at least three pulls.');
  }
  return sentences;
}

/** What else could be behind a factor. */
function causeOf({ low, high }: CarAgreement['fit']): string {
  if (low <= 1 && high >= 1) return 'The typed one lies within that doubt.';
  return high < 1
    ? 'Before typing it over look for what else makes a core weak: air in it, low coolant flow, air that leaks past it.'
    : 'Before typing it over look for what else makes a gauge read low: more coolant flow than typed, cooler intake air, a slow sensor.';
}

/** How the misses that are left run over the pulls, and where that points. */
function pattern({ drift, gaugeStep, hasExchanger }: CarAgreement, difference: Wording['difference']): string {
  if (Math.abs(drift) <= gaugeStep) {
    return 'What is left does not grow or fall from pull to pull: look at what differed between the pulls (length, rest, air at the front) and at the readings.';
  }
  const [heats, stored, exchanger] =
    drift > 0
      ? ['less', 'more coolant stored', 'a better front exchanger']
      : ['more', 'less coolant stored', 'a weaker front exchanger'];
  const parts = hasExchanger ? 'the tank or the front exchanger' : 'the tank';
  const points = hasExchanger ? `${stored} or ${exchanger}` : stored;
  return `From the first pull read to the last the car heats up ${difference(Math.abs(drift))} ${heats} than the model: that points to ${parts} rather than the core, to ${points} than typed, or to other rests.`;
}
