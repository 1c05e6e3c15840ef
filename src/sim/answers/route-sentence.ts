import type { RouteComparison, RouteFigures } from './bypass-routes.ts';
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
  const given = heatWords(before.heatToCore, after.heatToCore, wording);
  const entering = Math.abs(coolant) < NOTHING ? '' : `, which comes back ${change(coolant)}`;
  const parts = [`air leaves the core ${change(core)}: ${given}${entering}`];
  if (Math.abs(plenum) >= NOTHING) parts.push(plenumWords(before, after, wording));
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

/** What the core gives the coolant, or takes from it where the air is the colder of the two, by either route [W]. */
function heatWords(before: number, after: number, { power }: Pick<Wording, 'power'>): string {
  const [was, is] = [power(Math.abs(before)), power(Math.abs(after))];
  const said = after < 0 ? `the core takes ${is} from the coolant` : `the core gives the coolant ${is}`;
  const isSameWay = before < 0 === after < 0;
  if (isSameWay) return was === is ? `${said}, as by the other route` : `${said} instead of ${was}`;
  return `${said} instead of ${before < 0 ? 'taking' : 'giving'} ${was}`;
}

/** How the plenum's change of the charge differs between the routes; more air past it is changed less. */
function plenumWords(before: RouteFigures, after: RouteFigures, { difference }: Pick<Wording, 'difference'>): string {
  const [was, is] = [before, after].map(({ charge, coreOutlet }) => charge - coreOutlet);
  const does = (kelvin: number, size = kelvin) => `${kelvin < 0 ? 'takes' : 'adds'} ${difference(Math.abs(size))}`;
  const isSameWay = was < 0 === is < 0;
  if (!isSameWay) return `the plenum ${does(is)}, where it ${does(was)} by the other route`;
  const grows = Math.abs(is) - Math.abs(was);
  const change = `the plenum ${does(is, grows)}`;
  if (grows > 0) return `${change} more`;
  const times = (1 + after.recirculation).toFixed(1);
  const why = times === '1.0' ? '' : `, since ${times} times the engine's air passes it`;
  return `${change} less${why}`;
}
