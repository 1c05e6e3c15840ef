import { WEIGHT_1, WEIGHT_2 } from './sdirk2.ts';
import type { StageSystem } from './stage-system.ts';

/**
 * The solver's own energy account: in every accepted step the rise of the stored energy must be what crossed the
 * boundary, as booked by the stages. A guard against slips of the pen; it says nothing about accuracy.
 */
export interface Ledger {
  /** energy of each booked power until now [J] */
  readonly energies: Float64Array;
  /** stored energy now [J] */
  stored: number;
  storedAtStart: number;
  /** sum of the magnitudes of all boundary energies [J] */
  moved: number;
  /** worst gap of any step over the heat moved until then [-] */
  worstGap: number;
}

export function openLedger(system: StageSystem): Ledger {
  return { energies: new Float64Array(system.powerCount), stored: 0, storedAtStart: 0, moved: 0, worstGap: 0 };
}

/** Books an accepted step of length `h` that ends with `stored` [J]. */
export function bookStep(
  ledger: Ledger,
  system: StageSystem,
  h: number,
  powers1: Float64Array,
  powers2: Float64Array,
  stored: number,
): void {
  let net = 0;
  for (let k = 0; k < system.powerCount; k++) {
    const energy = h * (WEIGHT_1 * powers1[k] + WEIGHT_2 * powers2[k]);
    ledger.energies[k] += energy;
    if (k < system.boundaryCount) {
      net += energy;
      ledger.moved += Math.abs(energy);
    }
  }
  const gap = Math.abs(stored - ledger.stored - net);
  ledger.stored = stored;
  if (ledger.moved > 0) ledger.worstGap = Math.max(ledger.worstGap, gap / ledger.moved);
}
