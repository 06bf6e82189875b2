/**
 * How wide the push rod is in a picture, by a tape along it.
 *
 * Model    half width = r f / (Z + BEHIND_TAPE_MM), Z the depth of the tape there (tape-depth.ts); linear between two places along the rod
 *          u: of its logarithm: the tape's marks, and U_HALF for how far before the rod the tape is, the focal length and the rod's size
 * Assumes  a rod of 5/8 in; the tape as far before its axis as the clevis is thick, 12 mm more or less
 * Fails    null where the tape's marks do not tell its slant
 * Source   rod diameter and thickness of the clevis: common practice, no source
 */
import type { Point } from './point.ts';
import { scaleBeside, type TapeReading } from './tape-depth.ts';
import type { Lens } from './usual-lens.ts';

export type RodWidth = { readonly halfAt: (s: number) => number; readonly u: number };

const ROD_RADIUS_MM = 15.875 / 2;
export const BEHIND_TAPE_MM = 22;
const U_HALF = 0.03;

/** from, to: places along the rod, and where they are in the picture. */
export function rodWidth(
  tape: readonly TapeReading[],
  lens: Lens,
  [from, to]: readonly [RodPlace, RodPlace],
): RodWidth | null {
  const [first, second] = [from, to].map(({ placePx }) => scaleBeside(tape, placePx, lens));
  if (!first || !second) return null;
  const halfPx = ({ pxPerMm }: { readonly pxPerMm: number }) =>
    (ROD_RADIUS_MM * lens.focalPx) / (lens.focalPx / pxPerMm + BEHIND_TAPE_MM);
  const [a, b] = [halfPx(first), halfPx(second)];
  return {
    halfAt: (s) => a + ((s - from.s) / (to.s - from.s)) * (b - a),
    u: Math.hypot(U_HALF, first.u, second.u),
  };
}

export type RodPlace = { readonly s: number; readonly placePx: Point };
