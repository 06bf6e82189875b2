/**
 * Which digit a window shows, or none.
 *
 * Model    multinomial logistic regression over the window's look (digit-window.ts); against how often each was in the training: a digit
 *          one time in twenty, none every other time
 * Assumes  weights fitted by tests/bench/assists-numerals-fit.ts
 */
import { DIGIT_WEIGHTS } from './digit-weights.ts';
import { LOOK_LENGTH, TURNED, type Turn } from './digit-window.ts';

/** The ten digits and none of them. */
export const KINDS = 11;
export const NONE = 10;
const USUAL = Float64Array.from({ length: KINDS }, (_, kind) => Math.log(kind === NONE ? 0.5 : 0.05));

/** For each turn the weights in the order of a look as it was taken. */
const TURNED_WEIGHTS = TURNED.map((places) =>
  Array.from({ length: KINDS }, (_, kind) => {
    const weights = new Float32Array(LOOK_LENGTH);
    places.forEach((place, i) => {
      weights[place] = DIGIT_WEIGHTS[kind * (LOOK_LENGTH + 1) + 1 + i] ?? 0;
    });
    return weights;
  }),
);

/** into: from `at` on, for each kind the logarithm of how much likelier it is than it usually is. */
export function digitOdds(look: Float32Array, turn: Turn, into: Float32Array, at: number): void {
  let most = -Infinity;
  const weightsOf = TURNED_WEIGHTS[turn] as readonly Float32Array[];
  for (let kind = 0; kind < KINDS; kind++) {
    const weights = weightsOf[kind] as Float32Array;
    let sum = DIGIT_WEIGHTS[kind * (LOOK_LENGTH + 1)] ?? 0;
    for (let i = 0; i < LOOK_LENGTH; i++) sum += (weights[i] as number) * (look[i] as number);
    into[at + kind] = sum;
    if (sum > most) most = sum;
  }
  let total = 0;
  for (let kind = 0; kind < KINDS; kind++) total += Math.exp((into[at + kind] as number) - most);
  const all = most + Math.log(total);
  for (let kind = 0; kind < KINDS; kind++)
    into[at + kind] = (into[at + kind] as number) - all - (USUAL[kind] as number);
}
