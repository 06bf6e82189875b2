/**
 * Weights by which a fit takes what lies far off for no observation.
 *
 * Model    spread: 1.4826 times the median size of the residuals, a normal distribution's standard deviation; weight (1 - x^2)^2, x the
 *          residual over 4.7 spreads, nothing beyond
 * Source   Beaton and Tukey 1974 (from memory)
 */

export const spreadOf = (residuals: ArrayLike<number>, least: number): number =>
  Math.max(least, 1.4826 * middleOf(Float64Array.from(residuals, Math.abs).sort()));

export function biweight(residual: number, spread: number): number {
  const x = residual / (4.7 * spread);
  return Math.abs(x) >= 1 ? 0 : (1 - x * x) ** 2;
}

export const median = (values: readonly number[]): number => middleOf([...values].sort((a, b) => a - b));

function middleOf(sorted: ArrayLike<number>): number {
  const at = (sorted.length - 1) / 2;
  return ((sorted[Math.floor(at)] ?? 0) + (sorted[Math.ceil(at)] ?? 0)) / 2;
}
