import {
  type CellRates,
  cellEffectiveness,
  outflowWeight,
  SWEEP_AIR_OUT,
  SWEEP_COOLANT_MEAN,
  SWEEP_COOLANT_OUT,
  SWEEP_END_COUNT,
  SWEEP_METAL_MEAN,
} from './cell-sweep.ts';

/** The vapour that air carries across a block, and what it does on metal. Content in kg per kg of air. */
export interface Vapour {
  /** entering */
  content: number;
  /** kg/s of all the air */
  airFlow: number;
  /** share of the excess over saturation that a cell of so many transfer units sheds */
  readonly shedShareOf: (transferUnits: number) => number;
  /** saturation content over metal of this temperature [K] */
  readonly saturatedAt: (temperature: number) => number;
  /** its slope there [1/K], for the same content */
  readonly slopeAt: (temperature: number, saturated: number) => number;
  /** temperature [K] below which metal wets air of this content */
  readonly dewPointOf: (content: number) => number;
  /** heat that a kg gives up on metal of this temperature [J/kg] */
  readonly heatAt: (temperature: number) => number;
}

/** Air that is not even along the coolant: each column against the even air. */
export interface AirColumns {
  /** flow, mean 1 */
  readonly flow: Float64Array;
  readonly conductance: Float64Array;
}

/** What the cells of a block meet beyond the rates that they share. */
export interface SweepDetail {
  vapour: Vapour | undefined;
  /** share of the vapour's air that crosses this block */
  airShare: number;
  columns: AirColumns | undefined;
  /** the coolant runs against the order of the columns */
  isMirrored: boolean;
  /** vapour contents of the streams: entering, and leaving on return; none above that of `vapour` */
  readonly contents: Float64Array;
  /** scratch, COLUMN_FIELDS numbers a column */
  readonly perColumn: Float64Array;
}

/** Places beside those of `cell-sweep.ts` in the array that a detailed sweep or march writes. */
export const SWEEP_LATENT_POWER = SWEEP_END_COUNT;
export const SWEEP_CONDENSATE = SWEEP_END_COUNT + 1;
export const DETAILED_END_COUNT = SWEEP_END_COUNT + 2;

export const COLUMN_FIELDS = 4;
const EFFECTIVENESS = 0;
const AIR_EXCHANGE = 1;
const SHED_RATE = 2;
const STREAM_FLOW = 3;

const MOST_ROUNDS = 8;
/** K */
const CLOSE_ENOUGH = 1e-7;

/**
 * Sweeps a block as `sweepCells` does, with vapour condensing on cold metal and with air that need not be even. Where
 * metal lies below the dew point of the air that reaches it, its equation gains
 *
 *     L g (w_in - w_s(Tm)),   g = air flow of the stream times its shed share
 *
 * which is solved together with the cell by Newton's method, so it is as implicit as the rest. What is booked is the
 * heat that stood in the last linear equation, so energy closes to rounding. Water once shed does not come back.
 *
 * @param rates - what the cells share, the air's for even air
 * @param s - 1/(gamma h) of the stage [1/s]
 * @param reach - see `sweepCells`
 * @param air - temperatures of the air streams: entering, and leaving on return [K]
 * @param ends - DETAILED_END_COUNT long
 */
export function sweepDetailedCells(
  rates: CellRates,
  detail: SweepDetail,
  s: number,
  reach: number,
  base: Float64Array,
  out: Float64Array,
  offset: number,
  coolantIn: number,
  air: Float64Array,
  ends: Float64Array,
): void {
  const { nx, ny, coolantConductance: exchange, coolantRate, metalSource } = rates;
  const { vapour, contents, perColumn } = detail;
  fillColumns(rates, detail);
  const b = outflowWeight(rates);
  const metalStore = rates.metalCapacity * s;
  const coolantStore = rates.coolantCapacity * s;
  const coolantDiagonal = coolantStore + (1 + b) * coolantRate + exchange;
  const share = exchange / coolantDiagonal;
  const withoutAir = metalStore + exchange + rates.metalLoss - exchange * share;
  const dewPointIn = vapour === undefined ? 0 : vapour.dewPointOf(vapour.content);
  let latent = 0;
  let condensate = 0;
  let metalSum = 0;
  let coolantSum = 0;
  let coolantOutSum = 0;

  let k = offset;
  for (let i = 0; i < nx; i++) {
    let lag = b * coolantIn;
    let carried = coolantIn + lag;
    for (let j = 0, c = 0; j < ny; j++, k += 2, c += COLUMN_FIELDS) {
      const metalBase = base[k];
      const coolantBase = base[k + 1];
      const airExchange = perColumn[c + AIR_EXCHANGE];
      const diagonal = withoutAir + airExchange;
      const coolantSide = coolantStore * coolantBase + coolantRate * carried;
      const known = metalStore * metalBase + airExchange * air[j] + metalSource + share * coolantSide;
      let metal = known / diagonal;
      // Vapour is only ever lost on the way: the dew point of what entered bounds that of what arrives.
      if (vapour !== undefined && metal < dewPointIn) {
        const shedRate = perColumn[c + SHED_RATE];
        let shed = 0;
        let heat = 0;
        for (let round = 0; round < MOST_ROUNDS; round++) {
          const saturated = vapour.saturatedAt(metal);
          const slope = vapour.slopeAt(metal, saturated);
          heat = vapour.heatAt(metal);
          const before = metal;
          const gain = heat * shedRate;
          const wet = (known + gain * (contents[j] - saturated + slope * before)) / (diagonal + gain * slope);
          const excess = contents[j] - saturated - slope * (wet - before);
          if (excess <= 0) {
            shed = 0;
            metal = known / diagonal;
            break;
          }
          shed = shedRate * excess;
          metal = wet;
          if (Math.abs(wet - before) < CLOSE_ENOUGH) break;
        }
        latent += shed * heat;
        condensate += shed;
        if (shed > 0) contents[j] -= shed / perColumn[c + STREAM_FLOW];
      }
      const coolant = (coolantSide + exchange * metal) / coolantDiagonal;
      out[k] = metalBase + reach * (metal - metalBase);
      out[k + 1] = coolantBase + reach * (coolant - coolantBase);
      air[j] += perColumn[c + EFFECTIVENESS] * (metal - air[j]);
      metalSum += metal;
      coolantSum += coolant;
      carried = (1 + 2 * b) * coolant - lag;
      lag = b * coolant;
    }
    coolantOutSum += carried - lag;
  }
  const count = nx * ny;
  ends[SWEEP_AIR_OUT] = mixedAir(air, detail, ny);
  ends[SWEEP_COOLANT_OUT] = coolantOutSum / nx;
  ends[SWEEP_METAL_MEAN] = metalSum / count;
  ends[SWEEP_COOLANT_MEAN] = coolantSum / count;
  ends[SWEEP_LATENT_POWER] = latent;
  ends[SWEEP_CONDENSATE] = condensate;
}

/** What {@link sweepDetailedCells} would leave in `ends` for cell temperatures that are known. */
export function marchDetailedOutlets(
  rates: CellRates,
  detail: SweepDetail,
  state: Float64Array,
  offset: number,
  coolantIn: number,
  air: Float64Array,
  ends: Float64Array,
): void {
  const { nx, ny } = rates;
  const { vapour, contents, perColumn } = detail;
  fillColumns(rates, detail);
  const b = outflowWeight(rates);
  let latent = 0;
  let condensate = 0;
  let metalSum = 0;
  let coolantSum = 0;
  let coolantOutSum = 0;
  let k = offset;
  for (let i = 0; i < nx; i++) {
    for (let j = 0, c = 0; j < ny; j++, k += 2, c += COLUMN_FIELDS) {
      const metal = state[k];
      air[j] += perColumn[c + EFFECTIVENESS] * (metal - air[j]);
      metalSum += metal;
      coolantSum += state[k + 1];
      const excess = vapour === undefined ? 0 : contents[j] - vapour.saturatedAt(metal);
      if (vapour === undefined || excess <= 0) continue;
      const shed = perColumn[c + SHED_RATE] * excess;
      latent += shed * vapour.heatAt(metal);
      condensate += shed;
      if (shed > 0) contents[j] -= shed / perColumn[c + STREAM_FLOW];
    }
    const last = state[k - 1];
    const beforeLast = ny > 1 ? state[k - 3] : coolantIn;
    coolantOutSum += (1 + b) * last - b * beforeLast;
  }
  const count = nx * ny;
  ends[SWEEP_AIR_OUT] = mixedAir(air, detail, ny);
  ends[SWEEP_COOLANT_OUT] = coolantOutSum / nx;
  ends[SWEEP_METAL_MEAN] = metalSum / count;
  ends[SWEEP_COOLANT_MEAN] = coolantSum / count;
  ends[SWEEP_LATENT_POWER] = latent;
  ends[SWEEP_CONDENSATE] = condensate;
}

/** Effectiveness of one cell of a column. */
export function columnEffectiveness(rates: CellRates, columns: AirColumns | undefined, column: number): number {
  if (columns === undefined) return cellEffectiveness(rates.airRate, rates.airConductance);
  return cellEffectiveness(rates.airRate * columns.flow[column], rates.airConductance * columns.conductance[column]);
}

function fillColumns(rates: CellRates, { vapour, airShare, columns, isMirrored, perColumn }: SweepDetail): void {
  const { ny } = rates;
  for (let j = 0, c = 0; j < ny; j++, c += COLUMN_FIELDS) {
    const column = isMirrored ? ny - 1 - j : j;
    const flow = columns === undefined ? 1 : columns.flow[column];
    const rate = rates.airRate * flow;
    const conductance = rates.airConductance * (columns === undefined ? 1 : columns.conductance[column]);
    const effectiveness = cellEffectiveness(rate, conductance);
    perColumn[c + EFFECTIVENESS] = effectiveness;
    perColumn[c + AIR_EXCHANGE] = rate * effectiveness;
    const streamFlow = vapour === undefined ? 0 : (airShare * vapour.airFlow * flow) / ny;
    perColumn[c + STREAM_FLOW] = streamFlow;
    perColumn[c + SHED_RATE] =
      vapour === undefined || rate <= 0 ? 0 : streamFlow * vapour.shedShareOf(conductance / rate);
  }
}

/** Mean of the leaving air by its flow. */
function mixedAir(air: Float64Array, { columns, isMirrored }: SweepDetail, ny: number): number {
  let sum = 0;
  for (let j = 0; j < ny; j++) sum += air[j] * (columns === undefined ? 1 : columns.flow[isMirrored ? ny - 1 - j : j]);
  return sum / ny;
}
