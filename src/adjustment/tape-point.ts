/**
 * A graduation of the tape, and how its blade bends.
 *
 * Model    zero + v d + (0, 0, h c g(v)) + r g(v) n,  v = reading (1 + s),  g(v) = 4 (v/l)(1 - v/l),  l = 300 mm
 *          d = (cos a cos b, sin a cos b, h sin b) along the chord, n = (-sin a, cos a, 0) across the blade in the plane
 *          s common to all views: how the print is off; c, r of a hold: sagitta over l of the blade out of its plane, and of the row of
 *          marks within it.
 * Assumes  a blade bent as an arc is: its parabola is 0.02 % shorter with 2.5 mm. The row tells nothing of the blade: a hand marks a
 *          stroke where it likes along it, an assist puts all marks on one straight line of the picture (assist-lattice.ts).
 */
import type { WorldPoint } from './world-point.ts';

/** x, y, depth of its zero, tilt in the plane, tilt out of it, bow of the blade in depth, bow of the row of marks. */
export const TAPE_UNKNOWNS = 7;
export const [TAPE_BOW, TAPE_ROW] = [5, 6];

const CHORD_MM = 300;

/** Share of the sagitta at that length along the blade, and its derivative. */
export function bowAt(lengthMm: number): { readonly share: number; readonly byMm: number } {
  const t = lengthMm / CHORD_MM;
  return { share: 4 * t * (1 - t), byMm: (4 * (1 - 2 * t)) / CHORD_MM };
}

/** tape: first unknown of the hold; slack: the print's. into: overwritten and returned. */
export function tapePoint(
  readingMm: number,
  { tape, slack }: { readonly tape: number; readonly slack: number },
  x: ArrayLike<number>,
  hand: 1 | -1,
  into: WorldPoint,
): WorldPoint {
  const at = (index: number): number => x[index] as number;
  const [ca, sa] = [Math.cos(at(tape + 3)), Math.sin(at(tape + 3))];
  const [cb, sb] = [Math.cos(at(tape + 4)), Math.sin(at(tape + 4))];
  const [bow, row] = [at(tape + TAPE_BOW), at(tape + TAPE_ROW)];
  const v = readingMm * (1 + at(slack));
  const { share: g, byMm } = bowAt(v);
  into.place(
    at(tape) + v * ca * cb - row * g * sa,
    at(tape + 1) + v * sa * cb + row * g * ca,
    hand * (at(tape + 2) + v * sb + bow * g),
  );
  into.by(tape, 1, 0, 0);
  into.by(tape + 1, 0, 1, 0);
  into.by(tape + 2, 0, 0, hand);
  into.by(tape + 3, -v * sa * cb - row * g * ca, v * ca * cb - row * g * sa, 0);
  into.by(tape + 4, -v * ca * sb, -v * sa * sb, hand * v * cb);
  into.by(tape + TAPE_BOW, 0, 0, hand * g);
  into.by(tape + TAPE_ROW, -g * sa, g * ca, 0);
  into.by(
    slack,
    readingMm * (ca * cb - row * byMm * sa),
    readingMm * (sa * cb + row * byMm * ca),
    readingMm * hand * (sb + bow * byMm),
  );
  return into;
}
