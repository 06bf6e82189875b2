/** Shares and means of lists that may be empty: NaN then. */

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
