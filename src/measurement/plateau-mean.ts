/**
 * The mean of values that are alike from one to the next, and its standard uncertainty.
 *
 * Model    u = s sqrt((1 + 2 sum r_k) / n), r_k the correlation of values k apart, summed until the first that is not positive; never
 *          under the values' own u over sqrt(n)
 * Source   variance of the mean of a stationary series, Bartlett 1946 (from memory); where to stop the sum: common practice
 */
export function plateauMean(
  values: readonly number[],
  us: readonly number[],
): { readonly value: number; readonly u: number } {
  const n = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const off = values.map((value) => value - mean);
  const square = off.reduce((sum, each) => sum + each * each, 0);
  const own = Math.sqrt(us.reduce((sum, u) => sum + u * u, 0)) / n;
  if (n < 3 || square === 0)
    return { value: mean, u: Math.max(own, n > 1 ? Math.sqrt(square / (n - 1) / n) : own) };
  let alike = 1;
  for (let k = 1; k < n / 2; k++) {
    const r = off.slice(k).reduce((sum, each, i) => sum + each * (off[i] as number), 0) / square;
    if (r <= 0) break;
    alike += 2 * r;
  }
  return { value: mean, u: Math.max(own, Math.sqrt((square / (n - 1) / n) * Math.min(alike, n))) };
}
