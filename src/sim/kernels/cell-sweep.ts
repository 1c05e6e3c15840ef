/**
 * One implicit stage of a block of cross-flow cells, in a single sweep.
 *
 * The block has `nx` cells along the air (i) and `ny` along the coolant (j), stored row-major as pairs:
 * `state[2 (i ny + j)]` is the metal mean Tm, the number after it the coolant mean Tc. Per cell
 *
 *     Cm dTm/dt = Ga (Ta_in - Tm) + K (Tc - Tm) + source - loss Tm
 *     Cc dTc/dt = wc (c_in - c_out) + K (Tm - Tc)
 *     Ta_out = Ta_in + eps (Tm - Ta_in),     Ga = wa eps,   eps = Na/(1 + Na/2) below Na = 2, else 1,   Na = Ka/wa
 *     c_out[j] = (1 + b) Tc[j] - b Tc[j-1],  c_in[j] = c_out[j-1],   Tc[-1] = c_in[0] = the inlet temperature
 *
 * Both exchanges are driven by cell means. The coolant's outflow is linear upwind for b = 1/2, which is second
 * order; b = 0 is plain upwind, first order and monotone, for use behind a front.
 *
 * A stage solves Y = base + (1/s) f(Y): marching with the flows, each cell is a 2 x 2 system whose inverse is the
 * same for all cells, so the loop holds no division. A line is the case nx = 1 with the surroundings in `source`
 * and `loss`.
 */

/** What the cells of a block share in one stage. Rates in W/K, per cell unless stated. */
export interface CellRates {
  nx: number;
  ny: number;
  /** J/K */
  metalCapacity: number;
  /** J/K */
  coolantCapacity: number;
  /** m cp of one of the ny air streams */
  airRate: number;
  /** air conductance of one cell */
  airConductance: number;
  /** m c of one of the nx coolant streams */
  coolantRate: number;
  coolantConductance: number;
  /** conductance to surroundings; their temperature times it goes into `metalSource` */
  metalLoss: number;
  /** W put into each cell's metal, `metalLoss * surroundings` included */
  metalSource: number;
  /** 1 = linear upwind, 0 = upwind behind a front */
  linearUpwind: number;
}

/** Length of the coefficient array that {@link fillSweepCoefficients} writes. */
export const SWEEP_COEFFICIENT_COUNT = 10;

/** Places in the array that {@link sweepCells} writes. */
export const SWEEP_AIR_OUT = 0;
export const SWEEP_COOLANT_OUT = 1;
export const SWEEP_METAL_MEAN = 2;
export const SWEEP_COOLANT_MEAN = 3;
export const SWEEP_END_COUNT = 4;

/** Share of a cell's metal-to-air temperature difference that one air stream makes up while crossing it. */
export function cellEffectiveness(airRate: number, airConductance: number): number {
  if (airRate <= 0) return 1;
  const units = airConductance / airRate;
  return units < 2 ? units / (1 + 0.5 * units) : 1;
}

/** Weight b of the linear-upwind outflow; see the head of this file. */
export function outflowWeight(rates: CellRates): number {
  return rates.coolantRate > 0 && rates.linearUpwind === 1 ? 0.5 : 0;
}

/**
 * Writes the coefficients of one stage into `out`.
 *
 * @param rates - what the cells share
 * @param s - 1/(gamma h) of the stage [1/s]
 * @param reach - the sweep writes base + reach (Y - base); 1 writes the stage values
 * @param out - at least SWEEP_COEFFICIENT_COUNT long
 */
export function fillSweepCoefficients(rates: CellRates, s: number, reach: number, out: Float64Array): void {
  const effectiveness = cellEffectiveness(rates.airRate, rates.airConductance);
  const airExchange = rates.airRate * effectiveness;
  const exchange = rates.coolantConductance;
  const b = outflowWeight(rates);
  const metalStore = rates.metalCapacity * s;
  const coolantStore = rates.coolantCapacity * s;
  const metalDiagonal = metalStore + airExchange + exchange + rates.metalLoss;
  const metalCoolant = exchange / metalDiagonal;
  const coolantDiagonal = coolantStore + (1 + b) * rates.coolantRate + exchange * (1 - metalCoolant);

  // Tm = out[0] rm + out[1] Ta + out[2] + out[3] Tc; its first three terms M make Tc = out[4] rc + out[5] M + out[6] u.
  out[0] = metalStore / metalDiagonal;
  out[1] = airExchange / metalDiagonal;
  out[2] = rates.metalSource / metalDiagonal;
  out[3] = metalCoolant;
  out[4] = coolantStore / coolantDiagonal;
  out[5] = exchange / coolantDiagonal;
  out[6] = rates.coolantRate / coolantDiagonal;
  out[7] = effectiveness;
  out[8] = b;
  out[9] = reach;
}

/**
 * Sweeps a block once along both flows.
 *
 * Shapes: `base` and `out` hold 2 nx ny numbers from `offset` on and may not overlap; `air` holds ny
 * numbers. `ends` receives the mean air and coolant outlet temperatures and the mean metal and coolant
 * temperatures. No allocation.
 *
 * @param nx - cells along the air
 * @param ny - cells along the coolant
 * @param coefficients - from {@link fillSweepCoefficients}
 * @param base - right-hand side of the stage [K]
 * @param out - stage values, or further as `reach` says [K]
 * @param offset - where the block starts in `base` and `out`
 * @param coolantIn - coolant inlet temperature [K]
 * @param air - temperatures of the air streams: entering, and leaving on return [K]
 * @param ends - see above [K]
 */
export function sweepCells(
  nx: number,
  ny: number,
  coefficients: Float64Array,
  base: Float64Array,
  out: Float64Array,
  offset: number,
  coolantIn: number,
  air: Float64Array,
  ends: Float64Array,
): void {
  const metalKept = coefficients[0];
  const metalAir = coefficients[1];
  const metalSource = coefficients[2];
  const metalCoolant = coefficients[3];
  const coolantKept = coefficients[4];
  const coolantMetal = coefficients[5];
  const coolantCarried = coefficients[6];
  const effectiveness = coefficients[7];
  const b = coefficients[8];
  const reach = coefficients[9];
  const onePlus2B = 1 + 2 * b;
  let metalSum = 0;
  let coolantSum = 0;
  let coolantOutSum = 0;

  let k = offset;
  for (let i = 0; i < nx; i++) {
    // u = c_in + b Tc[j-1] is all the flow carries into a cell: (1 + 2b) Tc[j-1] - b Tc[j-2].
    let lag = b * coolantIn;
    let carried = coolantIn + lag;
    for (let j = 0; j < ny; j++) {
      const airTemperature = air[j];
      const metalBase = base[k];
      const coolantBase = base[k + 1];
      const metalAlone = metalKept * metalBase + metalAir * airTemperature + metalSource;
      const coolant = coolantKept * coolantBase + coolantMetal * metalAlone + coolantCarried * carried;
      const metal = metalAlone + metalCoolant * coolant;
      out[k] = metalBase + reach * (metal - metalBase);
      out[k + 1] = coolantBase + reach * (coolant - coolantBase);
      air[j] = airTemperature + effectiveness * (metal - airTemperature);
      metalSum += metal;
      coolantSum += coolant;
      carried = onePlus2B * coolant - lag;
      lag = b * coolant;
      k += 2;
    }
    coolantOutSum += carried - lag;
  }
  let airSum = 0;
  for (let j = 0; j < ny; j++) airSum += air[j];
  const count = nx * ny;
  ends[SWEEP_AIR_OUT] = airSum / ny;
  ends[SWEEP_COOLANT_OUT] = coolantOutSum / nx;
  ends[SWEEP_METAL_MEAN] = metalSum / count;
  ends[SWEEP_COOLANT_MEAN] = coolantSum / count;
}

/**
 * The outlets that belong to given cell temperatures: what {@link sweepCells} would leave in `ends` for a state
 * that is already known.
 */
export function marchOutlets(
  rates: CellRates,
  state: Float64Array,
  offset: number,
  coolantIn: number,
  air: Float64Array,
  ends: Float64Array,
): void {
  const { nx, ny } = rates;
  const effectiveness = cellEffectiveness(rates.airRate, rates.airConductance);
  const b = outflowWeight(rates);
  let metalSum = 0;
  let coolantSum = 0;
  let coolantOutSum = 0;
  let k = offset;
  for (let i = 0; i < nx; i++) {
    for (let j = 0; j < ny; j++, k += 2) {
      air[j] += effectiveness * (state[k] - air[j]);
      metalSum += state[k];
      coolantSum += state[k + 1];
    }
    const last = state[k - 1];
    const beforeLast = ny > 1 ? state[k - 3] : coolantIn;
    coolantOutSum += (1 + b) * last - b * beforeLast;
  }
  let airSum = 0;
  for (let j = 0; j < ny; j++) airSum += air[j];
  const count = nx * ny;
  ends[SWEEP_AIR_OUT] = airSum / ny;
  ends[SWEEP_COOLANT_OUT] = coolantOutSum / nx;
  ends[SWEEP_METAL_MEAN] = metalSum / count;
  ends[SWEEP_COOLANT_MEAN] = coolantSum / count;
}

/**
 * A row holds a front where its largest second difference exceeds share * range + bend [K]; rows flatter than
 * FRONT_RANGE [K] never do. Ripples grow with the cells a front has to cross: beyond FRONT_CELLS of them the share
 * falls in proportion. Where air crosses, metal damps ripples, and the soft front that every pull sends through an
 * exchanger need not count. All by measurement: a 30 K step through lines and cores of any flow stays within its
 * sources to 1 %, and no pull of the shipped scenarios and their variants is taken for a front.
 */
const LINE_FRONT = { share: 0.11, bend: 0 };
const CROSSFLOW_FRONT = { share: 0.07, bend: 0.15 };
const FRONT_CELLS = 12;
const FRONT_RANGE = 0.5;

/**
 * Whether the coolant of a block carries a front too sharp for linear upwinding, judged by the first, middle and last
 * row, inlet included.
 *
 * @param inlet - coolant inlet temperature [K]
 */
export function hasCoolantFront(nx: number, ny: number, state: Float64Array, offset: number, inlet: number): boolean {
  const { share, bend } = nx === 1 ? LINE_FRONT : CROSSFLOW_FRONT;
  const rowShare = share * Math.min(1, FRONT_CELLS / ny);
  return (
    isFrontInRow(ny, state, offset, inlet, rowShare, bend) ||
    isFrontInRow(ny, state, offset + 2 * ny * (nx >> 1), inlet, rowShare, bend) ||
    isFrontInRow(ny, state, offset + 2 * ny * (nx - 1), inlet, rowShare, bend)
  );
}

function isFrontInRow(
  ny: number,
  state: Float64Array,
  offset: number,
  inlet: number,
  share: number,
  smallest: number,
): boolean {
  let before = inlet;
  let here = state[offset + 1];
  let lowest = Math.min(inlet, here);
  let highest = Math.max(inlet, here);
  let steepest = 0;
  for (let j = 1; j < ny; j++) {
    const next = state[offset + 2 * j + 1];
    const bend = Math.abs(next - 2 * here + before);
    if (bend > steepest) steepest = bend;
    if (next < lowest) lowest = next;
    if (next > highest) highest = next;
    before = here;
    here = next;
  }
  const range = highest - lowest;
  return range > FRONT_RANGE && steepest > share * range + smallest;
}
