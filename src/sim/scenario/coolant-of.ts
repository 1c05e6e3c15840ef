import { createCoolant } from '../fluids/coolant.ts';
import { toSi } from '../units.ts';
import type { Values } from './shape.ts';

/** Density and heat capacity of the coolant where a file takes them, SI; undefined where a key of it is at fault. */
export function coolantOf({
  coolant: { glycol, glycolByVolume, propertiesAt },
}: Values): { readonly density: number; readonly heatCapacity: number } | undefined {
  // A word at fault reads as '', whatever its type says.
  if (Number.isNaN(glycolByVolume + propertiesAt) || !['ethylene', 'propylene'].includes(glycol)) return undefined;
  const mix = createCoolant(toSi(glycolByVolume, '%'), glycol);
  const at = toSi(propertiesAt, 'degC');
  return { density: mix.density(at), heatCapacity: mix.heatCapacity(at) };
}
