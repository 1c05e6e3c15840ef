/** Powers booked in every stage, W, positive into the system; those that cross the boundary come first. */
export const BOUNDARY_POWERS = [
  'shaft',
  'mechanicalLoss',
  'throughflow',
  'condensation',
  'exchanger',
  'pump',
  'heatSink',
  'lines',
  'reservoir',
  'coreBay',
  'casingBay',
  'casingOil',
  'plenumBay',
  'plenumEngine',
] as const;
export const INTERNAL_POWERS = ['airToCore', 'casingToCore', 'casingToPlenum'] as const;

type PowerName = (typeof BOUNDARY_POWERS)[number] | (typeof INTERNAL_POWERS)[number];
const IN_ORDER: readonly PowerName[] = [...BOUNDARY_POWERS, ...INTERNAL_POWERS];

/** Writes powers by name to their places in the list of a stage [W]. */
export function bookPowers(booked: Readonly<Record<PowerName, number>>, list: Float64Array): void {
  for (let k = 0; k < IN_ORDER.length; k++) list[k] = booked[IN_ORDER[k]];
}

/** The list of a ledger by name, those that cross the boundary and those inside. */
export const namedEnergies = (list: Float64Array) => ({
  terms: named(BOUNDARY_POWERS, list),
  internal: named(INTERNAL_POWERS, list.subarray(BOUNDARY_POWERS.length)),
});

const named = <Name extends string>(names: readonly Name[], list: Float64Array) =>
  Object.fromEntries(names.map((name, k) => [name, list[k]])) as Record<Name, number>;
