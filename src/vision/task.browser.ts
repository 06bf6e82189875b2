/** What the page asks of the vision worker. The picture goes over to the worker, which closes it. */
import { z } from 'zod';
import { boardPlanSchema } from './seen-board.ts';
import { cardMarkerSchema } from './target-sight.ts';

const picture = z.instanceof(ImageBitmap);

export const taskSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('find-target'), picture, card: z.array(cardMarkerSchema).readonly() }),
  z.strictObject({ kind: z.literal('find-board'), picture, plan: boardPlanSchema }),
]);

export type Task = z.infer<typeof taskSchema>;
