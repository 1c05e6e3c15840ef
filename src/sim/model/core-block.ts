import {
  type AirColumns,
  COLUMN_FIELDS,
  columnEffectiveness,
  marchDetailedOutlets,
  SWEEP_CONDENSATE,
  SWEEP_LATENT_POWER,
  type SweepDetail,
  sweepDetailedCells,
  type Vapour,
} from '../kernels/detailed-cell-sweep.ts';
import { type BlockRates, CellBlock, type StageValues } from './cell-block.ts';

/** What the air brings to a core besides heat: vapour that may condense, and a velocity that is not even. */
export interface CoreAir {
  readonly vapour: Vapour | undefined;
  readonly columns: AirColumns | undefined;
}

/** One pass of one sheet of a core: cells that may wet, whose air may be uneven and may come through another pass. */
export class CoreBlock extends CellBlock {
  /** W and kg/s that condensing vapour gave up in the last sweep or march */
  latentPower = 0;
  condensate = 0;
  private readonly detail: SweepDetail;

  /**
   * @param airShare - share of the core's air that crosses this block
   * @param isMirrored - the coolant runs against the order of the columns
   */
  constructor(
    nx: number,
    ny: number,
    offset: number,
    metalCapacity: number,
    coolantCapacity: number,
    airShare: number,
    isMirrored: boolean,
  ) {
    super(nx, ny, offset, metalCapacity, coolantCapacity);
    const contents = new Float64Array(ny);
    const perColumn = new Float64Array(COLUMN_FIELDS * ny);
    this.detail = { vapour: undefined, airShare, columns: undefined, isMirrored, contents, perColumn };
  }

  /** Air that enters the core here. */
  enter(airIn: number, { vapour, columns }: CoreAir): void {
    const { air, detail, ny } = this;
    for (let j = 0; j < ny; j++) air[j] = airIn;
    detail.vapour = vapour;
    detail.columns = columns;
    if (vapour !== undefined) detail.contents.fill(vapour.content);
  }

  /** Air that leaves a pass whose coolant runs the other way. */
  enterBehind(ahead: CoreBlock): void {
    const { air, detail, ny } = this;
    for (let j = 0; j < ny; j++) {
      air[j] = ahead.air[ny - 1 - j];
      detail.contents[j] = ahead.detail.contents[ny - 1 - j];
    }
    detail.vapour = ahead.detail.vapour;
    detail.columns = ahead.detail.columns;
  }

  /** One stage with the air that has entered. */
  sweepEntered(rates: BlockRates, stage: StageValues, coolantIn: number): void {
    const { detail } = this;
    if (detail.vapour === undefined && detail.columns === undefined) {
      this.sweepFilled(rates, stage, coolantIn);
      return;
    }
    const { s, reach, base, out } = stage;
    this.setRates(rates);
    sweepDetailedCells(this.rates, detail, s, reach, base, out, this.offset, coolantIn, this.air, this.ends);
    this.readDetailedEnds(coolantIn);
  }

  /** Outlets and means of a known state, with the air that has entered. */
  marchEntered(rates: BlockRates, state: Float64Array, coolantIn: number): void {
    const { detail } = this;
    if (detail.vapour === undefined && detail.columns === undefined) {
      this.marchFilled(rates, state, coolantIn);
      return;
    }
    this.setRates(rates);
    marchDetailedOutlets(this.rates, detail, state, this.offset, coolantIn, this.air, this.ends);
    this.readDetailedEnds(coolantIn);
  }

  /**
   * Adds `share` of the cells' metal, coolant and mean air temperatures at the flows of the last sweep or march to the
   * rows from `firstRow` on.
   *
   * @param air - temperatures of the streams where they enter, and leave on return
   * @param out - three arrays of rows of ny numbers
   */
  addFields(
    state: Float64Array,
    air: Float64Array,
    firstRow: number,
    share: number,
    out: readonly [Float32Array, Float32Array, Float32Array],
  ): void {
    const { nx, ny, offset } = this;
    const [metals, coolants, airs] = out;
    const isFlowing = this.rates.airRate > 0;
    const { columns, isMirrored } = this.detail;
    for (let column = 0; column < ny; column++) {
      const effectiveness = columnEffectiveness(this.rates, columns, column);
      for (let i = 0; i < nx; i++) {
        const place = (firstRow + i) * ny + column;
        const cell = offset + 2 * (i * ny + (isMirrored ? ny - 1 - column : column));
        const metal = state[cell];
        const leaving = air[column] + effectiveness * (metal - air[column]);
        metals[place] += share * metal;
        coolants[place] += share * state[cell + 1];
        airs[place] += share * (isFlowing ? 0.5 * (air[column] + leaving) : metal);
        air[column] = leaving;
      }
    }
  }

  private readDetailedEnds(coolantIn: number): void {
    this.readEnds(coolantIn);
    this.latentPower = this.ends[SWEEP_LATENT_POWER];
    this.condensate = this.ends[SWEEP_CONDENSATE];
  }
}
