/**
 * Steps to a minimum near by, from slopes alone: the factor of the normal matrix stays, and what it does not know of the
 * curvature is learnt from how the slope changed over the steps made.
 *
 * Model    step p = H g with H = N^-1 corrected by each pair s (a step), y (the change of the slope g over it):
 *          H <- (I - s y^T / y.s) H (I - y s^T / y.s) + s s^T / y.s, applied in two loops over the pairs, never formed.
 * Assumes  N = J^T J from near by: what it lacks, residuals times second derivatives, acts in few directions.
 * Fails    of a pair with y.s <= 0 nothing is learnt.
 * Source   Nocedal, Wright: Numerical Optimization, 2nd ed., algorithm 7.4 (number from memory).
 */
import { type SparseFactor, sparseSolve } from '../basics/sparse-symmetric.ts';

type Pair = { readonly s: Float64Array; readonly y: Float64Array; readonly ys: number };
type Place = { readonly x: Float64Array; readonly gradient: Float64Array };

export class SecantSteps {
  readonly #factor: SparseFactor;
  readonly #pairs: Pair[] = [];

  constructor(factor: SparseFactor) {
    this.#factor = factor;
  }

  learn(from: Place, to: Place): void {
    const [s, y] = [difference(to.x, from.x), difference(to.gradient, from.gradient)];
    const ys = product(y, s);
    if (ys > 0) this.#pairs.push({ s, y, ys });
  }

  /** To be taken off x. */
  step(gradient: Float64Array): Float64Array {
    const pairs = this.#pairs;
    const left = gradient.slice();
    const shares = new Float64Array(pairs.length);
    for (let i = pairs.length - 1; i >= 0; i--) {
      const { s, y, ys } = pairs[i] as Pair;
      shares[i] = product(s, left) / ys;
      addScaled(left, -(shares[i] as number), y);
    }
    const step = sparseSolve(this.#factor, left);
    for (const [i, { s, y, ys }] of pairs.entries())
      addScaled(step, (shares[i] as number) - product(y, step) / ys, s);
    return step;
  }
}

export function product(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

function difference(a: Float64Array, b: Float64Array): Float64Array {
  const d = a.slice();
  addScaled(d, -1, b);
  return d;
}

function addScaled(into: Float64Array, factor: number, b: Float64Array): void {
  for (let i = 0; i < into.length; i++) into[i] = (into[i] as number) + factor * (b[i] as number);
}
