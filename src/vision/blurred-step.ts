/**
 * A sharp edge after Gaussian blur, and its slope: the normal distribution's P and its density, read from a table.
 *
 * Model    P(t) between entries 1/512 apart by a straight line: off by less than 1e-6
 */
import { normalCdf } from '../basics/normal.ts';

/** Standard deviations from an edge to where it is over. */
export const BLUR_END = 4.5;
const PER_UNIT = 512;
const TABLE = Float64Array.from({ length: 2 * BLUR_END * PER_UNIT + 2 }, (_, i) =>
  normalCdf(i / PER_UNIT - BLUR_END),
);

/** 0 far below the edge, 1 far above. */
export function blurredStep(t: number): number {
  if (t <= -BLUR_END) return 0;
  if (t >= BLUR_END) return 1;
  const place = (t + BLUR_END) * PER_UNIT;
  const i = Math.floor(place);
  const low = TABLE[i] as number;
  return low + (place - i) * ((TABLE[i + 1] as number) - low);
}

export function stepSlope(t: number): number {
  return Math.abs(t) >= BLUR_END ? 0 : Math.exp((-t * t) / 2) / Math.sqrt(2 * Math.PI);
}
