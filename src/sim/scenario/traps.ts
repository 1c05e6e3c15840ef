import { createCoolant } from '../fluids/coolant.ts';
import type { GlycolKind } from '../fluids/glycol-fits.ts';
import { figure } from '../units.ts';

interface Trap {
  readonly message: string;
  readonly value: number;
  readonly label: string;
}

/** mm; a dash size counts sixteenths of an inch of the tube's OUTSIDE diameter (SAE J514) */
const SIXTEENTH_OF_AN_INCH = 25.4 / 16;
/** bore over outside diameter of hose ends and tube of one dash size: common practice, no published source */
const NARROWEST_BORE = 0.9;

function fittingSize(text: string): Trap | undefined {
  const match = /^(?:an|jic|dash|#|-)[\s-]*(\d{1,2})(?:\s*(?:an|jic))?$|^(\d{1,2})\s*(?:an|jic)$/i.exec(text.trim());
  if (match === null) return undefined;
  const dash = Number(match[1] ?? match[2]);
  const outside = dash * SIXTEENTH_OF_AN_INCH;
  const narrowest = Math.round(NARROWEST_BORE * outside);
  return {
    message: `That is a fitting size. Dash ${dash} is about ${narrowest} to ${Math.round(outside)} mm inside. Enter the bore you can measure.`,
    value: narrowest,
    label: `Use ${narrowest} mm until it is measured`,
  };
}

/** Volume share before mixing of a share by mass, from the densities behind the coolant's own mass fraction. */
function glycolByVolume(byMass: number, kind: GlycolKind): number {
  const { massFraction } = createCoolant(0.3, kind);
  const densityRatio = (massFraction / (1 - massFraction)) * (0.7 / 0.3);
  return byMass / (byMass + (1 - byMass) * densityRatio);
}

function glycolByMass(text: string, kind: GlycolKind): Trap | undefined {
  const match = /^(\d+(?:[.,]\d+)?)\s*%?\s*(?:by\s*)?(?:mass|weight|wt\.?|w\/w|m\/m)\s*%?$/i.exec(text.trim());
  if (match === null) return undefined;
  const byMass = Number(match[1].replace(',', '.'));
  if (byMass > 100) return undefined;
  const byVolume = Number(figure(Math.floor(1000 * glycolByVolume(byMass / 100, kind)) / 10));
  return {
    message: `${figure(byMass)} % by mass is about ${figure(byVolume)} % by volume.`,
    value: byVolume,
    label: `Use ${figure(byVolume)} % by volume`,
  };
}

/** Mistakes of the trade that a text may hold, by the name that rows of the parameter table call them. */
export const TRAPS = {
  'fitting size': fittingSize,
  'ethylene by mass': (text: string) => glycolByMass(text, 'ethylene'),
  'propylene by mass': (text: string) => glycolByMass(text, 'propylene'),
} as const;
