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
  /** How many there are; what stands behind them is left from before. */
  rows = 0;
  readonly groups: BudgetGroup[] = [];
  /** Row i owns the entries begins[i] .. ends[i], columns ascending; the second row of a pair shares its first row's columns. */
  readonly #begins: Int32Array;
  readonly #ends: Int32Array;
  readonly #isSecond: Uint8Array;
  /** Rows that are no observations. */
  readonly #bounds: number[] = [];
  readonly #columns: Int32Array;
  /** Two for each entry: of the first row, of the second. */
  readonly #values: Float64Array;
  #begin = 0;
  #end = 0;

  /** most: the most rows and entries that will be added. */
  constructor(unknowns: number, most: { readonly rows: number; readonly entries: number }) {
    this.unknowns = unknowns;
    this.residuals = new Float64Array(most.rows);
    this.#begins = new Int32Array(most.rows);
    this.#ends = new Int32Array(most.rows);
    // One more: whether the row after the last is a second one is asked too.
    this.#isSecond = new Uint8Array(most.rows + 1);
    this.#columns = new Int32Array(most.entries);
    this.#values = new Float64Array(2 * most.entries);
  }

  /** Without rows, to be filled anew: an iteration that was left gives its room to the next. */
  emptied(): Equations {
    this.rows = 0;
    this.#bounds.length = 0;
    this.#isSecond.fill(0);
    this.#begin = 0;
    this.#end = 0;
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
    let at = this.#end++;
    for (; at > this.#begin && (columns[at - 1] as number) > column; at--) {
      columns[at] = columns[at - 1] as number;
      values[2 * at] = values[2 * at - 2] as number;
      values[2 * at + 1] = values[2 * at - 1] as number;
    }
    columns[at] = column;
    values[2 * at] = value;
    values[2 * at + 1] = secondValue;
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

  /** As close(), of a row that is no observation: it only keeps an unknown within bounds, and comes and goes with it. */
  closeBound(residual: number, group: BudgetGroup): void {
    this.#bounds.push(this.rows);
    this.close(residual, group);
  }

  #closeRow(residual: number, group: BudgetGroup, isSecond: 0 | 1): void {
    const row = this.rows++;
    this.residuals[row] = residual;
    this.groups[row] = group;
    this.#begins[row] = this.#begin;
    this.#ends[row] = this.#end;
    this.#isSecond[row] = isSecond;
  }

  /** The first of every two rows that share their columns. */
  get pairs(): readonly number[] {
    return Array.from(this.#isSecond).flatMap((isSecond, row) => (isSecond ? [row - 1] : []));
  }

  /** All rows but bounds. */
  get observations(): readonly number[] {
    const rows: number[] = [];
    for (let row = 0, bound = 0; row < this.rows; row++)
      if (row === this.#bounds[bound]) bound++;
      else rows.push(row);
    return rows;
  }

  /** Sum of squared whitened residuals. */
  get chiSquare(): number {
    let sum = 0;
    for (let row = 0; row < this.rows; row++) sum += (this.residuals[row] as number) ** 2;
    return sum;
  }

  /** into: overwritten and returned. */
  normal(into: Normal = roomForNormal(this.unknowns)): Normal {
    into.matrix.fill(0);
    into.gradient.fill(0);
    for (let row = 0; row < this.rows; row++) {
      if (this.#isSecond[row + 1]) this.#addProducts(into, row++);
      else this.#addProduct(into, row);
    }
    return into;
  }

  #addProduct({ matrix, gradient }: Normal, row: number): void {
    const n = this.unknowns;
    const columns = this.#columns;
    const values = this.#values;
    const begin = this.#begins[row] as number;
    const end = this.#ends[row] as number;
    const r = this.residuals[row] as number;
    for (let a = begin; a < end; a++) {
      const i = columns[a] as number;
      const v = values[2 * a] as number;
      gradient[i] = (gradient[i] as number) + v * r;
      for (let b = begin; b <= a; b++) {
        const at = i * n + (columns[b] as number);
        matrix[at] = (matrix[at] as number) + v * (values[2 * b] as number);
      }
    }
  }

  /** The same for a row and the second one that shares its columns: little more work than for one. */
  #addProducts({ matrix, gradient }: Normal, row: number): void {
    const n = this.unknowns;
    const columns = this.#columns;
    const values = this.#values;
    const begin = this.#begins[row] as number;
    const end = this.#ends[row] as number;
    const r = this.residuals[row] as number;
    const s = this.residuals[row + 1] as number;
    for (let a = begin; a < end; a++) {
      const i = columns[a] as number;
      const v = values[2 * a] as number;
      const w = values[2 * a + 1] as number;
      gradient[i] = (gradient[i] as number) + v * r + w * s;
      for (let b = begin; b <= a; b++) {
        const at = i * n + (columns[b] as number);
        matrix[at] =
          (matrix[at] as number) + v * (values[2 * b] as number) + w * (values[2 * b + 1] as number);
      }
    }
  }

  /** J^T r. */
  gradient(): Float64Array {
    const gradient = new Float64Array(this.unknowns);
    const [columns, values] = [this.#columns, this.#values];
    for (let row = 0; row < this.rows; row++) {
      const second = this.#isSecond[row] as number;
      const r = this.residuals[row] as number;
      const end = this.#ends[row] as number;
      for (let a = this.#begins[row] as number; a < end; a++) {
        const i = columns[a] as number;
        gradient[i] = (gradient[i] as number) + r * (values[2 * a + second] as number);
      }
    }
    return gradient;
  }

  /** J row . x */
  rowDot(row: number, x: Float64Array): number {
    const second = this.#isSecond[row] as number;
    let sum = 0;
    for (let a = this.#begins[row] as number; a < (this.#ends[row] as number); a++)
      sum += (this.#values[2 * a + second] as number) * (x[this.#columns[a] as number] as number);
    return sum;
  }

  /** J row^T, as a vector. */
  row(row: number): Float64Array {
    const second = this.#isSecond[row] as number;
    const x = new Float64Array(this.unknowns);
    for (let a = this.#begins[row] as number; a < (this.#ends[row] as number); a++)
      x[this.#columns[a] as number] = this.#values[2 * a + second] as number;
    return x;
  }
}

function roomForNormal(unknowns: number): Normal {
  return { matrix: new Float64Array(unknowns * unknowns), gradient: new Float64Array(unknowns) };
}
