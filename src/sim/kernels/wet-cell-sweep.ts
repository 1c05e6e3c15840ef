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
  /** share of the excess over saturation that a cell sheds */
  shedShare: number;
  /** saturation content over metal of this temperature [K] */
  readonly saturatedAt: (temperature: number) => number;
  /** its slope there [1/K], for the same content */
  readonly slopeAt: (temperature: number, saturated: number) => number;
  /** temperature [K] below which metal wets air of this content */
  readonly dewPointOf: (content: number) => number;
  /** heat that a kg gives up on metal of this temperature [J/kg] */
  readonly heatAt: (temperature: number) => number;
}

/** Places beside those of `cell-sweep.ts` in the array that {@link sweepWetCells} and {@link marchWetAir} write. */
export const SWEEP_LATENT_POWER = SWEEP_END_COUNT;
export const SWEEP_CONDENSATE = SWEEP_END_COUNT + 1;
export const SWEEP_CONTENT_OUT = SWEEP_END_COUNT + 2;
export const WET_END_COUNT = SWEEP_END_COUNT + 3;

const MOST_ROUNDS = 8;
/** K */
const CLOSE_ENOUGH = 1e-7;

/**
 * Sweeps a block as `sweepCells` does, with vapour condensing on cold metal. Where metal lies below the dew point of the
 * air that reaches it, its equation gains
 *
 *     L g (w_in - w_s(Tm)),   g = air flow of the stream times the shed share
 *
 * which is solved together with the cell by Newton's method, so it is as implicit as the rest. What is booked is the
 * heat that stood in the last linear equation, so energy closes to rounding. Water once shed does not come back.
 *
 * @param rates - what the cells share
 * @param s - 1/(gamma h) of the stage [1/s]
 * @param reach - see `sweepCells`
 * @param airShare - share of the vapour's air that crosses this block
 * @param air - temperatures of the air streams: entering, and leaving on return [K]
 * @param contents - their vapour contents, likewise; none above that of `vapour`
 * @param ends - WET_END_COUNT long
 */
export function sweepWetCells(
  rates: CellRates,
  s: number,
  reach: number,
  base: Float64Array,
  out: Float64Array,
  offset: number,
  coolantIn: number,
  vapour: Vapour,
  airShare: number,
  air: Float64Array,
  contents: Float64Array,
  ends: Float64Array,
): void {
  const { nx, ny, coolantConductance: exchange, coolantRate, metalSource } = rates;
  const effectiveness = cellEffectiveness(rates.airRate, rates.airConductance);
  const airExchange = rates.airRate * effectiveness;
  const b = outflowWeight(rates);
  const metalStore = rates.metalCapacity * s;
  const coolantStore = rates.coolantCapacity * s;
  const metalDiagonal = metalStore + airExchange + exchange + rates.metalLoss;
  const coolantDiagonal = coolantStore + (1 + b) * coolantRate + exchange;
  const share = exchange / coolantDiagonal;
  const diagonal = metalDiagonal - exchange * share;
  const streamFlow = (airShare * vapour.airFlow) / ny;
  const shedRate = streamFlow * vapour.shedShare;
  let latent = 0;
  let condensate = 0;
  let metalSum = 0;
  let coolantSum = 0;
  let coolantOutSum = 0;

  const dewPointIn = vapour.dewPointOf(vapour.content);
  let k = offset;
  for (let i = 0; i < nx; i++) {
    let lag = b * coolantIn;
    let carried = coolantIn + lag;
    for (let j = 0; j < ny; j++, k += 2) {
      const metalBase = base[k];
      const coolantBase = base[k + 1];
      const coolantSide = coolantStore * coolantBase + coolantRate * carried;
      const known = metalStore * metalBase + airExchange * air[j] + metalSource + share * coolantSide;
      let metal = known / diagonal;
      // Vapour is only ever lost on the way: the dew point of what entered bounds that of what arrives.
      if (metal < dewPointIn) {
        const content = contents[j];
        let shed = 0;
        let heat = 0;
        for (let round = 0; round < MOST_ROUNDS; round++) {
          const saturated = vapour.saturatedAt(metal);
          const slope = vapour.slopeAt(metal, saturated);
          heat = vapour.heatAt(metal);
          const before = metal;
          const gain = heat * shedRate;
          const wet = (known + gain * (content - saturated + slope * before)) / (diagonal + gain * slope);
          const excess = content - saturated - slope * (wet - before);
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
        contents[j] = content - shed / streamFlow;
      }
      const coolant = (coolantSide + exchange * metal) / coolantDiagonal;
      out[k] = metalBase + reach * (metal - metalBase);
      out[k + 1] = coolantBase + reach * (coolant - coolantBase);
      air[j] += effectiveness * (metal - air[j]);
      metalSum += metal;
      coolantSum += coolant;
      carried = (1 + 2 * b) * coolant - lag;
      lag = b * coolant;
    }
    coolantOutSum += carried - lag;
  }
  const count = nx * ny;
  ends[SWEEP_AIR_OUT] = meanOf(air, ny);
  ends[SWEEP_COOLANT_OUT] = coolantOutSum / nx;
  ends[SWEEP_METAL_MEAN] = metalSum / count;
  ends[SWEEP_COOLANT_MEAN] = coolantSum / count;
  ends[SWEEP_LATENT_POWER] = latent;
  ends[SWEEP_CONDENSATE] = condensate;
  ends[SWEEP_CONTENT_OUT] = meanOf(contents, ny);
}

/** What the vapour does over metal of known temperatures; writes the last three places of `ends`. */
export function marchWetAir(
  nx: number,
  ny: number,
  state: Float64Array,
  offset: number,
  vapour: Vapour,
  airShare: number,
  contents: Float64Array,
  ends: Float64Array,
): void {
  const shedRate = ((airShare * vapour.airFlow) / ny) * vapour.shedShare;
  let latent = 0;
  let condensate = 0;
  for (let i = 0, k = offset; i < nx; i++) {
    for (let j = 0; j < ny; j++, k += 2) {
      const excess = contents[j] - vapour.saturatedAt(state[k]);
      if (excess <= 0) continue;
      const shed = shedRate * excess;
      latent += shed * vapour.heatAt(state[k]);
      condensate += shed;
      contents[j] -= vapour.shedShare * excess;
    }
  }
  ends[SWEEP_LATENT_POWER] = latent;
  ends[SWEEP_CONDENSATE] = condensate;
  ends[SWEEP_CONTENT_OUT] = meanOf(contents, ny);
}

function meanOf(values: Float64Array, count: number): number {
  let sum = 0;
  for (let j = 0; j < count; j++) sum += values[j];
  return sum / count;
}
