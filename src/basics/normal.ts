/**
 * The normal distribution: probability below x, and x for a probability.
 *
 * Model    tail Q(x) = Z(x) / (x + 1/(x + 2/(x + 3/(x + ...))))         for x > 3
 *          P(x) = 1/2 + Z(x) (x + x^3/3 + x^5/(3 5) + x^7/(3 5 7) + ...)  for |x| <= 3
 *          quantile: a rational start value, then Halley's steps on the tail probability
 * Assumes  double precision. Accuracy against tables and an independent erfc: 14 digits of P, 12 of the smaller
 *          tail out to 37 standard deviations, 12 of the quantile.
 * Fails    never for a finite x; a probability outside (0, 1) has no quantile and is our own mistake.
 * Source   Abramowitz and Stegun, Handbook of Mathematical Functions: 26.2.10 to 26.2.14 and 26.2.23 (numbers from memory;
 *          the values are checked against its table 26.1 in the tests).
 */
import { assert } from './result.ts';

const SERIES_END = 3;
/** Enough for the last digit at x = 3, where the fraction converges slowest. */
const FRACTION_TERMS = 200;

/** Probability that a standard normal value is at most x. */
export function normalCdf(x: number): number {
  if (x > SERIES_END) return 1 - upperTail(x);
  if (x < -SERIES_END) return upperTail(-x);
  let term = x;
  let sum = 0;
  for (let n = 1; sum + term !== sum; n++) {
    sum += term;
    term *= (x * x) / (2 * n + 1);
  }
  return 0.5 + density(x) * sum;
}

/** The x below which a standard normal value lies with this probability. */
export function normalQuantile(probability: number): number {
  assert(probability > 0 && probability < 1, 'a quantile needs a probability between 0 and 1');
  if (probability > 0.5) return -normalQuantile(1 - probability);
  const t = Math.sqrt(-2 * Math.log(probability));
  let x =
    (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))) - t;
  for (let step = 0; step < 3; step++) {
    const newton = (normalCdf(x) - probability) / density(x);
    x -= newton / (1 + (x * newton) / 2);
  }
  return x;
}

function density(x: number): number {
  return Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
}

function upperTail(x: number): number {
  let denominator = x;
  for (let n = FRACTION_TERMS; n >= 1; n--) denominator = x + n / denominator;
  return density(x) / denominator;
}
