/** Seeded noise in space, 0 to 1: between random values on a lattice, several sizes on each other. */
import type { V } from './assists-paint-solids.ts';

export type Noise = (at: V, sizeMm: number) => number;

const SHARES = [0, 1, 2, 3].map((octave) => 0.55 ** octave);

export function noiseFrom(seed: number): Noise {
  return (at, sizeMm) => {
    let sum = 0;
    let weight = 0;
    let size = sizeMm;
    for (let octave = 0; octave < 4; octave += 1) {
      const share = SHARES[octave] as number;
      sum += share * smooth(at[0] / size, at[1] / size, at[2] / size, seed + 101 * octave);
      weight += share;
      size /= 2.1;
    }
    // Sums crowd about the middle: spread again.
    return Math.min(1, Math.max(0, 0.5 + 1.7 * (sum / weight - 0.5)));
  };
}

function smooth(x: number, y: number, z: number, seed: number): number {
  const ix = Math.floor(x);
  const iy = Math.floor(y);
  const iz = Math.floor(z);
  const fx = eased(x - ix);
  const fy = eased(y - iy);
  const fz = eased(z - iz);
  return mix(
    mix(row(ix, iy, iz, fx, seed), row(ix, iy + 1, iz, fx, seed), fy),
    mix(row(ix, iy, iz + 1, fx, seed), row(ix, iy + 1, iz + 1, fx, seed), fy),
    fz,
  );
}

const row = (x: number, y: number, z: number, fx: number, seed: number) =>
  mix(lattice(x, y, z, seed), lattice(x + 1, y, z, seed), fx);
const eased = (f: number) => f * f * (3 - 2 * f);
const mix = (a: number, b: number, f: number) => a + (b - a) * f;

function lattice(x: number, y: number, z: number, seed: number): number {
  let h =
    (Math.imul(x, 374761393) + Math.imul(y, 668265263) + Math.imul(z, 1274126177) + Math.imul(seed, 69069)) |
    0;
  h = Math.imul(h ^ (h >>> 13), 1274126177);
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  return ((h ^ (h >>> 15)) >>> 0) / 4294967296;
}
