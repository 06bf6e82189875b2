/** Specks 0 to 1 for the surfaces of made pictures: random at the knots of a lattice, smooth between them. */
export function specksAt(seed: number, u: number, v: number): number {
  const i = Math.floor(u);
  const j = Math.floor(v);
  const s = smooth(u - i);
  const t = smooth(v - j);
  const top = knot(seed, i, j) * (1 - s) + knot(seed, i + 1, j) * s;
  const bottom = knot(seed, i, j + 1) * (1 - s) + knot(seed, i + 1, j + 1) * s;
  return top * (1 - t) + bottom * t;
}

const smooth = (t: number) => t * t * (3 - 2 * t);

function knot(seed: number, i: number, j: number): number {
  let h = Math.imul(seed * 131 + i, 0x85ebca6b) ^ Math.imul(j + 977, 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  return ((h ^ (h >>> 13)) >>> 0) / 2 ** 32;
}
