import { fitLine } from '../kernels/least-squares.ts';

/**
 * What share of the variance of a result goes with each input: the squares of the standardised regression coefficients.
 *
 *     y = b_0 + sum b_i x_i + rest,   share_i = (b_i^2/12) / (sum b_j^2/12 + variance of the rest)
 *
 * x_i runs evenly from 0 to 1, with variance 1/12. Exact for a straight-line model whatever the points; where the model
 * is curved or inputs act together, the shares and `unexplained` still add up to 1, and `unexplained` says how much the
 * ranking leaves open. Not a rank correlation: peaks here are nearly straight in these inputs.
 *
 * @param points - rows of x, each 0 to 1, more rows than inputs + 1
 * @param results - y of each row
 * @returns shares in the order of the inputs; all 0 where the result does not vary
 *
 * @example
 * varianceShares([[0, 0], [1, 0], [0, 1], [1, 1]], [0, 2, 1, 3]).shares // [0.8, 0.2]
 *
 * [1] A. Saltelli et al., Global Sensitivity Analysis: The Primer, Wiley, 2008, section 1.2.5.
 */
export function varianceShares(
  points: readonly (readonly number[])[],
  results: readonly number[],
): { readonly shares: readonly number[]; readonly unexplained: number } {
  const [level, ...slopes] = fitLine(points, results);
  const rest = points.map((point, row) =>
    slopes.reduce((sum, slope, axis) => sum - slope * point[axis], results[row] - level),
  );
  const restVariance = rest.reduce((sum, each) => sum + each ** 2, 0) / rest.length;
  const parts = slopes.map((slope) => slope ** 2 / 12);
  const total = parts.reduce((sum, part) => sum + part, restVariance);
  if (!(total > 0)) return { shares: parts, unexplained: 0 };
  return { shares: parts.map((part) => part / total), unexplained: restVariance / total };
}
