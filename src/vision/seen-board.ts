/** What of the calibration board is asked for and what was seen of it, as it passes between page and worker. */
import { z } from 'zod';
import { cardMarkerSchema } from './target-sight.ts';

const pointMmSchema = z.tuple([z.number(), z.number()]).readonly();

export const boardPlanSchema = z
  .strictObject({
    squareMm: z.number().positive(),
    markers: z.array(cardMarkerSchema).readonly(),
    /** Where four squares meet, by the number of the corner. */
    cornersMm: z.array(pointMmSchema).readonly(),
  })
  .readonly();

export const seenBoardSchema = z
  .strictObject({
    corners: z
      .array(
        z
          .strictObject({
            corner: z.int(),
            xPx: z.number(),
            yPx: z.number(),
            /** Standard uncertainty of x and of y. */
            sigmaPx: z.number().positive(),
          })
          .readonly(),
      )
      .readonly(),
  })
  .readonly();

export type BoardPlan = z.infer<typeof boardPlanSchema>;
export type SeenBoard = z.infer<typeof seenBoardSchema>;
