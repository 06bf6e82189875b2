/**
 * The largest true share with which so few as k of n would still come in one of twenty sets: the one-sided bound of Clopper and Pearson.
 *
 * Model    p with sum over i <= k of C(n, i) p^i (1 - p)^(n - i) = 0.05; for k = 0 p = 1 - 0.05^(1/n)
 * Fails    never; k = n gives 1
 * Source   C. Clopper, E. Pearson, Biometrika 26 (1934) 404-413, from memory
 */
export function atMost(k: number, n: number): number {
  if (k >= n) return 1;
  let [low, high] = [k / n, 1];
  for (let i = 0; i < 60; i++) {
    const p = (low + high) / 2;
    if (upTo(k, n, p) > 0.05) low = p;
    else high = p;
  }
  return high;
}

function upTo(k: number, n: number, p: number): number {
  let term = n * Math.log1p(-p);
  let sum = Math.exp(term);
  for (let i = 1; i <= k; i++) {
    term += Math.log((n - i + 1) / i) + Math.log(p) - Math.log1p(-p);
    sum += Math.exp(term);
  }
  return sum;
}

export const atMostText = (k: number, n: number): string => `${(100 * atMost(k, n)).toFixed(1)} %`;
