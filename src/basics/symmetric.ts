/**
 * Symmetric positive definite systems, dense and small (up to some hundred unknowns).
 *
 * Model    A = L L^T (Cholesky); A x = b by two triangular solves; A^-1 = L^-T L^-1.
 * Assumes  A is stored row by row as n x n; only its lower triangle is read.
 * Fails    where a pivot is not positive: the system is singular at working precision (result null, nothing thrown).
 * Source   Golub, Van Loan: Matrix Computations, 4th ed., 4.2 (from memory).
 */

/** Lower triangle L of a, row by row, n x n; null where a is not positive definite. */
export function choleskyFactor(a: Float64Array, n: number): Float64Array | null {
  const lower = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    const rowI = i * n;
    for (let j = 0; j <= i; j++) {
      const rowJ = j * n;
      let sum = a[rowI + j] as number;
      for (let k = 0; k < j; k++) sum -= (lower[rowI + k] as number) * (lower[rowJ + k] as number);
      if (i !== j) {
        lower[rowI + j] = sum / (lower[rowJ + j] as number);
      } else {
        if (!(sum > 1e-14 * Math.abs(a[rowI + i] as number))) return null;
        lower[rowI + i] = Math.sqrt(sum);
      }
    }
  }
  return lower;
}

/** Solves L L^T x = b. */
export function choleskySolve(lower: Float64Array, n: number, b: Float64Array): Float64Array {
  const x = new Float64Array(b);
  for (let i = 0; i < n; i++) {
    let sum = x[i] as number;
    for (let k = 0; k < i; k++) sum -= (lower[i * n + k] as number) * (x[k] as number);
    x[i] = sum / (lower[i * n + i] as number);
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i] as number;
    for (let k = i + 1; k < n; k++) sum -= (lower[k * n + i] as number) * (x[k] as number);
    x[i] = sum / (lower[i * n + i] as number);
  }
  return x;
}

/** Inverse of L (lower triangle, row by row): rows of it give quadratic forms in A^-1 without forming A^-1. */
export function lowerInverse(lower: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    inverse[j * n + j] = 1 / (lower[j * n + j] as number);
    for (let i = j + 1; i < n; i++) {
      let sum = 0;
      for (let k = j; k < i; k++) sum -= (lower[i * n + k] as number) * (inverse[k * n + j] as number);
      inverse[i * n + j] = sum / (lower[i * n + i] as number);
    }
  }
  return inverse;
}

/** A^-1 from the inverse of its Cholesky factor. */
export function inverseFromLower(lowerInv: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = i; k < n; k++) sum += (lowerInv[k * n + i] as number) * (lowerInv[k * n + j] as number);
      inverse[i * n + j] = sum;
      inverse[j * n + i] = sum;
    }
  }
  return inverse;
}
