/** Matching digits as reference data count them: -log10 of the relative error; of a certified zero, of the error itself. */
export function matchingDigits(value: number, published: number): number {
  const off = published === 0 ? Math.abs(value) : Math.abs(value / published - 1);
  return -Math.log10(Math.max(off, 1e-16));
}

export function fewestDigits(values: ArrayLike<number>, published: readonly number[]): number {
  return Math.min(...published.map((p, i) => matchingDigits(values[i] ?? Number.NaN, p)));
}
