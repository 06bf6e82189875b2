/**
 * Seeded random draws: the same seed gives the same draws on every machine.
 *
 * Model    uniform: s <- 48271 s mod (2^31 - 1); normal: Box-Muller from two uniforms. The seed is scattered first by a
 *          mixing function that is not linear: of neighbouring seeds the streams would else be shifted copies.
 * Assumes  some millions of draws at most: the period is 2^31 - 2.
 * Source   Park, Miller, Stockmeyer: response in Communications of the ACM 36(7), 1993 (multiplier; from memory);
 *          the finalising mix of MurmurHash3 (constants from memory).
 */
const MODULUS = 2_147_483_647;
const MULTIPLIER = 48_271;

export type Draw = {
  /** Uniform in the open interval (low, high). */
  readonly uniform: (low: number, high: number) => number;
  /** Normal with the given mean and standard deviation. */
  readonly normal: (mean: number, sigma: number) => number;
};

export function drawFrom(seed: number): Draw {
  let state = 1 + (scattered(Math.trunc(seed)) % (MODULUS - 1));
  const unit = (): number => {
    state = (state * MULTIPLIER) % MODULUS;
    return state / MODULUS;
  };
  return {
    uniform: (low, high) => low + (high - low) * unit(),
    normal: (mean, sigma) => mean + sigma * Math.sqrt(-2 * Math.log(unit())) * Math.cos(2 * Math.PI * unit()),
  };
}

function scattered(seed: number): number {
  let h = seed | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}
