import { shippedDocument } from './shipped.ts';
import { edit, type LooseDocument } from './short-session.ts';

/**
 * The ridge roadster on a hot day with plain water, no cap and hardly any air at its front exchanger: three of its four
 * pulls come to their end well under the limit, then the coolant boils. No variants, no upgrades.
 */
export function boilingDocument(): LooseDocument {
  const { variants: _, upgrades: __, ...car } = structuredClone(shippedDocument('ridge-roadster'));
  const edits = {
    'coolant.glycolByVolume': 0,
    'coolant.capPressure': 0,
    'ambient.temperature': 48,
    'exchanger.blockedShare': 0.95,
    'start.coolant': 74,
    'start.metal': 74,
    'limit.chargeTemperature': 120,
  };
  for (const [path, value] of Object.entries(edits)) edit(car, path, value);
  return car;
}
