/**
 * Logistic regression with a ridge.
 *
 * Model    the greatest of sum of weight times log-likelihood, less ridge / 2 times the squares of all coefficients but the first; each column
 *          in units of its own spread; Newton's method, steps held to 2
 * Source   McCullagh & Nelder, Generalized Linear Models, 2nd ed. 1989, ch. 4 (from memory)
 */
const STEPS = 14;

export function logisticFit(
  rows: readonly (readonly number[])[],
  truths: readonly number[],
  weights: readonly number[],
  ridge: number,
): readonly number[] {
  const count = rows[0]?.length ?? 0;
  const spread = Array.from({ length: count }, (_, i) => (i === 0 ? 1 : spreadOf(rows, i)));
  let coefficients = new Float64Array(count);
  for (let step = 0; step < STEPS; step += 1) {
    const slope = new Float64Array(count);
    const bend = Array.from({ length: count }, () => new Float64Array(count));
    const scaled = new Float64Array(count);
    rows.forEach((row, at) => {
      let z = 0;
      for (let i = 0; i < count; i += 1) {
        scaled[i] = (row[i] as number) / (spread[i] as number);
        z += (scaled[i] as number) * (coefficients[i] as number);
      }
      const p = 1 / (1 + Math.exp(-Math.max(-30, Math.min(30, z))));
      const weight = weights[at] as number;
      const [pull, stiff] = [weight * ((truths[at] as number) - p), weight * p * (1 - p)];
      for (let i = 0; i < count; i += 1) {
        slope[i] = (slope[i] as number) + pull * (scaled[i] as number);
        const line = bend[i] as Float64Array;
        const part = stiff * (scaled[i] as number);
        for (let j = 0; j <= i; j += 1) line[j] = (line[j] as number) + part * (scaled[j] as number);
      }
    });
    for (let i = 0; i < count; i += 1) {
      const held = i === 0 ? 1e-3 : ridge;
      slope[i] = (slope[i] as number) - held * (coefficients[i] as number);
      const line = bend[i] as Float64Array;
      line[i] = (line[i] as number) + held;
    }
    const move = solved(bend, slope);
    const largest = move.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    const part = Math.min(1, 2 / largest);
    coefficients = coefficients.map((value, i) => value + part * (move[i] as number));
    if (largest < 1e-4) break;
  }
  return Array.from(coefficients, (value, i) => value / (spread[i] as number));
}

function spreadOf(rows: readonly (readonly number[])[], column: number): number {
  let [sum, squares] = [0, 0];
  for (const row of rows) {
    sum += row[column] as number;
    squares += (row[column] as number) ** 2;
  }
  const mean = sum / rows.length;
  return Math.sqrt(Math.max(1e-12, squares / rows.length - mean * mean)) + 1e-3;
}

/** By Cholesky's way; the lower half is given, and overwritten. */
function solved(lower: readonly Float64Array[], right: Float64Array): Float64Array {
  const count = right.length;
  const at = (i: number, j: number) => (lower[i] as Float64Array)[j] as number;
  for (let i = 0; i < count; i += 1)
    for (let j = 0; j <= i; j += 1) {
      let sum = at(i, j);
      for (let k = 0; k < j; k += 1) sum -= at(i, k) * at(j, k);
      (lower[i] as Float64Array)[j] = i === j ? Math.sqrt(Math.max(1e-12, sum)) : sum / at(j, j);
    }
  const x = Float64Array.from(right);
  for (let i = 0; i < count; i += 1) {
    for (let k = 0; k < i; k += 1) x[i] = (x[i] as number) - at(i, k) * (x[k] as number);
    x[i] = (x[i] as number) / at(i, i);
  }
  for (let i = count - 1; i >= 0; i -= 1) {
    for (let k = i + 1; k < count; k += 1) x[i] = (x[i] as number) - at(k, i) * (x[k] as number);
    x[i] = (x[i] as number) / at(i, i);
  }
  return x;
}
