import { describe, expect, it } from 'vitest';
import { explainIce } from '../../../src/sim/answers/ice-sentence.ts';
import type { PullSummary } from '../../../src/sim/answers/pull-summary.ts';

const pullsWith = (...masses: number[]) =>
  masses.map((iceMass, k) => ({ pull: k + 1, atEnd: { iceMass } }) as unknown as PullSummary);

describe('how long ice lasts', () => {
  it('names the first pull that ends without any', () => {
    expect(explainIce(pullsWith(8.5, 3.3, 0.02, 0.009, 0), 10)).toBe('The ice is gone by the end of pull 4.');
  });

  it('or what is left after the last', () => {
    expect(explainIce(pullsWith(18, 7), 20)).toBe('35 % of the ice is left after pull 2.');
  });

  it('says nothing without ice or pulls', () => {
    expect(explainIce(pullsWith(0, 0), 0)).toBe('');
    expect(explainIce([], 10)).toBe('');
  });
});
