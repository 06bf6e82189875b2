/** What the vision worker says: first whether it started, then one answer for each task. */
import { z } from 'zod';
import { visionFailureSchema } from './vision-failure.ts';

const failedSchema = z.strictObject({ ok: z.literal(false), failure: visionFailureSchema });

export function answerSchema<T extends z.ZodType>(value: T) {
  return z.union([z.strictObject({ ok: z.literal(true), value }), failedSchema]);
}

export const startedSchema = answerSchema(z.null());
