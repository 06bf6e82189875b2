/** Shares, means and falls of lists that may be empty: NaN then. */

export function quantile(values: ArrayLike<number>, part: number): number {
  const sorted = new Float64Array(values).sort();
  return sorted[Math.floor(part * (sorted.length - 1))] ?? Number.NaN;
}

export const median = (values: ArrayLike<number>) => quantile(values, 0.5);

/** Of the numbers among them. */
export const meanOf = (values: readonly number[]): number => meanBetween(values, 0, values.length);

/** Of the numbers among those from a place on, to before another; places outside the list count as its ends. */
export function meanBetween(values: readonly number[], from: number, to: number): number {
  let [sum, count] = [0, 0];
  const end = Math.min(values.length, to);
  for (let i = Math.max(0, from); i < end; i += 1) {
    const value = values[i] as number;
    if (!Number.isNaN(value)) {
      sum += value;
      count += 1;
    }
  }
  return count === 0 ? Number.NaN : sum / count;
}

/** Of a line along the rod: by what the mean of the places before a column exceeds that from it on. */
export const fallAt = (line: readonly number[], column: number, reach: number): number =>
  meanBetween(line, column - reach, column) - meanBetween(line, column, column + reach);
