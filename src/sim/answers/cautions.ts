import { createCoolant } from '../fluids/coolant.ts';
import { phasesOf } from '../scenario/config/cycle.ts';
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
  const outside = phasesOf(cycle).flatMap(({ outsideTemperature: { from, to } }) => [from, to]);
  const coldest = Math.min(ambient.temperature, start.coolant, start.reservoir, ...outside);
  return `This mix begins to freeze at ${wording.temperature(freezingPoint)}; the coldest here is ${wording.temperature(coldest)}, and a night in storage may be colder. Frozen coolant splits pump and core.`;
}

/** What goes with a letter to whoever tests or builds; local codes and licensed practice come first. */
export const LETTER_CAUTIONS: readonly string[] = [
  'On rollers: tie the car down and check it, keep people out of the cell, draw the exhaust off, watch carbon monoxide, wear ear and eye protection. Off rollers: a closed course only.',
  'A core leak goes into the intake. Pressure-test the core before fitting, ask for the rating of both of its sides, and stop if the coolant level falls.',
  'Never open a hot system. The cap must suit the weakest part of the loop.',
  'Fuel and spark are for whoever calibrates the engine: a cooler charge asks for a new look at both.',
  'Local codes and licensed practice come before anything here.',
];
