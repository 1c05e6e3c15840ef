import { type NextMeasurement, TOLD_APART, type Triage, type TriageCandidate } from './triage.ts';
import { QUANTITIES } from './triage-quantities.ts';
import type { Wording } from './wording.ts';

/** A reading further than this from every cause fits none of them, in doubts; own choice. */
const FAR = 3;

/** What the two figures point to, what they cannot tell apart, and what to measure next. */
export function explainTriage({ leading, next, notRun }: Triage, wording: Wording): string[] {
  const [first, ...others] = leading;
  const sentences = [];
  if (first.distance > FAR) {
    sentences.push(
      `No single fault that is looked for gives these two figures: the nearest is ${first.distance.toFixed(1)} times the doubt away. Check both measurements.`,
      `Nearest${others.length > 0 ? ', and too near each other to tell apart' : ''}: ${listOf(leading)}.`,
    );
  } else if (leading.some(({ cause, distance }) => cause === 'healthy' && distance < TOLD_APART)) {
    sentences.push('These are the figures of a healthy car within their doubt.');
    const rest = leading.filter(({ cause }) => cause !== 'healthy');
    if (rest.length > 0) sentences.push(`Too near to tell from it: ${listOf(rest)}.`);
  } else {
    sentences.push(`This looks most like ${first.words}.`);
    if (others.length > 0) sentences.push(`Too near to tell from it: ${listOf(others)}.`);
  }
  if (next !== undefined) {
    sentences.push(`Measure next: ${next.quantity}. It would be ${underEach(next, leading, wording)}.`);
  } else if (leading.length > 1) {
    sentences.push('Nothing else that is looked at tells them apart.');
  }
  if (notRun.length > 0) sentences.push(`The run does not come to the end of that pull with: ${notRun.join(', ')}.`);
  return sentences;
}

/** "6.5 L/min with the pump off; 13.2 L/min with ..., ...": causes that read alike together. */
function underEach(
  { quantity, values }: NextMeasurement,
  leading: readonly TriageCandidate[],
  wording: Wording,
): string {
  const write = QUANTITIES.find(({ name }) => name === quantity)?.write ?? String;
  const alike = new Map<string, string[]>();
  leading.forEach(({ words }, k) => {
    const written = Number.isFinite(values[k]) ? write(values[k], wording) : 'not reached';
    alike.set(written, [...(alike.get(written) ?? []), words]);
  });
  return [...alike].map(([written, words]) => `${written} with ${words.join(', ')}`).join('; ');
}

const listOf = (candidates: readonly TriageCandidate[]): string => candidates.map(({ words }) => words).join('; ');
