/**
 * Eigenvalues and eigenvectors of a small symmetric matrix.
 *
 * Model    cyclic Jacobi rotations until the off-diagonal part vanishes at working precision.
 * Assumes  n x n, row by row, symmetric.
 * Source   Golub, Van Loan: Matrix Computations, 4th ed., 8.5 (from memory).
 */
export type Eigen = {
  /** Ascending. */
  readonly values: readonly number[];
  /** Unit eigenvector of each value. */
  readonly vectors: readonly (readonly number[])[];
};

export function symmetricEigen(matrix: readonly number[], n: number): Eigen {
  const a = [...matrix];
  const v: number[] = Array.from({ length: n * n }, (_, i) => (i % (n + 1) === 0 ? 1 : 0));
  const get = (m: readonly number[], i: number, j: number): number => m[i * n + j] as number;
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0;
    let all = 0;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        all += get(a, i, j) ** 2;
        if (i !== j) off += get(a, i, j) ** 2;
      }
    }
    if (!(off > 1e-30 * all)) break;
    for (let p = 0; p < n - 1; p++) {
      for (let q = p + 1; q < n; q++) {
        if (get(a, p, q) === 0) continue;
        const angle = 0.5 * Math.atan2(2 * get(a, p, q), get(a, q, q) - get(a, p, p));
        turn(a, v, n, p, q, Math.cos(angle), Math.sin(angle));
      }
    }
  }
  const order = Array.from({ length: n }, (_, i) => i).sort((i, j) => get(a, i, i) - get(a, j, j));
  return {
    values: order.map((i) => get(a, i, i)),
    vectors: order.map((i) => Array.from({ length: n }, (_, k) => get(v, k, i))),
  };
}

/** a <- J^T a J and v <- v J for the plane rotation J in (p, q). */
function turn(a: number[], v: number[], n: number, p: number, q: number, c: number, s: number): void {
  for (let k = 0; k < n; k++) {
    for (const m of [a, v]) {
      const mp = m[k * n + p] as number;
      const mq = m[k * n + q] as number;
      m[k * n + p] = c * mp - s * mq;
      m[k * n + q] = s * mp + c * mq;
    }
  }
  for (let k = 0; k < n; k++) {
    const mp = a[p * n + k] as number;
    const mq = a[q * n + k] as number;
    a[p * n + k] = c * mp - s * mq;
    a[q * n + k] = s * mp + c * mq;
  }
}
