import { OutOfRangeError, requirePositive, requireWithin } from '../errors.ts';
import type { Alloy } from './alloys.ts';

/** What stands between the tubes; lengths in m, the angle in rad. */
type FinKind =
  | { readonly kind: 'plain' }
  | { readonly kind: 'offset strip'; readonly stripLength: number }
  | {
      readonly kind: 'louvred';
      /** along the air */
      readonly louvrePitch: number;
      /** across the air, shorter than the fin is high */
      readonly louvreLength: number;
      readonly louvreAngle: number;
    };

/** What the coolant meets inside a tube. */
type TubeKind =
  | { readonly kind: 'plain' }
  | { readonly kind: 'multi-port'; readonly ports: number; readonly webThickness: number }
  | {
      /**
       * measured, or a guess: no published formula covers them. Both factors are over the plain tube at `atReynolds`
       */
      readonly kind: 'turbulated';
      readonly heatTransferFactor: number;
      readonly frictionFactor: number;
      readonly exponent: number;
      readonly atReynolds: number;
    };

/** A core as a fabricator measures it with a ruler; m and m3. */
export interface CoreShape {
  /** along the air, finned */
  readonly depth: number;
  /** along the coolant, finned */
  readonly length: number;
  /** layers of tubes, and of fins, across the stack */
  readonly coolantLayers: number;
  readonly finLayers: number;
  /** tubes of one layer, one behind the other along the air; a tube with a wall down its middle counts as two */
  readonly rows: number;
  /** how often the coolant crosses the core, each time through rows/passes of the rows */
  readonly passes: number;
  /** outside, facing the air */
  readonly tubeHeight: number;
  readonly tubeWall: number;
  readonly tubes: TubeKind;
  /** plate to plate */
  readonly finHeight: number;
  /** one fin to the next, spacing and thickness together */
  readonly finPitch: number;
  readonly finThickness: number;
  readonly fins: FinKind;
  /** each of the two */
  readonly headerVolume: number;
  readonly portBore: number;
  /** of tubes and fins */
  readonly alloy: Alloy;
}

/** Areas, volumes and masses of both sides; SI. */
export interface CoreGeometry {
  readonly shape: CoreShape;
  readonly stackHeight: number;
  readonly air: {
    readonly faceArea: number;
    /** clear width and height of one channel between two fins */
    readonly channelWidth: number;
    readonly channelHeight: number;
    readonly channelCount: number;
    readonly freeArea: number;
    /** free area over face area */
    readonly areaRatio: number;
    readonly area: number;
    readonly finArea: number;
    /** 4 free area x depth/area */
    readonly hydraulicDiameter: number;
  };
  readonly coolant: {
    /** clear height of a tube */
    readonly gap: number;
    /** short over long side of one passage */
    readonly aspect: number;
    /** free area that one pass flows through */
    readonly flowArea: number;
    /** wetted, all passes, and the part of it that is webs */
    readonly area: number;
    readonly webArea: number;
    readonly hydraulicDiameter: number;
    readonly tubeVolume: number;
    /** tubes and both headers */
    readonly volume: number;
    /** flow area of a header across the stack */
    readonly headerArea: number;
    readonly portArea: number;
  };
  readonly metal: {
    readonly tubeMass: number;
    readonly finMass: number;
    readonly heatCapacity: number;
    /** area that the heat crosses between the sides, and its resistance in K/W */
    readonly wallArea: number;
    readonly wallResistance: number;
  };
}

/**
 * Areas, hydraulic diameters, volumes and masses of a core from its measures.
 *
 *     air, per channel s = pitch - t wide and h = height - t high:  area 2 (s + h) D, of an offset strip
 *     [2 (s l + h l + t h) + t s] D/l;  fins 2 h D or 2 (h l + t h) D/l;  Ac = N s h;  Dh = 4 Ac D/A
 *     coolant: tubes (height - 2 wall) by (D/rows - 2 wall), ports and their webs inside;  Dh = 4 Ac L/A
 *     wall resistance = wall/(k 2 layers D L)
 *
 * Range: any core whose parts have room for one another. Assumes square tube ends, all fin layers alike with a plate at
 * tube temperature on both sides (the outer two as well), one fin that runs through the whole depth, and louvres that
 * take no area away. Header walls, end sheets and turbulators add no mass here.
 *
 * @param shape - measures of tubes, fins, headers, and the alloy [m]
 * @returns areas, volumes, masses of both sides [SI]
 * @throws {OutOfRangeError} when a measure is not above 0, a count is not whole, rows are no multiple of passes, or a
 * part has no room
 *
 * @example
 * see tests/sim/correlations/worked-core.test.ts
 *
 * [1] W. M. Kays, A. L. London, Compact Heat Exchangers, 3rd ed., McGraw-Hill, 1984, chapters 2 and 8.
 * [2] R. M. Manglik, A. E. Bergles, Exp. Therm. Fluid Sci. 10, 1995, 171-180 (cell of an offset strip fin).
 */
export function coreGeometry(shape: CoreShape): CoreGeometry {
  checkShape(shape);
  const stackHeight = shape.coolantLayers * shape.tubeHeight + shape.finLayers * shape.finHeight;
  return { shape, stackHeight, air: airSide(shape, stackHeight), ...tubesOf(shape, stackHeight) };
}

function checkShape(shape: CoreShape): void {
  const sizes = [
    'depth',
    'length',
    'tubeHeight',
    'tubeWall',
    'finHeight',
    'finPitch',
    'finThickness',
    'portBore',
  ] as const;
  for (const size of sizes) requirePositive(`${inWords(size)} of a core in m`, shape[size]);
  requirePositive('header volume of a core in m3', shape.headerVolume);
  for (const count of ['coolantLayers', 'finLayers', 'rows', 'passes'] as const)
    requireCount(inWords(count), shape[count]);
  if (shape.rows % shape.passes !== 0)
    throw new OutOfRangeError('rows', shape.rows, `a multiple of ${shape.passes} passes`);
  requireWithin('fin thickness of a core in m', shape.finThickness, 0, Math.min(shape.finPitch, shape.finHeight));
  if (shape.fins.kind === 'offset strip') {
    requirePositive('strip length in m', shape.fins.stripLength);
    requireWithin('strip length in m', shape.fins.stripLength, 0, shape.depth);
  }
  if (shape.tubes.kind === 'multi-port') {
    requireCount('ports of a tube', shape.tubes.ports);
    requirePositive('web thickness in m', shape.tubes.webThickness);
  }
}

/** A measure as messages call it: "fin thickness". */
const inWords = (measure: keyof CoreShape): string => measure.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

function requireCount(what: string, value: number): void {
  if (!(Number.isInteger(value) && value >= 1)) throw new OutOfRangeError(what, value, 'a whole number from 1');
}

function airSide(shape: CoreShape, stackHeight: number): CoreGeometry['air'] {
  const { depth, length, fins, finThickness: t } = shape;
  const s = shape.finPitch - t;
  const h = shape.finHeight - t;
  const channelCount = (shape.finLayers * length) / shape.finPitch;
  const faceArea = stackHeight * length;
  const freeArea = channelCount * s * h;
  let area = channelCount * 2 * (s + h) * depth;
  let finArea = channelCount * 2 * h * depth;
  if (fins.kind === 'offset strip') {
    const cells = (channelCount * depth) / fins.stripLength;
    finArea = cells * 2 * (h * fins.stripLength + t * h);
    area = cells * (2 * s * fins.stripLength + t * s) + finArea;
  }
  return {
    faceArea,
    channelWidth: s,
    channelHeight: h,
    channelCount,
    freeArea,
    areaRatio: freeArea / faceArea,
    area,
    finArea,
    hydraulicDiameter: (4 * freeArea * depth) / area,
  };
}

function tubesOf(shape: CoreShape, stackHeight: number): Pick<CoreGeometry, 'coolant' | 'metal'> {
  const { length, tubes, alloy, finThickness } = shape;
  const tubeDepth = shape.depth / shape.rows;
  const gap = shape.tubeHeight - 2 * shape.tubeWall;
  const inside = tubeDepth - 2 * shape.tubeWall;
  requirePositive('clear height of a tube in m', gap);
  requirePositive('clear depth of a tube in m', inside);
  const webs = tubes.kind === 'multi-port' ? tubes.ports - 1 : 0;
  const webThickness = tubes.kind === 'multi-port' ? tubes.webThickness : 0;
  const port = (inside - webs * webThickness) / (webs + 1);
  requirePositive('clear width of a port in m', port);

  const tubeCount = shape.coolantLayers * shape.rows;
  const free = tubeCount * (webs + 1) * port * gap;
  const area = tubeCount * (webs + 1) * 2 * (port + gap) * length;
  const tubeVolume = free * length;
  const tubeMass = alloy.density * (tubeCount * shape.tubeHeight * tubeDepth * length - tubeVolume);
  // One web of the corrugation and the flat that lies on a plate, a pitch long, in every channel.
  const channels = (shape.finLayers * length) / shape.finPitch;
  const strip = shape.finHeight - finThickness + shape.finPitch;
  const finMass = alloy.density * channels * strip * finThickness * shape.depth;
  const wallArea = shape.coolantLayers * 2 * shape.depth * length;
  return {
    coolant: {
      gap,
      aspect: Math.min(gap, port) / Math.max(gap, port),
      flowArea: free / shape.passes,
      area,
      webArea: tubeCount * webs * 2 * gap * length,
      hydraulicDiameter: (4 * free * length) / area,
      tubeVolume,
      volume: tubeVolume + 2 * shape.headerVolume,
      headerArea: shape.headerVolume / stackHeight,
      portArea: (Math.PI / 4) * shape.portBore ** 2,
    },
    metal: {
      tubeMass,
      finMass,
      heatCapacity: (tubeMass + finMass) * alloy.heatCapacity,
      wallArea,
      wallResistance: shape.tubeWall / (alloy.conductivity * wallArea),
    },
  };
}
