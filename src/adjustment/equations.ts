/**
 * The linearised observation equations of one iteration: whitened residuals r and the rows of J = dr/dx, stored sparsely,
 * since a mark depends on some fifteen of the unknowns.
 */
import type { BudgetGroup } from './budget-group.ts';

export class Equations {
  readonly unknowns: number;
  readonly residuals: number[] = [];
  /** Row i owns the entries rowEnds[i - 1] .. rowEnds[i] of columns and values. */
  readonly rowEnds: number[] = [];
  readonly columns: number[] = [];
  readonly values: number[] = [];
  readonly groups: BudgetGroup[] = [];

  constructor(unknowns: number) {
    this.unknowns = unknowns;
  }

  /** Opens no row: entries given with add() belong to the row that the next close() ends. */
  add(column: number, value: number): void {
    this.columns.push(column);
    this.values.push(value);
  }

  close(residual: number, group: BudgetGroup): void {
    this.residuals.push(residual);
    this.groups.push(group);
    this.rowEnds.push(this.columns.length);
  }

  get rows(): number {
    return this.residuals.length;
  }

  /** Sum of squared whitened residuals. */
  get chiSquare(): number {
    let sum = 0;
    for (const r of this.residuals) sum += r * r;
    return sum;
  }

  /** J^T J, row by row, and J^T r. */
  normal(): { readonly matrix: Float64Array; readonly gradient: Float64Array } {
    const n = this.unknowns;
    const matrix = new Float64Array(n * n);
    const gradient = new Float64Array(n);
    let begin = 0;
    for (let row = 0; row < this.rows; row++) {
      const end = this.rowEnds[row] as number;
      const r = this.residuals[row] as number;
      for (let a = begin; a < end; a++) {
        const i = this.columns[a] as number;
        const vi = this.values[a] as number;
        gradient[i] = (gradient[i] as number) + vi * r;
        for (let b = begin; b < end; b++) {
          const at = i * n + (this.columns[b] as number);
          matrix[at] = (matrix[at] as number) + vi * (this.values[b] as number);
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
