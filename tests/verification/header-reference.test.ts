import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type HeaderFlow, splitOverLayers } from '../../src/sim/correlations/header-distribution.ts';

const read = (name: string) =>
  JSON.parse(readFileSync(new URL(`./header-reference/${name}.json`, import.meta.url), 'utf8'));
const CASES: readonly HeaderFlow[] = read('inputs');
/**
 * By a general-purpose solver from the differential equations of both headers: header-reference/header_reference.py.
 */
const EXPECTED: readonly (readonly number[])[] = read('expected');

const spreadOf = (shares: readonly number[]): number =>
  (Math.max(...shares) - Math.min(...shares)) / (1 / shares.length);

describe('the split of the coolant over the layers', () => {
  it.each(CASES.map((header, k) => [header.arrangement, header.layers, k] as const))(
    '%s, %i layers: each within 1 %% of the header equations',
    (_, layers, k) => {
      const { shares } = splitOverLayers(CASES[k]);
      expect(shares).toHaveLength(layers);
      shares.forEach((share, layer) => {
        expect(Math.abs(share / EXPECTED[k][layer] - 1), `layer ${layer + 1}`).toBeLessThan(0.01);
      });
      // The headers must matter, or the check says nothing.
      expect(spreadOf(EXPECTED[k])).toBeGreaterThan(0.05);
    },
  );

  it('spreads more with ports at opposite ends than at one end', () => {
    for (const k of [0, 2]) {
      expect(spreadOf(splitOverLayers(CASES[k + 1]).shares)).toBeGreaterThan(
        spreadOf(splitOverLayers(CASES[k]).shares),
      );
    }
  });
});
