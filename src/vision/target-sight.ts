/** What of the printed target is asked for and what was seen of it, as it passes between page and worker. */
import { z } from 'zod';

/** A coded marker on the card: its number in the marker family and its corners, top left first, clockwise as printed. */
export const cardMarkerSchema = z
  .strictObject({
    marker: z.int().min(0).max(49),
    cornersMm: z
      .array(z.tuple([z.number(), z.number()]).readonly())
      .length(4)
      .readonly(),
  })
  .readonly();

export const targetSightSchema = z
  .strictObject({
    corners: z
      .array(
        z
          .strictObject({
            marker: z.int(),
            corner: z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3)]),
            xPx: z.number(),
            yPx: z.number(),
            /** Standard uncertainty of x and of y. */
            sigmaPx: z.number().positive(),
          })
          .readonly(),
      )
      .readonly(),
    /** Markers of the card that were not found, or not believed. */
    missing: z.array(z.int()).readonly(),
  })
  .readonly();

export type CardMarker = z.infer<typeof cardMarkerSchema>;
export type TargetSight = z.infer<typeof targetSightSchema>;
export type SeenCorner = TargetSight['corners'][number];
