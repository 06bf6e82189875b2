/** What the vision worker says: first whether it started, then one answer for each task. */
import { z } from 'zod';
import { visionFailureSchema } from './vision-failure.ts';

export function answerSchema<T extends z.ZodType, F extends z.ZodType>(value: T, failure: F) {
  return z.union([
    z.strictObject({ ok: z.literal(true), value }),
    z.strictObject({ ok: z.literal(false), failure }),
  ]);
}

export const startedSchema = answerSchema(z.null(), visionFailureSchema);
