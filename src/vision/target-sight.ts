/** What of the printed target is asked for and what was seen of it, as it passes between page and worker. */
import { z } from 'zod';

const pointMmSchema = z.tuple([z.number(), z.number()]).readonly();

/**
 * A coded marker on the card: its number in the marker family, the rows of its inner cells (1 white), and its corners, top
 * left first, clockwise as printed.
 */
export const cardMarkerSchema = z
  .strictObject({
    marker: z.int().min(0).max(49),
    rows: z
      .array(z.string().regex(/^[01]{4}$/))
      .length(4)
      .readonly(),
    cornersMm: z.tuple([pointMmSchema, pointMmSchema, pointMmSchema, pointMmSchema]).readonly(),
  })
  .readonly();

const seenCornerSchema = z
  .strictObject({
    marker: z.int(),
    corner: z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3)]),
    xPx: z.number(),
    yPx: z.number(),
    /** Standard uncertainty of x and of y. */
    sigmaPx: z.number().positive(),
  })
  .readonly();

export const targetSightSchema = z
  .strictObject({
    corners: z.array(seenCornerSchema).readonly(),
    /** Markers of the card that were not found, or not believed. */
    missing: z.array(z.int()).readonly(),
  })
  .readonly();

export type CardMarker = z.infer<typeof cardMarkerSchema>;
export type SeenCorner = z.infer<typeof seenCornerSchema>;
export type TargetSight = z.infer<typeof targetSightSchema>;
