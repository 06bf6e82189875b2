/**
 * Symmetric positive definite systems of which a good part is zero, small (up to some hundred unknowns).
 *
 * Model    A = M^T M, M lower triangular: Cholesky's factor, the unknowns eliminated from the last to the first. Unknowns that
 *          share equations with few others stand last: their elimination touches those others only (it is their Schur
 *          complement), and what stays zero costs nothing.
 *          A x = b by M^T y = b and M x = y; b^T A^-1 b = |y|^2.
 * Assumes  A is stored row by row as n x n; only its lower triangle is read.
 * Fails    where a pivot is not positive: the system is singular at working precision (result null, nothing thrown).
 * Source   Golub, Van Loan: Matrix Computations, 4th ed., 4.2 (from memory).
 */

/** M: its diagonal, and what is not zero left of it; row k owns the entries rowEnds[k + 1] .. rowEnds[k]. */
export type SparseFactor = {
  readonly n: number;
  readonly diagonal: Float64Array;
  readonly rowEnds: Int32Array;
  readonly columns: Int32Array;
  readonly values: Float64Array;
  /** What is left of A to eliminate. */
  readonly rest: Float64Array;
};

/** A pivot below this share of its own diagonal is rounding only. */
const LEAST_PIVOT = 1e-14;

export function roomForFactor(n: number): SparseFactor {
  return {
    n,
    diagonal: new Float64Array(n),
    rowEnds: new Int32Array(n + 1),
    columns: new Int32Array((n * (n - 1)) / 2),
    values: new Float64Array((n * (n - 1)) / 2),
    rest: new Float64Array(n * n),
  };
}

/**
 * Null where a is not positive definite. room: overwritten and returned. damping: factors A + damping diag(A) instead.
 */
export function sparseFactor(
  a: Float64Array,
  n: number,
  room: SparseFactor = roomForFactor(n),
  damping = 0,
): SparseFactor | null {
  const { diagonal, rowEnds, columns, values, rest } = room;
  rest.set(a);
  for (let k = 0; k < n; k++) {
    diagonal[k] = (a[k * n + k] as number) * (1 + damping);
    rest[k * n + k] = diagonal[k] as number;
  }
  let end = 0;
  for (let k = n - 1; k >= 0; k--) {
    const row = k * n;
    const pivot = rest[row + k] as number;
    if (!(pivot > LEAST_PIVOT * Math.abs(diagonal[k] as number))) return null;
    const root = Math.sqrt(pivot);
    diagonal[k] = root;
    const begin = end;
    for (let j = 0; j < k; j++) {
      const value = rest[row + j] as number;
      if (value === 0) continue;
      columns[end] = j;
      values[end++] = value / root;
    }
    rowEnds[k] = end;
    for (let p = begin; p < end; p++) {
      const rowI = (columns[p] as number) * n;
      const m = values[p] as number;
      for (let q = begin; q <= p; q++) {
        const at = rowI + (columns[q] as number);
        rest[at] = (rest[at] as number) - m * (values[q] as number);
      }
    }
  }
  return room;
}

/** Solves M^T M x = b. */
export function sparseSolve(factor: SparseFactor, b: Float64Array): Float64Array {
  const { n, diagonal, rowEnds, columns, values } = factor;
  const x = new Float64Array(b);
  solveTransposed(factor, x);
  for (let k = 0; k < n; k++) {
    let sum = x[k] as number;
    const end = rowEnds[k] as number;
    for (let p = rowEnds[k + 1] as number; p < end; p++)
      sum -= (values[p] as number) * (x[columns[p] as number] as number);
    x[k] = sum / (diagonal[k] as number);
  }
  return x;
}

/** b^T A^-1 b; b is overwritten. */
export function inverseForm(factor: SparseFactor, b: Float64Array): number {
  solveTransposed(factor, b);
  let sum = 0;
  for (let k = 0; k < factor.n; k++) sum += (b[k] as number) ** 2;
  return sum;
}

/** M^T y = b, in place. */
function solveTransposed({ n, diagonal, rowEnds, columns, values }: SparseFactor, b: Float64Array): void {
  for (let k = n - 1; k >= 0; k--) {
    if (b[k] === 0) continue;
    const y = (b[k] as number) / (diagonal[k] as number);
    b[k] = y;
    const end = rowEnds[k] as number;
    for (let p = rowEnds[k + 1] as number; p < end; p++) {
      const j = columns[p] as number;
      b[j] = (b[j] as number) - (values[p] as number) * y;
    }
  }
}
