/**
 * A camera profile: what a calibration found of one camera at one picture size.
 *
 * Frame  pixels of the picture as stored, before any turn upright; origin at the corner of the first pixel.
 *        Distortion as in src/adjustment/camera.ts: d = 1 + k1 q + k2 q^2, q the squared distance from the axis over the focal length.
 */
import { z } from 'zod';

const uPx = z.number().positive().max(10_000);

export const NAME_CHARACTERS = 80;

export const cameraProfileSchema = z
  .strictObject({
    id: z.string().min(1).max(64),
    name: z.string().min(1).max(NAME_CHARACTERS),
    madeAt: z.iso.datetime(),
    widthPx: z.int().min(1).max(100_000),
    heightPx: z.int().min(1).max(100_000),
    focalPx: z.number().positive().max(1e6),
    uLnFocal: z.number().positive().max(1),
    cxPx: z.number().min(-1e5).max(2e5),
    cyPx: z.number().min(-1e5).max(2e5),
    uCxPx: uPx,
    uCyPx: uPx,
    k1: z.number().min(-2).max(2),
    uK1: z.number().positive().max(2),
    k2: z.number().min(-5).max(5),
    uK2: z.number().positive().max(5),
    /** Scatter of the board's corners about the calibration. */
    rmsPx: z.number().min(0).max(100),
    photoCount: z.int().min(1).max(1000),
    cornerCount: z.int().min(1).max(1_000_000),
  })
  .readonly();

export type CameraProfile = z.infer<typeof cameraProfileSchema>;
