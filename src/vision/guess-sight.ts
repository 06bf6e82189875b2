/** What is asked about the marks of one picture in another that has none yet, as it passes between page and worker. */
import { z } from 'zod';
import { visionFailureSchema } from './vision-failure.ts';

const placePx = z.tuple([z.number(), z.number()]).readonly();
const sigmaPx = z.number().positive();
const knownSchema = z.strictObject({ placePx, sigmaPx }).readonly();

/** The marks of the picture that has them. */
export const guessQuestionSchema = z
  .strictObject({ facePx: placePx, pin: knownSchema, camshaft: knownSchema.nullable() })
  .readonly();

const of = z.enum(['clevis-pin', 'camshaft-end']);

/** sigmaPx: of the same point of the metal; what the known mark is off by is not in it. */
const foundSchema = z.strictObject({ of, placePx, sigmaPx }).readonly();

/**
 * unlike: nothing looks like it; two-places: more than one does; parts-apart: something that moves otherwise lies over it; not-back: what is
 * found leads elsewhere in the first picture; off-arm: pin and camshaft are too near to each other, or too far; no-pin: sought only where
 * the pin is found.
 */
const becauseSchema = z.enum(['unlike', 'two-places', 'parts-apart', 'not-back', 'off-arm', 'no-pin']);

export const guessSightSchema = z
  .strictObject({
    found: z.array(foundSchema).readonly(),
    missed: z.array(z.strictObject({ of, because: becauseSchema }).readonly()).readonly(),
  })
  .readonly();

export const guessFailureSchema = z.union([
  visionFailureSchema,
  /** Too little about the chamber that both pictures show alike. */
  z.strictObject({ code: z.literal('guess/few'), found: z.int() }),
]);

export type GuessQuestion = z.infer<typeof guessQuestionSchema>;
export type FoundEnd = z.infer<typeof foundSchema>;
export type GuessMissed = z.infer<typeof becauseSchema>;
export type GuessSight = z.infer<typeof guessSightSchema>;
export type GuessFailure = z.infer<typeof guessFailureSchema>;
