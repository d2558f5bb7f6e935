/** Solves the normal equations of a small least-squares problem. */

/**
 * Inverse of a symmetric positive definite matrix of size n, row by row, by Cholesky's decomposition; null where it is not
 * positive definite to rounding, so that a fit without enough evidence has no answer rather than a wild one.
 */
export function invertSymmetric(matrix: Float64Array, n: number): Float64Array | null {
  const lower = new Float64Array(n * n);
  for (let row = 0; row < n; row += 1)
    for (let column = 0; column <= row; column += 1) {
      let sum = matrix[row * n + column] ?? Number.NaN;
      for (let k = 0; k < column; k += 1) sum -= (lower[row * n + k] ?? 0) * (lower[column * n + k] ?? 0);
      if (row !== column) lower[row * n + column] = sum / (lower[column * n + column] ?? Number.NaN);
      else if (sum > LEAST_SHARE * (matrix[row * n + row] ?? 0)) lower[row * n + row] = Math.sqrt(sum);
      else return null;
    }
  const inverse = new Float64Array(n * n);
  for (let column = 0; column < n; column += 1) {
    const solved = solveLower(lower, n, column);
    for (let row = 0; row < n; row += 1) inverse[row * n + column] = solved[row] ?? Number.NaN;
  }
  return inverse;
}

/** What is left of a diagonal element, at least, for its unknown to be told from the others. */
const LEAST_SHARE = 1e-10;

/** Solves L·Lᵀ·x = e_column. */
function solveLower(lower: Float64Array, n: number, column: number): Float64Array {
  const x = new Float64Array(n);
  x[column] = 1;
  for (let row = 0; row < n; row += 1) {
    let sum = x[row] ?? 0;
    for (let k = 0; k < row; k += 1) sum -= (lower[row * n + k] ?? 0) * (x[k] ?? 0);
    x[row] = sum / (lower[row * n + row] ?? Number.NaN);
  }
  for (let row = n - 1; row >= 0; row -= 1) {
    let sum = x[row] ?? 0;
    for (let k = row + 1; k < n; k += 1) sum -= (lower[k * n + row] ?? 0) * (x[k] ?? 0);
    x[row] = sum / (lower[row * n + row] ?? Number.NaN);
  }
  return x;
}
