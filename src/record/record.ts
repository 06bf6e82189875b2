/**
 * The record: one JSON document with what was entered. Results are never kept in it: they are computed from it.
 * Lengths in millimetres, image points in pixels of the upright picture, times in ISO 8601 or in track ticks.
 * A record is evidence: a key that the format does not know is refused, never dropped.
 */
import { z } from 'zod';
import { cameraProfileSchema } from '../captures/camera-profile.ts';
import { captureSchema } from '../captures/capture.ts';
import { chamberSchema } from '../finding/chamber.ts';
import { SIGHTS } from '../finding/over-stroke-mark.ts';
import { trackSchema } from '../marks/track.ts';
import { viewSchema } from '../marks/view.ts';
import { referencesSchema } from '../references/reference.ts';

export const RECORD_FORMAT = 'strokewitness-record';
export const RECORD_VERSION = 3;

const id = z.string().min(1).max(64);
const text = z.string().max(200);

/** What the person saw of the over-stroke mark, with the part of the picture it was judged from. */
const overStrokeSightSchema = z
  .strictObject({
    sight: z.enum(SIGHTS),
    crop: z
      .strictObject({
        xPx: z.number(),
        yPx: z.number(),
        widthPx: z.number().positive(),
        heightPx: z.number().positive(),
      })
      .readonly()
      .nullable(),
  })
  .readonly();

export const measurementSchema = z
  .strictObject({
    id,
    purpose: z.enum(['as-found', 'after-repair']),
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
      .strictObject({ released: overStrokeSightSchema.nullable(), applied: overStrokeSightSchema.nullable() })
      .readonly(),
  })
  .readonly();

export const wheelEndSchema = z
  .strictObject({
    id,
    position: z.strictObject({ axle: z.int().min(1).max(20), side: z.enum(['left', 'right']) }).readonly(),
    chamber: chamberSchema.nullable(),
    measurements: z.array(measurementSchema).max(100).readonly(),
  })
  .readonly();

export const recordSchema = z
  .strictObject({
    format: z.literal(RECORD_FORMAT),
    version: z.literal(RECORD_VERSION),
    id,
    createdAt: z.iso.datetime(),
    vehicle: z.strictObject({ unit: text }).readonly(),
    /** Which rule set of src/finding/rule-sets holds. */
    ruleSetId: id,
    captures: z.array(captureSchema).max(1000).readonly(),
    cameraProfiles: z.array(cameraProfileSchema).max(20).readonly(),
    wheelEnds: z.array(wheelEndSchema).max(40).readonly(),
  })
  .readonly();

export type OverStrokeSight = z.infer<typeof overStrokeSightSchema>;
export type MeasurementInput = z.infer<typeof measurementSchema>;
export type WheelEnd = z.infer<typeof wheelEndSchema>;
export type InspectionRecord = z.infer<typeof recordSchema>;
