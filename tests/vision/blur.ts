/** A Gaussian blur of a picture row by row; beyond its edge the picture goes on as at the edge. */
export function blur(light: Float64Array, width: number, height: number, sigma: number): Float64Array {
  const reach = Math.ceil(4 * sigma);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-(((i - reach) / sigma) ** 2) / 2),
  );
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const pass = (from: Float64Array, step: number, count: number, placeOf: (at: number) => number) => {
    const to = new Float64Array(from.length);
    for (let at = 0; at < from.length; at++) {
      const place = placeOf(at);
      let total = 0;
      for (let k = -reach; k <= reach; k++) {
        const shift = Math.max(-place, Math.min(count - 1 - place, k));
        total += (weights[k + reach] as number) * (from[at + shift * step] as number);
      }
      to[at] = total / sum;
    }
    return to;
  };
  const across = pass(light, 1, width, (at) => at % width);
  return pass(across, width, height, (at) => Math.floor(at / width));
}
