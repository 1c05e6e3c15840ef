import { createCoolant } from '../fluids/coolant.ts';
import type { Config } from '../scenario/config.ts';
import { FILE_WORDING, type Wording } from './wording.ts';

/** What every report carries. */
export const ESTIMATE_CAUTION = "An estimate: keep the engine's own knock and temperature protections active.";

/** Where a loop is looked into for a fault. */
export const LOOP_CAUTIONS: readonly string[] = [
  'A low or falling coolant level may mean that the core leaks coolant into the engine: stop, and pressure-test the core before the engine runs again.',
  'Never open a hot pressure cap.',
];

/** Where the mix freezes, beside the coldest air and coolant that the scenario names. */
export function freezeCaution({ coolant, ambient, start, cycle }: Config, wording: Wording = FILE_WORDING): string {
  const { freezingPoint } = createCoolant(coolant.glycolByVolume, coolant.glycol);
  const phases = [...cycle.before, ...cycle.block, ...cycle.after];
  const outside = phases.flatMap(({ outsideTemperature: { from, to } }) => [from, to]);
  const coldest = Math.min(ambient.temperature, start.coolant, start.reservoir, ...outside);
  return `This mix begins to freeze at ${wording.temperature(freezingPoint)}; the coldest here is ${wording.temperature(coldest)}, and a night in storage may be colder. Frozen coolant splits pump and core.`;
}
