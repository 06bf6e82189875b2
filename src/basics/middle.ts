/** The middle one of numbers in the order of their size, of an even count the upper of both: one that was seen, not a mean of two. */
export function middleOf(values: readonly number[]): number | undefined {
  return values.toSorted((a, b) => a - b)[values.length >> 1];
}
