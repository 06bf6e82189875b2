/** Times measure(), and the check by trials, the same way in Node and in the page. */
import { measure } from '../../src/measurement/measure.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { drawnTrials } from '../../src/measurement/monte-carlo.ts';
import { USUAL_TRIALS } from '../../src/measurement/monte-carlo-joined.ts';

export type Timing = {
  /** The very first measurement, before anything is compiled. */
  readonly firstMs: number;
  /** Of each input the shortest of the repeats: what else the machine does at the moment is no part of it. */
  readonly timesMs: readonly number[];
};

/** now: milliseconds of the clock to time by. */
export function timingOf(inputs: readonly MeasureInput[], repeats: number, now: () => number): Timing {
  const once = (input: MeasureInput): number => {
    const begin = now();
    measure(input);
    return now() - begin;
  };
  const [firstMs = Number.NaN] = inputs.map(once);
  const timesMs = inputs.map(() => Number.POSITIVE_INFINITY);
  // Repeats of one input lie apart, so that one disturbance does not meet them all.
  for (let repeat = 0; repeat < repeats; repeat++)
    inputs.forEach((input, i) => {
      timesMs[i] = Math.min(timesMs[i] as number, once(input));
    });
  return { firstMs, timesMs };
}

/** As many trials as the app makes, of each input. */
export function trialsTimesMs(inputs: readonly MeasureInput[], now: () => number): readonly number[] {
  return inputs.map((input) => {
    const begin = now();
    drawnTrials(input, { from: 0, to: USUAL_TRIALS, seed: 1 });
    return now() - begin;
  });
}
