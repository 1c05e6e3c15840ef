import { OutOfRangeError, requirePositive } from '../errors.ts';

/** Layers of tubes between two headers of one size. */
export interface HeaderFlow {
  /** ports at the same end of the stack (U) or at opposite ends (Z) */
  readonly arrangement: 'U' | 'Z';
  readonly layers: number;
  /** m3/s */
  readonly totalFlow: number;
  /** kg/m3 */
  readonly density: number;
  /** m2, each header, across its length */
  readonly headerArea: number;
  /** drop of one layer = linear q + quadratic q^2: Pa/(m3/s) and Pa/(m3/s)^2 */
  readonly linear: number;
  readonly quadratic: number;
}

/** How the flow falls to the layers, counted from the inlet port. */
export interface LayerSplit {
  /** share of the total flow, sum 1 */
  readonly shares: readonly number[];
  /** Pa from the inlet header's port end to the outlet header's */
  readonly drop: number;
  /** Pa of it beyond the drop of an even split */
  readonly headerDrop: number;
}

/**
 * Momentum coefficients: static pressure changes by C rho/2 (V1^2 - V2^2) past a branch. Bernoulli gives 1 where the
 * header feeds, momentum 2 where the layers enter square to it. Own choice inside the published form; measured ones lie
 * near these and depend on the branch.
 */
const DIVIDING = 1;
const COMBINING = 2;

const MOST_ROUNDS = 60;

/** Headers so small beside the drop of a layer that the momentum balance has no answer. */
export class NoSteadySplitError extends OutOfRangeError {
  /** @param headerArea - of the headers [m2] */
  constructor(headerArea: number) {
    super('header area in m2', headerArea, 'large enough for the flow to find a steady split');
    this.name = 'NoSteadySplitError';
  }
}

/**
 * Split of the coolant over the layers from the momentum balance of both headers.
 *
 *     dividing:   p rises by C rho/2 (V^2 before - V^2 after a branch),  C = 1
 *     combining:  p falls by C rho/2 (V^2 after - V^2 before a branch),  C = 2
 *     every layer: p dividing - p combining = a q + b q^2
 *
 * The pressure at a branch is the mean of before and after it. With ports at one end (U) the layers next to them get
 * most, with ports at opposite ends (Z) those at the far end from the inlet.
 *
 * Range: 1 or more layers; headers of one area, their wall friction left out: for headers no longer than some ten of
 * their diameters. A flow that comes out backwards in a layer is an answer, not an error.
 *
 * @param header - arrangement, layers, flow, header area and the drop of one layer [SI]
 * @returns shares from the inlet port on, and the drop with and beyond an even split [-, Pa]
 * @throws {OutOfRangeError} when a size or the flow is not above 0, or layers are not a whole number
 * @throws {NoSteadySplitError} when no split is found
 *
 * @example
 * splitOverLayers({
 *   arrangement: 'U', layers: 2, totalFlow: 0.00025, density: 1060, headerArea: 0.0001, linear: 8000000, quadratic: 0
 * }).shares.0 // 0.9140625
 *
 * [1] R. A. Bajura, E. H. Jones, Flow distribution manifolds, J. Fluids Eng. 98, 1976, 654-665.
 * [2] M. K. Bassiouny, H. Martin, Flow distribution and pressure drop in plate heat exchangers, Chem. Eng. Sci. 39,
 *     1984, 693-704.
 */
export function splitOverLayers(header: HeaderFlow): LayerSplit {
  const { layers: n, totalFlow, linear, quadratic } = header;
  if (!(Number.isInteger(n) && n >= 1)) throw new OutOfRangeError('layers', n, 'a whole number from 1');
  for (const size of ['totalFlow', 'density', 'headerArea'] as const) requirePositive(size, header[size]);
  requirePositive('drop of a layer', linear + quadratic * totalFlow);
  const even = (linear * totalFlow) / n + quadratic * (totalFlow / n) ** 2;
  if (n === 1) return { shares: [1], drop: even, headerDrop: 0 };

  // Newton in shares of the flow and in units of the even drop: n layers and the drop between the port ends.
  const flow = new Float64Array(n).fill(1 / n);
  let drop = 1;
  const a = (linear * totalFlow) / even;
  const b = (quadratic * totalFlow ** 2) / even;
  const head = (header.density * (totalFlow / header.headerArea) ** 2) / 2 / even;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { residual, jacobian } = equations(header.arrangement, flow, drop, a, b, head);
    const step = solved(jacobian, residual);
    // A layer that changes by more than its mean flow at once is off the mark: take the step in parts.
    const largest = Math.max(...step.subarray(0, n).map(Math.abs)) * n;
    const part = Math.min(1, 1 / largest);
    for (let k = 0; k < n; k++) flow[k] -= part * step[k];
    drop -= part * step[n];
    if (largest < 1e-12 * n) return { shares: [...flow], drop: drop * even, headerDrop: (drop - 1) * even };
  }
  throw new NoSteadySplitError(header.headerArea);
}

/** Residual of every layer and of the sum, with its derivatives by shares and drop. */
function equations(arrangement: 'U' | 'Z', flow: Float64Array, drop: number, a: number, b: number, head: number) {
  const n = flow.length;
  const residual = new Float64Array(n + 1);
  const jacobian = Array.from({ length: n + 1 }, () => new Float64Array(n + 1));
  residual[n] = -1;
  let passed = 0;
  for (let k = 0; k < n; k++) {
    // Share still in the dividing header before and after the branch; in the combining one it is the same at one end
    // (U) and what has passed at opposite ends (Z).
    const before = 1 - passed;
    const after = before - flow[k];
    const meanSquare = (before ** 2 + after ** 2) / 2;
    const leaving = arrangement === 'U' ? meanSquare : (passed ** 2 + (passed + flow[k]) ** 2) / 2;
    const driving = drop + head * (DIVIDING * (1 - meanSquare) - COMBINING * (1 - leaving));
    residual[k] = driving - a * flow[k] - b * flow[k] * Math.abs(flow[k]);
    jacobian[k][n] = 1;
    jacobian[k][k] -= a + 2 * b * Math.abs(flow[k]);
    for (let j = 0; j <= k; j++) {
      // before = 1 - sum of the flows ahead, after takes this one too; passed is their sum.
      const ofMean = j < k ? -(before + after) : -after;
      const ofPassed = j < k ? 2 * passed + flow[k] : passed + flow[k];
      const ofLeaving = arrangement === 'U' ? ofMean : ofPassed;
      jacobian[k][j] += head * (-DIVIDING * ofMean + COMBINING * ofLeaving);
    }
    jacobian[n][k] = 1;
    residual[n] += flow[k];
    passed += flow[k];
  }
  return { residual, jacobian };
}

/** Gauss with row exchange, in place; returns the unknowns in the right-hand side. */
function solved(matrix: readonly Float64Array[], rightSide: Float64Array): Float64Array {
  const rows = [...matrix];
  const size = rightSide.length;
  for (let i = 0; i < size; i++) {
    let pivot = i;
    for (let r = i + 1; r < size; r++) if (Math.abs(rows[r][i]) > Math.abs(rows[pivot][i])) pivot = r;
    [rows[i], rows[pivot]] = [rows[pivot], rows[i]];
    [rightSide[i], rightSide[pivot]] = [rightSide[pivot], rightSide[i]];
    for (let r = i + 1; r < size; r++) {
      const factor = rows[r][i] / rows[i][i];
      for (let c = i; c < size; c++) rows[r][c] -= factor * rows[i][c];
      rightSide[r] -= factor * rightSide[i];
    }
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let c = i + 1; c < size; c++) rightSide[i] -= rows[i][c] * rightSide[c];
    rightSide[i] /= rows[i][i];
  }
  return rightSide;
}
