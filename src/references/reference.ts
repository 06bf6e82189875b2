/** References: what is of known size in the picture. Each is used when it is given and its marks are there; several add up. */
import { z } from 'zod';

export const MOST_REFERENCE_MM = 5000;
export const MOST_PIN_END_MM = 200;

const lengthMm = z.number().positive().max(MOST_REFERENCE_MM);
const uLengthMm = z.number().positive().max(100);

export const referencesSchema = z
  .strictObject({
    /** Graduations are marks with readings. zeroAtFace: the user says that the tape's zero is bottomed on the chamber face.
     * unmoved: the user says that the tape lay in the same place in every picture, as in a clip.
     * touchesPin: the user says that the blade lies on the end of the clevis pin. */
    tape: z
      .strictObject({ zeroAtFace: z.boolean(), unmoved: z.boolean(), touchesPin: z.boolean() })
      .readonly()
      .nullable(),
    /** The printed card with coded markers. checkMm: what its check line of nominally 100 mm measures on the print. */
    target: z
      .strictObject({
        checkMm: z.number().min(20).max(500),
        uCheckMm: uLengthMm,
        unmoved: z.boolean(),
        touchesPin: z.boolean(),
      })
      .readonly()
      .nullable(),
    /** Outside diameter of the clamp band. */
    clampBand: z.strictObject({ diameterMm: lengthMm, uDiameterMm: uLengthMm }).readonly().nullable(),
    /** Camshaft centre to clevis pin centre, as stamped on the arm or measured by hand. */
    armLength: z.strictObject({ lengthMm, uLengthMm }).readonly().nullable(),
    /** A plain known distance between two marked points near the rod. */
    distance: z.strictObject({ distanceMm: lengthMm, uDistanceMm: uLengthMm }).readonly().nullable(),
    /** How far the visible end of the clevis pin stands out from the rod's middle line, square to the plane of motion: no scale, but it
     * places the pin in depth. */
    pinEnd: z
      .strictObject({ outMm: z.number().min(0).max(MOST_PIN_END_MM), uOutMm: uLengthMm })
      .readonly()
      .nullable(),
  })
  .readonly();

export type References = z.infer<typeof referencesSchema>;

export const NO_REFERENCES: References = {
  tape: null,
  target: null,
  clampBand: null,
  armLength: null,
  distance: null,
  pinEnd: null,
};
