/**
 * Weights by which a fit takes what lies far off for no observation.
 *
 * Model    spread: 1.4826 times the median size of the residuals, a normal distribution's standard deviation; weight (1 - x^2)^2, x the
 *          residual over 4.7 spreads, nothing beyond
 * Source   Beaton and Tukey 1974 (from memory)
 */

export const spreadOf = (residuals: readonly number[], least: number): number =>
  Math.max(least, 1.4826 * median(residuals.map(Math.abs)));

export function biweight(residual: number, spread: number): number {
  const x = residual / (4.7 * spread);
  return Math.abs(x) >= 1 ? 0 : (1 - x * x) ** 2;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (sorted.length - 1) / 2;
  return ((sorted[Math.floor(at)] ?? 0) + (sorted[Math.ceil(at)] ?? 0)) / 2;
}
