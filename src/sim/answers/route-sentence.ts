import type { RouteComparison } from './bypass-routes.ts';
import type { Wording } from './wording.ts';

/** Less than this is no difference [K]; own choice. */
const NOTHING = 0.05;

/**
 * What the route behind the core does here, and why, from the numbers of a comparison.
 *
 * The change of the charge is that of the air leaving the core and that of the plenum's pick-up, which add up to it.
 */
export function explainRoutes(comparison: RouteComparison, wording: Pick<Wording, 'difference' | 'power'>): string[] {
  const { before, after, chargeChangeWithoutDrop } = comparison;
  const charge = after.charge - before.charge;
  const core = after.coreOutlet - before.coreOutlet;
  const plenum = charge - core;
  const ofDrop = charge - chargeChangeWithoutDrop;
  const change = (kelvin: number, noun = ''): string =>
    Math.abs(kelvin) < NOTHING
      ? `as warm${noun}`
      : `${wording.difference(Math.abs(kelvin))} ${kelvin > 0 ? 'warmer' : 'cooler'}${noun}`;

  const sentences = [
    `Taken behind the core, the recirculated air makes the charge ${change(charge)} at the end of ${comparison.phase}.`,
    `Compressor inlet ${change(after.compressorInlet - before.compressorInlet)}, discharge ${change(after.discharge - before.discharge)}, casing ${change(after.casing - before.casing)}.`,
  ];
  const coolant = after.coolantIntoCore - before.coolantIntoCore;
  const given = `the core gives the coolant ${wording.power(after.heatToCore)} instead of ${wording.power(before.heatToCore)}`;
  const entering = Math.abs(coolant) < NOTHING ? '' : `, which comes back ${change(coolant)}`;
  const parts = [`air leaves the core ${change(core)}: ${given}${entering}`];
  if (Math.abs(plenum) >= NOTHING) {
    const times = (1 + after.recirculation).toFixed(1);
    parts.push(
      plenum < 0
        ? `the plenum adds ${wording.difference(-plenum)} less, since ${times} times the engine's air passes it`
        : `the plenum adds ${wording.difference(plenum)} more`,
    );
  }
  sentences.push(`Why: ${parts.join('; ')}.`);
  if (ofDrop >= NOTHING) {
    sentences.push(
      `The core pressure drop, which the recirculated air now has to overcome, warms the charge by ${wording.difference(ofDrop)} (power into the gas ${wording.power(before.gasPower)}, then ${wording.power(after.gasPower)}); the route alone makes the charge ${change(chargeChangeWithoutDrop)}.`,
    );
  }
  if (before.pullPeak !== undefined && after.pullPeak !== undefined) {
    sentences.push(`The pull that follows peaks ${change(after.pullPeak - before.pullPeak)}.`);
  }
  return sentences;
}
