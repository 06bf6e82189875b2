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

/** One normal draw takes so many uniform ones. */
export const UNIFORMS_OF_NORMAL = 2;

/** skipped: uniform draws of the stream to leave out at its beginning. */
export function drawFrom(seed: number, skipped = 0): Draw {
  let state = ahead(1 + (scattered(Math.trunc(seed)) % (MODULUS - 1)), skipped);
  const unit = (): number => {
    state = (state * MULTIPLIER) % MODULUS;
    return state / MODULUS;
  };
  return {
    uniform: (low, high) => low + (high - low) * unit(),
    normal: (mean, sigma) => mean + sigma * Math.sqrt(-2 * Math.log(unit())) * Math.cos(2 * Math.PI * unit()),
  };
}

/** multiplier^steps state mod modulus, by squaring. */
function ahead(state: number, steps: number): number {
  const modulus = BigInt(MODULUS);
  let [moved, power] = [BigInt(state), BigInt(MULTIPLIER)];
  for (let left = steps; left > 0; left = Math.floor(left / 2)) {
    if (left % 2 === 1) moved = (moved * power) % modulus;
    power = (power * power) % modulus;
  }
  return Number(moved);
}

function scattered(seed: number): number {
  let h = seed | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}
