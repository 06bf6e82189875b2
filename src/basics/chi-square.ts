/**
 * Upper tail of the chi-square distribution.
 *
 * Model    P(X >= x) = Q(nu/2, x/2), the regularised upper incomplete gamma function: its series below a + 1,
 *          its continued fraction (modified Lentz) above; ln Gamma by the Lanczos sum with g = 7, nine terms.
 * Fails    nothing for nu > 0 and x >= 0; relative accuracy about 1e-12 until the tail underflows to 0.
 * Source   Abramowitz, Stegun: Handbook of Mathematical Functions, 6.5.29, 6.5.31, 26.4 (from memory).
 */
export function chiSquareUpperTail(x: number, degreesOfFreedom: number): number {
  if (x <= 0) return 1;
  const a = degreesOfFreedom / 2;
  const half = x / 2;
  const scale = Math.exp(a * Math.log(half) - half - lnGamma(a));
  return half < a + 1 ? Math.max(0, 1 - scale * lowerSeries(a, half)) : scale * upperFraction(a, half);
}

function lowerSeries(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < 10_000; n++) {
    term *= x / (a + n);
    sum += term;
    if (term < sum * 1e-16) break;
  }
  return sum;
}

function upperFraction(a: number, x: number): number {
  const tiny = 1e-300;
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1; n < 10_000; n++) {
    const numerator = -n * (n - a);
    b += 2;
    d = 1 / nonZero(numerator * d + b, tiny);
    c = nonZero(b + numerator / c, tiny);
    const change = c * d;
    fraction *= change;
    if (Math.abs(change - 1) < 1e-15) break;
  }
  return fraction;
}

function nonZero(value: number, tiny: number): number {
  return Math.abs(value) < tiny ? tiny : value;
}

const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

function lnGamma(x: number): number {
  const z = x - 1;
  const t = z + 7.5;
  const sum = LANCZOS.reduce((acc, c, i) => (i === 0 ? c : acc + c / (z + i)), 0);
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}
