/** What is asked about two pictures of one brake and what of it was seen in both, as it passes between page and worker. */
import { z } from 'zod';
import { visionFailureSchema } from './vision-failure.ts';

const placeSchema = z.tuple([z.number(), z.number()]).readonly();

/** A closed outline of at least three corners. */
const outlineSchema = z.array(placeSchema).min(3).readonly();

const sideSchema = z
  .strictObject({
    focalPx: z.number().positive(),
    /** A fixed place at the brake that both pictures show, as marked: ties are sought about it and at about its distance. */
    aboutPx: placeSchema,
    /** Where things are that move. */
    leaveOut: z.array(outlineSchema).readonly(),
  })
  .readonly();

export const tieQuestionSchema = z.strictObject({ first: sideSchema, second: sideSchema }).readonly();

const foundTieSchema = z
  .strictObject({
    firstPx: placeSchema,
    secondPx: placeSchema,
    /** Standard uncertainty of x and of y of each of both places: what the match leaves open is shared between them. */
    sigmaPx: z.number().positive(),
  })
  .readonly();

/** How many are left after each step. */
const tieCountsSchema = z
  .strictObject({
    features: z.tuple([z.int(), z.int()]).readonly(),
    alike: z.int(),
    agreeing: z.int(),
    fitted: z.int(),
  })
  .readonly();

export const tieSightSchema = z
  .strictObject({ ties: z.array(foundTieSchema).readonly(), counts: tieCountsSchema })
  .readonly();

export const tieFailureSchema = z.union([
  visionFailureSchema,
  /** Too little that both pictures show alike, stands still and is sure. */
  z.strictObject({ code: z.literal('ties/few'), found: z.int(), counts: tieCountsSchema }),
]);

export type TieSide = z.infer<typeof sideSchema>;
export type TieQuestion = z.infer<typeof tieQuestionSchema>;
export type FoundTie = z.infer<typeof foundTieSchema>;
export type TieCounts = z.infer<typeof tieCountsSchema>;
export type TieSight = z.infer<typeof tieSightSchema>;
export type TieFailure = z.infer<typeof tieFailureSchema>;
