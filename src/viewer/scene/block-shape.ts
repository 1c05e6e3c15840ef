import { airDropTimesDensity, type Config } from '../../sim/index.ts';

/** How large a core is drawn; lengths in the length of a core along the coolant, which is 1 for all. */
export interface BlockShape {
  /** along the air */
  readonly depth: number;
  /** across the stack of tubes and fins */
  readonly height: number;
  readonly tubeCount: number;
}

/** The core that is drawn at factor 1; an assumption of the drawing, like the shape it is given. */
const USUAL = {
  metalHeatCapacity: 2600,
  drop: 9000,
  atFlow: 0.3,
  atDensity: 1.6,
  depth: 0.4,
  height: 0.45,
  exponent: 1.8,
};

/** A drawn core is never more than this many times smaller or larger than the usual one, in each direction. */
const LARGEST_FACTOR = 3;
const FEWEST_TUBES = 3;

/**
 * The shape a core is drawn in. Test points of a core do not tell its size; among cores of one build, and of one length
 * along the coolant, they do:
 *
 *     metal ~ height depth,   air drop ~ depth (flow / height)^n
 *
 * so the height is (metal / drop)^(1 / (1 + n)) and the depth metal / height, both against the usual core.
 *
 * @param core - the core's part of a configuration
 * @param usualTubeCount - tubes drawn across the usual core
 */
export function blockShape(
  { metalHeatCapacity, airDrop }: Pick<Config['core'], 'metalHeatCapacity' | 'airDrop'>,
  usualTubeCount: number,
): BlockShape {
  const metal = metalHeatCapacity / USUAL.metalHeatCapacity;
  const drop = airDropTimesDensity(airDrop, USUAL.atFlow) / USUAL.atDensity / USUAL.drop;
  const exponent = airDrop.kind === 'power' ? airDrop.exponent : USUAL.exponent;
  const height = bounded((metal / drop) ** (1 / (1 + exponent)));
  const depth = bounded(metal / height);
  return {
    depth: USUAL.depth * depth,
    height: USUAL.height * height,
    tubeCount: Math.max(FEWEST_TUBES, Math.round(usualTubeCount * height)),
  };
}

function bounded(factor: number): number {
  return Math.min(LARGEST_FACTOR, Math.max(1 / LARGEST_FACTOR, factor));
}
