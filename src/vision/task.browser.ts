/** What the page asks of the vision worker. The picture goes over to the worker, which closes it. */
import { z } from 'zod';
import { cardMarkerSchema } from './target-sight.ts';

export const taskSchema = z.strictObject({
  kind: z.literal('find-target'),
  picture: z.instanceof(ImageBitmap),
  card: z.array(cardMarkerSchema).readonly(),
});

export type Task = z.infer<typeof taskSchema>;
