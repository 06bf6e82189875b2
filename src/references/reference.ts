/** References: what is of known size in the picture. Each is used when it is given and its marks are there; several add up. */
import { z } from 'zod';

const lengthMm = z.number().positive().max(5000);
const uLengthMm = z.number().positive().max(100);

export const referencesSchema = z
  .strictObject({
    /** Graduations are marks with readings. zeroAtFace: the user says that the tape's zero is bottomed on the chamber face.
     * unmoved: the user says that the tape lay in the same place in every picture, as in a clip. */
    tape: z.strictObject({ zeroAtFace: z.boolean(), unmoved: z.boolean() }).readonly().nullable(),
    /** Outside diameter of the clamp band. */
    clampBand: z.strictObject({ diameterMm: lengthMm, uDiameterMm: uLengthMm }).readonly().nullable(),
    /** Camshaft centre to clevis pin centre, as stamped on the arm or measured by hand. */
    armLength: z.strictObject({ lengthMm, uLengthMm }).readonly().nullable(),
    /** A plain known distance between two marked points near the rod. */
    distance: z.strictObject({ distanceMm: lengthMm, uDistanceMm: uLengthMm }).readonly().nullable(),
  })
  .readonly();

export type References = z.infer<typeof referencesSchema>;

export const NO_REFERENCES: References = { tape: null, clampBand: null, armLength: null, distance: null };
