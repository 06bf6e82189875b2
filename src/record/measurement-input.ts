/** One measurement of a wheel end, as entered: its pictures with their marks, and what of known size is in them. */
import { z } from 'zod';
import { BAND_COLOURS, SIGHTS } from '../finding/over-stroke-mark.ts';
import { trackSchema } from '../marks/track.ts';
import { viewSchema } from '../marks/view.ts';
import { referencesSchema } from '../references/reference.ts';
import { id, place } from './parts.ts';

export const PURPOSES = ['as-found', 'after-repair'] as const;

const cropSchema = z
  .strictObject({
    xPx: z.number(),
    yPx: z.number(),
    widthPx: z.number().positive(),
    heightPx: z.number().positive(),
  })
  .readonly();

/** What the person saw of the over-stroke mark, with the part of the picture it was judged from. */
const overStrokeSightSchema = z
  .strictObject({
    sight: z.enum(SIGHTS),
    crop: cropSchema.nullable(),
    /** What the tool had found by itself in the same picture before the person decided; null where it did not look. */
    proposal: z
      .strictObject({
        sight: z.enum(SIGHTS),
        confidence: z.number().min(0).max(1),
        /** Code of the tool's reason. */
        reason: place,
        crop: cropSchema.nullable(),
        /** The colour that it looked for; null: any strong one. */
        bandColour: z.enum(BAND_COLOURS).nullable(),
      })
      .readonly()
      .nullable(),
  })
  .readonly();

export const measurementSchema = z
  .strictObject({
    id,
    purpose: z.enum(PURPOSES),
    /** The camera stood still between the pictures (tripod, magnet): one pose serves all views of one capture size. */
    cameraStill: z.boolean(),
    /** The calibrated camera that took the pictures, of the record's own cameraProfiles. */
    cameraProfileId: id.nullable(),
    /** At most one view of each state. */
    views: z.array(viewSchema).max(3).readonly(),
    references: referencesSchema,
    /** What came of following the marks through a clip: null where pictures were marked one by one. */
    followed: z
      .strictObject({
        track: trackSchema,
        /** Frames seen from other places than those of the views, with followed marks only. */
        sideViews: z.array(viewSchema).max(12).readonly(),
      })
      .readonly()
      .nullable(),
    overStrokeMark: z
      .strictObject({
        released: overStrokeSightSchema.nullable(),
        applied: overStrokeSightSchema.nullable(),
        /** Of the band on this rod, as the person names it; null: not named. */
        bandColour: z.enum(BAND_COLOURS).nullable(),
      })
      .readonly(),
  })
  .readonly();

export type Purpose = (typeof PURPOSES)[number];
export type OverStrokeSight = z.infer<typeof overStrokeSightSchema>;
export type MeasurementInput = z.infer<typeof measurementSchema>;
