/**
 * The linearised observation equations of one iteration: whitened residuals r and the rows of J = dr/dx, stored sparsely,
 * since a mark depends on some fifteen of the unknowns.
 */
import type { BudgetGroup } from './budget-group.ts';

/** J^T J, lower triangle row by row, and J^T r. */
export type Normal = { readonly matrix: Float64Array; readonly gradient: Float64Array };

export class Equations {
  readonly unknowns: number;
  readonly residuals: Float64Array;
  readonly groups: BudgetGroup[] = [];
  /** Row i owns the entries ends[i] .. ends[i + 1] of columns and values, columns ascending. */
  readonly #ends: Int32Array;
  readonly #columns: Int32Array;
  readonly #values: Float64Array;
  #rows = 0;
  #entries = 0;

  /** most: the most rows and entries that will be added. */
  constructor(unknowns: number, most: { readonly rows: number; readonly entries: number }) {
    this.unknowns = unknowns;
    this.residuals = new Float64Array(most.rows);
    this.#ends = new Int32Array(most.rows + 1);
    this.#columns = new Int32Array(most.entries);
    this.#values = new Float64Array(most.entries);
  }

  /** Without rows, to be filled anew: an iteration that was left gives its room to the next. */
  emptied(): Equations {
    this.#rows = 0;
    this.#entries = 0;
    this.groups.length = 0;
    return this;
  }

  /** Entries given with add() belong to the row that the next close() ends; each column once, in any order. */
  add(column: number, value: number): void {
    const [columns, values] = [this.#columns, this.#values];
    const begin = this.#ends[this.#rows] as number;
    let at = this.#entries++;
    for (; at > begin && (columns[at - 1] as number) > column; at--) {
      columns[at] = columns[at - 1] as number;
      values[at] = values[at - 1] as number;
    }
    columns[at] = column;
    values[at] = value;
  }

  close(residual: number, group: BudgetGroup): void {
    this.residuals[this.#rows] = residual;
    this.#ends[++this.#rows] = this.#entries;
    this.groups.push(group);
  }

  get rows(): number {
    return this.#rows;
  }

  /** Sum of squared whitened residuals. */
  get chiSquare(): number {
    let sum = 0;
    for (let row = 0; row < this.#rows; row++) sum += (this.residuals[row] as number) ** 2;
    return sum;
  }

  /** into: overwritten and returned. */
  normal(into: Normal = roomForNormal(this.unknowns)): Normal {
    into.matrix.fill(0);
    into.gradient.fill(0);
    for (let row = 0; row < this.#rows; row++) {
      // The two rows of a mark know the same unknowns: taken together they cost little more than one.
      if (this.#sameColumns(row, row + 1)) this.#addProducts(into, row, ++row);
      else this.#addProduct(into, row);
    }
    return into;
  }

  #sameColumns(row: number, next: number): boolean {
    if (next >= this.#rows) return false;
    const [columns, ends] = [this.#columns, this.#ends];
    const [begin, end] = [ends[row] as number, ends[next] as number];
    const width = end - begin;
    if ((ends[next + 1] as number) - end !== width) return false;
    for (let k = begin; k < end; k++) if (columns[k] !== columns[k + width]) return false;
    return true;
  }

  #addProduct({ matrix, gradient }: Normal, row: number): void {
    const n = this.unknowns;
    const [columns, values] = [this.#columns, this.#values];
    const r = this.residuals[row] as number;
    const [begin, end] = [this.#ends[row] as number, this.#ends[row + 1] as number];
    for (let a = begin; a < end; a++) {
      const i = columns[a] as number;
      const v = values[a] as number;
      gradient[i] = (gradient[i] as number) + v * r;
      for (let b = begin; b <= a; b++) {
        const at = i * n + (columns[b] as number);
        matrix[at] = (matrix[at] as number) + v * (values[b] as number);
      }
    }
  }

  /** The same for two rows with the same columns. */
  #addProducts({ matrix, gradient }: Normal, first: number, second: number): void {
    const n = this.unknowns;
    const [columns, values] = [this.#columns, this.#values];
    const [r, s] = [this.residuals[first] as number, this.residuals[second] as number];
    const [begin, end] = [this.#ends[first] as number, this.#ends[second] as number];
    const width = end - begin;
    for (let a = begin; a < end; a++) {
      const i = columns[a] as number;
      const v = values[a] as number;
      const w = values[a + width] as number;
      gradient[i] = (gradient[i] as number) + v * r + w * s;
      for (let b = begin; b <= a; b++) {
        const at = i * n + (columns[b] as number);
        matrix[at] = (matrix[at] as number) + v * (values[b] as number) + w * (values[b + width] as number);
      }
    }
  }

  /** J row . x */
  rowDot(row: number, x: Float64Array): number {
    let sum = 0;
    const end = this.#ends[row + 1] as number;
    for (let a = this.#ends[row] as number; a < end; a++) {
      sum += (this.#values[a] as number) * (x[this.#columns[a] as number] as number);
    }
    return sum;
  }

  /** J row^T, as a vector. */
  row(row: number): Float64Array {
    const x = new Float64Array(this.unknowns);
    const end = this.#ends[row + 1] as number;
    for (let a = this.#ends[row] as number; a < end; a++) {
      x[this.#columns[a] as number] = this.#values[a] as number;
    }
    return x;
  }
}

function roomForNormal(unknowns: number): Normal {
  return { matrix: new Float64Array(unknowns * unknowns), gradient: new Float64Array(unknowns) };
}
