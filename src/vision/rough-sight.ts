/** What is guessed of a picture in which nothing is marked, as it passes between page and worker. */
import { z } from 'zod';

/** likely: something else that was found confirms it. placesPx: of the upright picture. */
const roughSchema = z
  .strictObject({
    likely: z.boolean(),
    placesPx: z
      .array(z.tuple([z.number(), z.number()]).readonly())
      .min(2)
      .readonly(),
  })
  .readonly()
  .nullable();

/** An end of pin or camshaft: where, and how large such ends are at most. */
const endSchema = z
  .strictObject({
    likely: z.boolean(),
    placePx: z.tuple([z.number(), z.number()]).readonly(),
    radiusPx: z.number().positive(),
  })
  .readonly()
  .nullable();

/** tape: where its whole inches are; band: along its rim; axis: of the chamber, from the rim's middle beyond the pin. Null: not found. */
export const roughGuessSchema = z
  .strictObject({
    tape: roughSchema,
    band: roughSchema,
    axis: roughSchema,
    pin: endSchema,
    camshaft: endSchema,
  })
  .readonly();

export type RoughGuess = z.infer<typeof roughGuessSchema>;
