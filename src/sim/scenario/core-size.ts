/** What follows from the size of a core, in the units of a scenario file. */
export interface CoreSizeValues {
  /** W/K */
  readonly airConductance: number;
  /** W/K */
  readonly coolantConductance: number;
  /** kPa */
  readonly airDrop: number;
  /** kJ/K */
  readonly metalHeatCapacity: number;
  /** L */
  readonly coolantVolume: number;
}

/** A core with the exponents that its size acts through. */
export interface SizedCore extends CoreSizeValues {
  readonly airConductanceExponent: number;
  readonly airDropExponent: number;
}

/** Times the core that a size is counted from. */
export interface CoreSize {
  /** across the air: more passages side by side */
  readonly width: number;
  /** along the air: the same passages, longer */
  readonly depth: number;
}

/** A core counts as one of a size when every value is this close [-], own judgement: figures of parts come rounded. */
const SAME_SIZE_WITHIN = 0.02;

/**
 * The values of a core of the same make and another size, at the same air mass flow and coolant flow.
 *
 *     air conductance ~ w^(1 - n) d      surface ~ w d, its coefficient ~ (air flow per width)^n
 *     air drop        ~ w^-m d           ~ (air flow per width)^m times the length of the passages
 *     coolant conductance, metal heat capacity, coolant volume ~ w d
 *
 * n is airConductanceExponent, m airDropExponent. The fins, tubes and height stay; entry and exit losses go with the
 * passages. Not scaled: the coolant drop (ports and headers hold most of it) and the conductance to the bay.
 * Range: any positive factors; from about 0.8 to 2 the make of a core can be taken as the same.
 *
 * @param core - the core that the size is counted from, in file units
 * @param size - width and depth, times that core [-]
 * @returns the values of the resized core: W/K, W/K, kPa, kJ/K, L
 *
 * @example
 * resizeCore(core, { width: 1.45, depth: 1.3 }).airConductance // 583.9 from 390 with n = 0.62
 *
 * [1] W. M. Kays, A. L. London, Compact Heat Exchangers, 3rd ed., 1984: coefficient and friction of one surface go
 *     with mass flux to fixed powers. The rest is scaling at fixed air mass flow.
 */
export function resizeCore(core: SizedCore, { width, depth }: CoreSize): CoreSizeValues {
  const bulk = width * depth;
  return {
    airConductance: core.airConductance * width ** (1 - core.airConductanceExponent) * depth,
    coolantConductance: core.coolantConductance * bulk,
    airDrop: core.airDrop * width ** -core.airDropExponent * depth,
    metalHeatCapacity: core.metalHeatCapacity * bulk,
    coolantVolume: core.coolantVolume * bulk,
  };
}

/**
 * The size of a core counted from another, or `undefined` where its five values follow no one size within 2 %.
 *
 *     w^(1 + m) = (metal ratio) / (air drop ratio),  d = (metal ratio) / w
 *
 * @param core - the core whose size is asked, in file units
 * @param from - the core that the size is counted from
 * @returns width and depth, times `from` [-]
 */
export function sizeOfCore(core: CoreSizeValues, from: SizedCore): CoreSize | undefined {
  const bulk = core.metalHeatCapacity / from.metalHeatCapacity;
  const drop = from.airDrop > 0 ? core.airDrop / from.airDrop : Number.NaN;
  const width = (bulk / drop) ** (1 / (1 + from.airDropExponent));
  const size = { width, depth: bulk / width };
  const resized = resizeCore(from, size);
  const isClose = (key: keyof CoreSizeValues): boolean =>
    Math.abs(core[key] - resized[key]) <= SAME_SIZE_WITHIN * resized[key];
  return (Object.keys(resized) as (keyof CoreSizeValues)[]).every(isClose) ? size : undefined;
}
