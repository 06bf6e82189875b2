/** Shares, means and falls of lists that may be empty: NaN then. */

export function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(part * (sorted.length - 1))] ?? Number.NaN;
}

export const median = (values: readonly number[]) => quantile(values, 0.5);

/** Of the numbers among them. */
export function meanOf(values: readonly number[]): number {
  let [sum, count] = [0, 0];
  for (const value of values)
    if (!Number.isNaN(value)) {
      sum += value;
      count += 1;
    }
  return count === 0 ? Number.NaN : sum / count;
}

/** Of a line along the rod: by what the mean of the places before a column exceeds that from it on. */
export const fallAt = (line: readonly number[], column: number, reach: number): number =>
  meanOf(line.slice(Math.max(0, column - reach), column)) - meanOf(line.slice(column, column + reach));
