/**
 * A mark: a named image point with its own standard uncertainty.
 *
 * Frame  pixels of the upright picture (photo orientation and clip rotation applied), x right, y down,
 *        origin at the top left corner of the top left pixel: the centre of that pixel is (0.5, 0.5).
 */
import { z } from 'zod';

export const MOST_GRADUATION_MM = 10_000;

const coordinatePx = z.number().min(-1e5).max(1e5);

const placed = {
  id: z.string().min(1).max(64),
  xPx: coordinatePx,
  yPx: coordinatePx,
  /** Standard uncertainty of x and of y, in pixels. */
  sigmaPx: z.number().min(0.01).max(500),
  placedBy: z.enum(['hand', 'assist', 'tracker']),
  /** Of a mark followed through a clip, or found again beside another picture's: the mark it was followed or found from. How far that one is
   * off, this one is too; sigmaPx is of the following, or the finding, alone. */
  followedFrom: z.string().min(1).max(64).optional(),
  /** Of a hand's mark of another frame of a clip, carried to this one by what was followed from it: that mark. sigmaPx is the hand's. */
  carriedFrom: z.string().min(1).max(64).optional(),
};

/** chamber-face: where the rod leaves the chamber face, on the rod's middle line. clevis-pin: centre of the pin's visible end.
 * camshaft-end: centre of the camshaft's visible end. rod-line: a point on the rod's middle line. clamp-band: a point on the
 * clamp band's rim, the rim towards the rod. */
export const POINT_KINDS = ['chamber-face', 'clevis-pin', 'camshaft-end', 'rod-line', 'clamp-band'] as const;

export const markSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.enum(POINT_KINDS), ...placed }),
    /** A graduation of the tape; its reading counts from the tape's zero. */
    z.strictObject({
      kind: z.literal('tape-graduation'),
      readingMm: z.number().min(-100).max(MOST_GRADUATION_MM),
      ...placed,
    }),
    /** A point on a straight edge of the tape's blade, all of one picture on the same edge: where along it is not known. */
    z.strictObject({ kind: z.literal('tape-edge'), ...placed }),
    /** One end of a known distance. */
    z.strictObject({ kind: z.literal('distance-end'), ...placed }),
    /** A point of something that stands still, seen in several pictures: marks with one name are one point. */
    z.strictObject({ kind: z.literal('tie-point'), tie: z.string().min(1).max(64), ...placed }),
    /** A corner of a coded marker of the printed target, as printed: 0 top left, 1 top right, 2 bottom right, 3 bottom left. */
    z.strictObject({
      kind: z.literal('target-corner'),
      marker: z.int().min(0).max(1023),
      corner: z.int().min(0).max(3),
      ...placed,
    }),
  ])
  .readonly();

export type Mark = z.infer<typeof markSchema>;
export type MarkKind = Mark['kind'];
