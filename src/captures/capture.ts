/** A capture: one photo or clip as it came from the camera, never altered. The record keeps these facts, the bytes lie beside it. */
import { z } from 'zod';

const sizePx = z.int().min(1).max(100_000);

export const captureSchema = z
  .strictObject({
    id: z.string().min(1).max(64),
    kind: z.enum(['photo', 'clip']),
    fileName: z.string().min(1).max(255),
    mediaType: z.string().max(100),
    sizeBytes: z.int().min(1),
    /** SHA-256 of the file's bytes, lower case hexadecimal: the capture's identity. */
    sha256: z.string().regex(/^[0-9a-f]{64}$/),
    /** Size of the upright picture. */
    widthPx: sizePx,
    heightPx: sizePx,
    /** Clockwise turn that was applied to the stored pixels to set the picture upright, in degrees. */
    rotationDeg: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]),
    /** As the camera wrote it, with its own zone or none; never converted. */
    takenAt: z.string().max(64).nullable(),
    /** When the file was last written, as the device gives it: a copy may carry the time of the copying. */
    fileWrittenAt: z.iso.datetime().nullable(),
    /** When it was taken into the record, by the device's clock. */
    addedAt: z.iso.datetime().nullable(),
    /** Focal length for a 36 x 24 mm frame, from EXIF. */
    focal35Mm: z.number().positive().max(5000).nullable(),
    /** Clips only: the track's own clock and its frames. */
    clip: z
      .strictObject({
        ticksPerSecond: z.number().positive(),
        frameCount: z.int().min(1),
        durationS: z.number().min(0),
        codec: z.string().max(64),
        /** Of making, in the movie's header, UTC; a conversion writes its own time there. */
        headerTime: z.iso.datetime().nullable(),
        /**
         * What gave its frames: the browser's decoder; or its player, which is less exact, where it was shown by that when it came
         * in or while frames of it were chosen and marked. Null: not known, a record from before version 7.
         */
        framesBy: z.enum(['decoder', 'player']).nullable(),
      })
      .readonly()
      .nullable(),
  })
  .readonly();

export type Capture = z.infer<typeof captureSchema>;
