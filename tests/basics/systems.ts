/** Systems of linear equations for the tests of what solves them. */
import fc from 'fast-check';

/** By what they are called: 2 x 2, none of them positive definite. */
export const WITHOUT_FACTOR: readonly (readonly [what: string, values: readonly number[]])[] = [
  ['indefinite', [1, 2, 2, 1]],
  ['singular', [1, 1, 1, 1]],
  ['zero', [0, 0, 0, 1]],
  ['negative', [-1, 0, 0, 1]],
  ['not a number', [Number.NaN, 0, 0, 1]],
];

const entry = fc.integer({ min: -1000, max: 1000 }).map((n) => n / 1000);

/** M and a solution x. */
export const system = fc.integer({ min: 1, max: 12 }).chain((n) =>
  fc.record({
    n: fc.constant(n),
    m: fc.array(entry, { minLength: n * n, maxLength: n * n }),
    x: fc.array(entry, { minLength: n, maxLength: n }),
  }),
);

/** M^T M + 0.1 I: positive definite, condition at most some thousands. */
export function gram(m: readonly number[], n: number): Float64Array {
  return Float64Array.from({ length: n * n }, (_, at) => {
    const [i, j] = [Math.floor(at / n), at % n];
    let sum = i === j ? 0.1 : 0;
    for (let k = 0; k < n; k++) sum += (m[k * n + i] as number) * (m[k * n + j] as number);
    return sum;
  });
}

export function times(a: Float64Array, x: ArrayLike<number>, n: number): number[] {
  return Array.from({ length: n }, (_, i) => {
    let sum = 0;
    for (let k = 0; k < n; k++) sum += (a[i * n + k] as number) * (x[k] as number);
    return sum;
  });
}
