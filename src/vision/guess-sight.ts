/** What is asked about a picture on which little or nothing is marked, and what is proposed there, as it passes between page and worker. */
import { z } from 'zod';

const px = z.tuple([z.number(), z.number()]).readonly();
const graduation = z.strictObject({ placePx: px, readingMm: z.number() }).readonly();

const knownSchema = z
  .strictObject({
    tape: z.array(graduation).readonly(),
    pinPx: px.nullable(),
    camshaftPx: px.nullable(),
  })
  .readonly();

export const guessQuestionSchema = z
  .strictObject({
    /** Graduations known in this picture: then the tape is not looked for. */
    tape: z.array(graduation).readonly(),
    /** Another picture of the same wheel end and what is marked there; null: none. */
    other: knownSchema.nullable(),
  })
  .readonly();

export const GUESSED_KINDS = ['tape-graduation', 'clevis-pin', 'camshaft-end'] as const;

const proposalSchema = z
  .strictObject({
    kind: z.enum(GUESSED_KINDS),
    /** One for an end, many for a tape. */
    marks: z
      .array(
        z.strictObject({
          placePx: px,
          sigmaPx: z.number().positive(),
          readingMm: z.number().nullable(),
        }),
      )
      .min(1)
      .readonly(),
    /** Probability that it is what it is taken for, by studies on renders. */
    confidence: z.number().min(0).max(1),
  })
  .readonly();

export const guessSightSchema = z.strictObject({ proposals: z.array(proposalSchema).readonly() }).readonly();

export type GuessQuestion = z.infer<typeof guessQuestionSchema>;
export type GuessedKind = (typeof GUESSED_KINDS)[number];
export type Proposal = z.infer<typeof proposalSchema>;
export type GuessSight = z.infer<typeof guessSightSchema>;
