/** What is asked about an end that two pictures show, and what was found, as it passes between page and worker. */
import { z } from 'zod';
import { visionFailureSchema } from './vision-failure.ts';

const placePx = z.tuple([z.number(), z.number()]).readonly();

/** Of one picture; they say how large things are there and how they are turned. */
const endMarksSchema = z
  .strictObject({ facePx: placePx, pinPx: placePx, camshaftPx: placePx.nullable() })
  .readonly();

export const sameEndQuestionSchema = z
  .strictObject({
    of: z.enum(['clevis-pin', 'camshaft-end']),
    /** In the picture whose mark is kept. */
    known: endMarksSchema,
    /** In the picture in which that end is sought anew, near its mark. */
    rough: endMarksSchema,
    roughSigmaPx: z.number().positive(),
  })
  .readonly();

/** sigmaPx: of the second place against the first, for the same point of the metal; what the first is off by is not in it. */
export const sameEndSightSchema = z.strictObject({ placePx, sigmaPx: z.number().positive() }).readonly();

export const sameEndFailureSchema = z.union([
  visionFailureSchema,
  /** Nothing near the rough mark looks so; likeness: of the best, 0 to 1. */
  z.strictObject({ code: z.literal('same/unlike'), likeness: z.number() }),
  /** Smaller and larger parts of it are found in different places. */
  z.strictObject({ code: z.literal('same/two-ways'), apartPx: z.number() }),
  /** The end asked about is not marked in both pictures. */
  z.strictObject({ code: z.literal('same/not-marked') }),
]);

export type EndMarks = z.infer<typeof endMarksSchema>;
export type SameEndQuestion = z.infer<typeof sameEndQuestionSchema>;
export type SameEndSight = z.infer<typeof sameEndSightSchema>;
export type SameEndFailure = z.infer<typeof sameEndFailureSchema>;
