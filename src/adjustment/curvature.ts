/**
 * How the observation equations bend at a solution: what Gauss-Newton's matrix leaves out of the second derivatives of the sum.
 *
 * Model    half of the second derivatives of |r|^2 is J^T J + sum of r_i C_i, C_i the second derivatives of r_i. They are taken at one
 *          place, from J a little up and down each unknown.
 * Assumes  they are nearly the same wherever they are used: within the spread of that solution.
 */
import { inverseForm, type SparseFactor } from '../basics/sparse-symmetric.ts';
import type { Equations, Normal } from './equations.ts';

/** Of the standard uncertainty of an unknown: J is linear over so little, and its differences are far above rounding. */
const SHORT = 0.01;
/** Of a second derivative, in units of both standard uncertainties: what smaller ones change drowns in the rest. */
const LEAST = 1e-3;

export class Curvature {
  /** Observation k owns the entries ends[k - 1] .. ends[k]: place in the lower triangle of the normal matrix, value. */
  readonly #ends: Int32Array;
  readonly #places: Int32Array;
  readonly #values: Float64Array;

  /** factor: of J^T J at x. */
  constructor(evaluate: (x: Float64Array) => Equations, x: Float64Array, factor: SparseFactor) {
    const n = x.length;
    const u = Float64Array.from(x, (_, i) => Math.sqrt(inverseForm(factor, unit(n, i))));
    const entries = evaluate(x).observations.map(() => ({ places: [] as number[], values: [] as number[] }));
    for (let j = 0; j < n; j++) {
      const h = SHORT * (u[j] as number);
      const rowsAt = (by: number) => {
        const equations = evaluate(x.map((value, i) => (i === j ? value + by : value)));
        return equations.observations.map((row) => equations.row(row));
      };
      const [up, down] = [rowsAt(h), rowsAt(-h)];
      for (const [k, { places, values }] of entries.entries()) {
        const [a, b] = [up[k] as Float64Array, down[k] as Float64Array];
        for (let i = j; i < n; i++) {
          const value = ((a[i] as number) - (b[i] as number)) / (2 * h);
          if (Math.abs(value) * (u[i] as number) * (u[j] as number) < LEAST) continue;
          places.push(i * n + j);
          values.push(value);
        }
      }
    }
    let end = 0;
    this.#ends = Int32Array.from(entries, ({ places }) => {
      end += places.length;
      return end;
    });
    this.#places = Int32Array.from(entries.flatMap(({ places }) => places));
    this.#values = Float64Array.from(entries.flatMap(({ values }) => values));
  }

  /** To J^T J, in place; residuals of the observations in their order. */
  addTo({ matrix }: Normal, residuals: ArrayLike<number>): void {
    const [places, values] = [this.#places, this.#values];
    for (let k = 0, at = 0; k < this.#ends.length; k++) {
      const r = residuals[k] as number;
      for (const end = this.#ends[k] as number; at < end; at++) {
        const place = places[at] as number;
        matrix[place] = (matrix[place] as number) + r * (values[at] as number);
      }
    }
  }
}

function unit(n: number, at: number): Float64Array {
  const e = new Float64Array(n);
  e[at] = 1;
  return e;
}
