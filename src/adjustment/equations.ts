/**
 * The linearised observation equations of one iteration: whitened residuals r and the rows of J = dr/dx, stored sparsely,
 * since a mark depends on some fifteen of the unknowns. The two rows of a mark share their columns.
 */
import type { BudgetGroup } from './budget-group.ts';

/** J^T J, lower triangle row by row, and J^T r. */
export type Normal = { readonly matrix: Float64Array; readonly gradient: Float64Array };

export class Equations {
  readonly unknowns: number;
  readonly residuals: Float64Array;
  readonly groups: BudgetGroup[] = [];
  /** Row i owns the entries begins[i] .. ends[i], columns ascending; the second row of a pair shares its first row's columns. */
  readonly #begins: Int32Array;
  readonly #ends: Int32Array;
  readonly #isSecond: Uint8Array;
  readonly #columns: Int32Array;
  readonly #values: Float64Array;
  readonly #secondValues: Float64Array;
  #rows = 0;
  #begin = 0;
  #end = 0;

  /** most: the most rows and entries that will be added. */
  constructor(unknowns: number, most: { readonly rows: number; readonly entries: number }) {
    this.unknowns = unknowns;
    this.residuals = new Float64Array(most.rows);
    this.#begins = new Int32Array(most.rows);
    this.#ends = new Int32Array(most.rows);
    this.#isSecond = new Uint8Array(most.rows);
    this.#columns = new Int32Array(most.entries);
    this.#values = new Float64Array(most.entries);
    this.#secondValues = new Float64Array(most.entries);
  }

  /** Without rows, to be filled anew: an iteration that was left gives its room to the next. */
  emptied(): Equations {
    this.#rows = 0;
    this.#begin = 0;
    this.#end = 0;
    this.groups.length = 0;
    return this;
  }

  /** Entries given with add() belong to the row that the next close() ends; each column once, in any order. */
  add(column: number, value: number): void {
    this.addBoth(column, value, 0);
  }

  /** The same for the two rows that the next closeBoth() ends. */
  addBoth(column: number, value: number, secondValue: number): void {
    const columns = this.#columns;
    const values = this.#values;
    const seconds = this.#secondValues;
    let at = this.#end++;
    for (; at > this.#begin && (columns[at - 1] as number) > column; at--) {
      columns[at] = columns[at - 1] as number;
      values[at] = values[at - 1] as number;
      seconds[at] = seconds[at - 1] as number;
    }
    columns[at] = column;
    values[at] = value;
    seconds[at] = secondValue;
  }

  close(residual: number, group: BudgetGroup): void {
    this.#closeRow(residual, group, 0);
    this.#begin = this.#end;
  }

  closeBoth(residual: number, secondResidual: number, group: BudgetGroup): void {
    this.#closeRow(residual, group, 0);
    this.#closeRow(secondResidual, group, 1);
    this.#begin = this.#end;
  }

  #closeRow(residual: number, group: BudgetGroup, isSecond: 0 | 1): void {
    const row = this.#rows++;
    this.residuals[row] = residual;
    this.groups.push(group);
    this.#begins[row] = this.#begin;
    this.#ends[row] = this.#end;
    this.#isSecond[row] = isSecond;
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
      if (row + 1 < this.#rows && this.#isSecond[row + 1] === 1) this.#addProducts(into, row++);
      else this.#addProduct(into, row);
    }
    return into;
  }

  #addProduct({ matrix, gradient }: Normal, row: number): void {
    const n = this.unknowns;
    const [columns, values] = [this.#columns, this.#values];
    const [begin, end] = [this.#begins[row] as number, this.#ends[row] as number];
    const r = this.residuals[row] as number;
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

  /** The same for a row and the second one that shares its columns: little more work than for one. */
  #addProducts({ matrix, gradient }: Normal, row: number): void {
    const n = this.unknowns;
    const [columns, values, seconds] = [this.#columns, this.#values, this.#secondValues];
    const [begin, end] = [this.#begins[row] as number, this.#ends[row] as number];
    const [r, s] = [this.residuals[row] as number, this.residuals[row + 1] as number];
    for (let a = begin; a < end; a++) {
      const i = columns[a] as number;
      const v = values[a] as number;
      const w = seconds[a] as number;
      gradient[i] = (gradient[i] as number) + v * r + w * s;
      for (let b = begin; b <= a; b++) {
        const at = i * n + (columns[b] as number);
        matrix[at] = (matrix[at] as number) + v * (values[b] as number) + w * (seconds[b] as number);
      }
    }
  }

  /** J row . x */
  rowDot(row: number, x: Float64Array): number {
    const values = this.#isSecond[row] === 1 ? this.#secondValues : this.#values;
    let sum = 0;
    for (let a = this.#begins[row] as number; a < (this.#ends[row] as number); a++)
      sum += (values[a] as number) * (x[this.#columns[a] as number] as number);
    return sum;
  }

  /** J row^T, as a vector. */
  row(row: number): Float64Array {
    const values = this.#isSecond[row] === 1 ? this.#secondValues : this.#values;
    const x = new Float64Array(this.unknowns);
    for (let a = this.#begins[row] as number; a < (this.#ends[row] as number); a++)
      x[this.#columns[a] as number] = values[a] as number;
    return x;
  }
}

function roomForNormal(unknowns: number): Normal {
  return { matrix: new Float64Array(unknowns * unknowns), gradient: new Float64Array(unknowns) };
}
