/** What the page asks of the vision worker. The pictures go over to the worker, which closes them. */
import { z } from 'zod';
import { assistQuestionSchema } from './assist-sight.ts';
import { guessQuestionSchema } from './guess-sight.ts';
import { qualityQuestionSchema } from './picture-quality.ts';
import { boardPlanSchema } from './seen-board.ts';
import { cardMarkerSchema } from './target-sight.ts';
import { tieQuestionSchema } from './tie-sight.ts';

const picture = z.instanceof(ImageBitmap);

export const taskSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('find-target'), picture, card: z.array(cardMarkerSchema).readonly() }),
  z.strictObject({ kind: z.literal('find-board'), picture, plan: boardPlanSchema }),
  z.strictObject({ kind: z.literal('find-ties'), picture, second: picture, question: tieQuestionSchema }),
  z.strictObject({
    kind: z.literal('assist'),
    picture,
    second: picture.nullable(),
    question: assistQuestionSchema,
  }),
  z.strictObject({ kind: z.literal('guess'), picture, second: picture, question: guessQuestionSchema }),
  z.strictObject({ kind: z.literal('rough-guess'), picture }),
  z.strictObject({ kind: z.literal('quality'), picture, question: qualityQuestionSchema }),
]);

export type Task = z.infer<typeof taskSchema>;
