/** Letters to add, drop, change or swap with a neighbour to make `b` of `a` (optimal string alignment). */
function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min(last[j] + 1, row[j - 1] + 1, last[j - 1] + (same ? 0 : 1));
      const isSwap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (isSwap) least = Math.min(least, beforeLast[j - 2] + 1);
      row.push(least);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length];
}

const folded = (word: string): string => word.toLowerCase().replace(/[\s_-]/g, '');

/**
 * The word of `known` that `typed` was probably meant to be: the same but for case and separators, one beginning with
 * the other, or at most a third of its letters wrong.
 */
export function nearestWord(typed: string, known: readonly string[]): string | undefined {
  const wanted = folded(typed).slice(0, 60);
  let best: string | undefined;
  let least = Math.max(1, Math.floor(wanted.length / 3)) + 1;
  for (const word of known) {
    const candidate = folded(word);
    const isBeginning = wanted.length > 3 && (candidate.startsWith(wanted) || wanted.startsWith(candidate));
    const distance = isBeginning ? 0.5 : editDistance(wanted, candidate);
    if (distance < least) {
      least = distance;
      best = word;
    }
  }
  return best;
}
