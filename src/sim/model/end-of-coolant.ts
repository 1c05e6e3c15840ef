import { createCoolant } from '../fluids/coolant.ts';
import type { Config } from '../scenario/config.ts';
import { type Sentence, sentence } from '../sentence.ts';
import type { ChargeSystem } from './charge-system.ts';

/** Where the coolant boils or freezes, at what temperature, and what its limit follows from. */
export function explainEnd(
  end: 'boiling' | 'freezing',
  system: ChargeSystem,
  state: Float64Array,
  coolant: Config['coolant'],
): Sentence {
  const { extremes, ring } = system;
  const flow = sentence`coolant flow ${{ flow: ring.flow }}`;
  if (end === 'freezing') {
    const coldest = extremes.coldestCoolant;
    const firstIce = system.reservoir.freezingPointIn(state);
    return sentence`coolant freezes ${placeOf(system, state, coldest)}: ${{ temperature: coldest }} reached, first ice at ${{ temperature: firstIce }}, ${flow}`;
  }
  const hottest = extremes.hottestCoolant;
  const { capPressure, glycolByVolume, glycol } = coolant;
  const limit = sentence`boiling point ${{ temperature: ring.boilingPoint }} (${{ pressure: capPressure }} cap, ${{ pressure: ring.outsidePressure }} outside, `;
  const plainWater = createCoolant(0).boilingPoint(ring.outsidePressure + capPressure);
  const mix =
    glycolByVolume === 0
      ? 'plain water'
      : sentence`${Number((100 * glycolByVolume).toPrecision(4))} % ${glycol} glycol as an ideal mixture; plain water ${{ temperature: plainWater }}`;
  return sentence`coolant boils ${placeOf(system, state, hottest)}: ${{ temperature: hottest }} reached, ${limit}${mix}), ${flow}`;
}

/** Where the coolant of the state examined last has this temperature, one of its extremes. */
function placeOf({ extremes, ring }: ChargeSystem, state: Float64Array, temperature: number): string {
  if (extremes.hottestCoolant === extremes.coldestCoolant) return 'everywhere in the loop';
  // A layer of the tank is all that is left where no part of the ring has it.
  return ring.placeOf(state, temperature) || 'in the tank';
}
