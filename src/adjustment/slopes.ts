/**
 * Equations of which only the sum of squares and its slope are wanted: each row is spent as it is closed.
 *
 * Model    sum |r|^2 and J^T r, every row with an observation's displacement taken off its residual (displacements.ts).
 */
import type { PairOfRows, Rows } from './equations.ts';

export class Slopes implements Rows {
  chiSquare = 0;
  readonly gradient: Float64Array;
  readonly #columns: Int32Array;
  readonly #values: Float64Array;
  #entries = 0;
  #displacements: Float64Array;
  /** The next observation's, of those that are not of marks. */
  #next = 0;
  readonly #firstOther: number;

  /** marks: how many there are; theirs are displaced in place. */
  constructor(unknowns: number, marks: number) {
    this.gradient = new Float64Array(unknowns);
    this.#columns = new Int32Array(unknowns);
    this.#values = new Float64Array(unknowns);
    this.#displacements = new Float64Array(0);
    this.#firstOther = 2 * marks;
  }

  emptied(displacements: Float64Array): this {
    this.chiSquare = 0;
    this.gradient.fill(0);
    this.#displacements = displacements;
    this.#next = this.#firstOther;
    return this;
  }

  add(column: number, value: number): void {
    this.#columns[this.#entries] = column;
    this.#values[this.#entries++] = value;
  }

  close(residual: number): void {
    this.closeBound(residual - (this.#displacements[this.#next++] as number));
  }

  closeBound(residual: number): void {
    this.chiSquare += residual * residual;
    for (let i = 0; i < this.#entries; i++) {
      const at = this.#columns[i] as number;
      this.gradient[at] = (this.gradient[at] as number) + residual * (this.#values[i] as number);
    }
    this.#entries = 0;
  }

  addPair({ entries, columns, first, second }: PairOfRows, residual: number, secondResidual: number): void {
    const { gradient } = this;
    this.chiSquare += residual * residual + secondResidual * secondResidual;
    for (let i = 0; i < entries; i++) {
      const at = columns[i] as number;
      gradient[at] =
        (gradient[at] as number) + residual * (first[i] as number) + secondResidual * (second[i] as number);
    }
  }
}
