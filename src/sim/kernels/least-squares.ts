/**
 * Coefficients b of the straight line y = b_0 + b_1 x_1 + ... + b_d x_d that fits the points best, by the normal
 * equations of the centred columns. These are symmetric and positive definite, so elimination needs no row exchange.
 *
 * Shapes: `points` n rows of d numbers, `values` n numbers, n above d. Precondition: columns of like size, as those of
 * a unit cube are; a column that the others make up gives infinite or undefined coefficients. Cost: n d^2 + d^3.
 *
 * @param points - rows of x
 * @param values - y of each row
 * @returns b_0, then b_1 to b_d
 *
 * @example
 * fitLine([[0], [1], [2]], [1, 3, 5]) // [1, 2]
 */
export function fitLine(points: readonly (readonly number[])[], values: readonly number[]): number[] {
  const axes = points[0].map((_, axis) => axis);
  const mean = (list: readonly number[]): number => list.reduce((sum, each) => sum + each, 0) / list.length;
  const centre = axes.map((axis) => mean(points.map((point) => point[axis])));
  const level = mean(values);
  const product = (term: (row: number) => number): number => points.reduce((sum, _, row) => sum + term(row), 0);
  const matrix = axes.map((i) => [
    ...axes.map((j) => product((row) => (points[row][i] - centre[i]) * (points[row][j] - centre[j]))),
    product((row) => (points[row][i] - centre[i]) * (values[row] - level)),
  ]);
  eliminate(matrix);
  const slopes: number[] = [];
  for (const i of axes.toReversed()) {
    const known = axes.slice(i + 1).reduce((sum, j) => sum + matrix[i][j] * slopes[j], 0);
    slopes[i] = (matrix[i][axes.length] - known) / matrix[i][i];
  }
  return [level - axes.reduce((sum, axis) => sum + slopes[axis] * centre[axis], 0), ...slopes];
}

/** Brings rows of coefficients and right-hand side to upper triangular form; no exchange of rows, see above. */
function eliminate(matrix: number[][]): void {
  for (let k = 0; k < matrix.length; k++) {
    for (let i = k + 1; i < matrix.length; i++) {
      const factor = matrix[i][k] / matrix[k][k];
      for (let j = k; j <= matrix.length; j++) matrix[i][j] -= factor * matrix[k][j];
    }
  }
}
