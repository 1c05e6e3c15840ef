import { type BlockRates, CellBlock } from '../../src/sim/model/cell-block.ts';

/** Steady outlets of a cross-flow block: one stage of endless length (s = 0) forgets what was stored. */
export function steadyOutlets(rates: BlockRates, nx: number, ny: number, airIn: number, coolantIn: number): CellBlock {
  const block = new CellBlock(nx, ny, 0, 1, 1);
  const stage = { s: 0, reach: 1, base: new Float64Array(block.size), out: new Float64Array(block.size) };
  block.sweep(rates, stage, airIn, coolantIn);
  return block;
}

/** A cross-flow core without dimensions: the smaller heat capacity rate is 1, the air's share is of the resistance. */
export interface CoreCase {
  readonly NTU: number;
  readonly Cr: number;
  readonly smaller: 'air' | 'coolant';
  readonly airShare: number;
}

/** Heat capacity rate that stands for one without bound. */
const ENDLESS = 1e9;

function ratesOf({ NTU, Cr, smaller, airShare }: CoreCase): BlockRates {
  const larger = Cr === 0 ? ENDLESS : 1 / Cr;
  return {
    airRate: smaller === 'air' ? 1 : larger,
    coolantRate: smaller === 'coolant' ? 1 : larger,
    airConductance: NTU / airShare,
    coolantConductance: NTU / (1 - airShare),
    metalLoss: 0,
    metalSource: 0,
  };
}

/** Effectiveness as the cells have it: air enters at 1, coolant at 0. */
export function cellEffectivenessOf(core: CoreCase, nx: number, ny: number): number {
  const { airOut, coolantOut } = steadyOutlets(ratesOf(core), nx, ny, 1, 0);
  return core.smaller === 'air' ? 1 - airOut : coolantOut;
}
