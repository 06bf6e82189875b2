/**
 * The linearised observation equations of one iteration: whitened residuals r and the rows of J = dr/dx, stored sparsely,
 * since a mark depends on some fifteen of the unknowns.
 */
import type { BudgetGroup } from './budget-group.ts';

export class Equations {
  readonly unknowns: number;
  readonly residuals: Float64Array;
  readonly groups: BudgetGroup[] = [];
  /** Row i owns the entries rowEnds[i - 1] .. rowEnds[i] of columns and values. */
  readonly rowEnds: Int32Array;
  readonly columns: Int32Array;
  readonly values: Float64Array;
  #rows = 0;
  #entries = 0;

  /** most: the most rows and entries that will be added. */
  constructor(unknowns: number, most: { readonly rows: number; readonly entries: number }) {
    this.unknowns = unknowns;
    this.residuals = new Float64Array(most.rows);
    this.rowEnds = new Int32Array(most.rows);
    this.columns = new Int32Array(most.entries);
    this.values = new Float64Array(most.entries);
  }

  /** Entries given with add() belong to the row that the next close() ends. */
  add(column: number, value: number): void {
    this.columns[this.#entries] = column;
    this.values[this.#entries++] = value;
  }

  close(residual: number, group: BudgetGroup): void {
    this.residuals[this.#rows] = residual;
    this.rowEnds[this.#rows++] = this.#entries;
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

  /** Lower triangle of J^T J, row by row, and J^T r. */
  normal(): { readonly matrix: Float64Array; readonly gradient: Float64Array } {
    const n = this.unknowns;
    const matrix = new Float64Array(n * n);
    const gradient = new Float64Array(n);
    const { columns, values } = this;
    let begin = 0;
    for (let row = 0; row < this.rows; row++) {
      const end = this.rowEnds[row] as number;
      const r = this.residuals[row] as number;
      for (let a = begin; a < end; a++) {
        const i = columns[a] as number;
        const vi = values[a] as number;
        gradient[i] = (gradient[i] as number) + vi * r;
        // A row names a column once, so each pair of its entries is one place of the lower triangle.
        for (let b = begin; b <= a; b++) {
          const j = columns[b] as number;
          const at = i > j ? i * n + j : j * n + i;
          matrix[at] = (matrix[at] as number) + vi * (values[b] as number);
        }
      }
      begin = end;
    }
    return { matrix, gradient };
  }

  /** J row . x */
  rowDot(row: number, x: Float64Array): number {
    let sum = 0;
    const end = this.rowEnds[row] as number;
    for (let a = row === 0 ? 0 : (this.rowEnds[row - 1] as number); a < end; a++) {
      sum += (this.values[a] as number) * (x[this.columns[a] as number] as number);
    }
    return sum;
  }
}
