/**
 * A point on a straight edge of the tape's blade: a plumb line, which shows what the lens bends.
 *
 * Model    zero + q d + w n + the blade's bow in depth at q (tape-point.ts), w = e + g q + c (p / 100 mm)^2, p = q - 150 mm
 *          d = (cos a cos b, sin a cos b, h sin b) the way of the graduations, n = (-sin a, cos a, 0) across them in the plane
 *          q place along the edge, of each point its own; e, g, c of a hold: offset and turn against the line on which the
 *          graduations were marked, bow of the edge, at 100 mm from the middle of the usual part.
 * Assumes  all points of a picture are on one edge. The edge's depth beside that of the graduations is left out: it shifts the
 *          edge's image nearly as e does.
 * Source   straight lines for the lens: Brown: Close-range camera calibration, 1971.
 */
import type { Prior } from './priors.ts';
import { bowAt, TAPE_BOW } from './tape-point.ts';
import type { WorldPoint } from './world-point.ts';

export const TAPE_EDGE_UNKNOWNS = 3;

/** Either edge of a blade up to 32 mm wide. */
export const EDGE_OFFSET: Prior = [0, 20];
/** Marks on strokes lie farther out at one end than at the other: 1 mm of 200. */
export const EDGE_TURN: Prior = [0, 0.005];
/** Cold-rolled narrow strip of the restricted class is out of straight by up to 2 mm in 1 m (EN 10140, from memory), which is
 * 0.08 mm here. */
export const EDGE_BOW: Prior = [0, 0.06];

const MIDDLE_MM = 150;
const BOW_AT_MM = 100;

export type EdgePlaces = {
  /** First unknown of the tape's hold. */
  readonly tape: number;
  readonly edge: number;
  readonly along: number;
};

export function tapeEdgePoint(
  { tape, edge, along }: EdgePlaces,
  x: ArrayLike<number>,
  hand: 1 | -1,
  into: WorldPoint,
): WorldPoint {
  const at = (index: number): number => x[index] as number;
  const [ca, sa] = [Math.cos(at(tape + 3)), Math.sin(at(tape + 3))];
  const [cb, sb] = [Math.cos(at(tape + 4)), Math.sin(at(tape + 4))];
  const q = at(along);
  const bent = (q - MIDDLE_MM) / BOW_AT_MM;
  const w = at(edge) + at(edge + 1) * q + at(edge + 2) * bent * bent;
  const wByQ = at(edge + 1) + (2 * at(edge + 2) * bent) / BOW_AT_MM;
  const { share, byMm } = bowAt(q);
  into.place(
    at(tape) + q * ca * cb - w * sa,
    at(tape + 1) + q * sa * cb + w * ca,
    hand * (at(tape + 2) + q * sb + at(tape + TAPE_BOW) * share),
  );
  into.by(tape, 1, 0, 0);
  into.by(tape + 1, 0, 1, 0);
  into.by(tape + 2, 0, 0, hand);
  into.by(tape + 3, -q * sa * cb - w * ca, q * ca * cb - w * sa, 0);
  into.by(tape + 4, -q * ca * sb, -q * sa * sb, q * hand * cb);
  into.by(tape + TAPE_BOW, 0, 0, hand * share);
  into.by(edge, -sa, ca, 0);
  into.by(edge + 1, -q * sa, q * ca, 0);
  into.by(edge + 2, -bent * bent * sa, bent * bent * ca, 0);
  into.by(along, ca * cb - wByQ * sa, sa * cb + wByQ * ca, hand * (sb + at(tape + TAPE_BOW) * byMm));
  return into;
}
