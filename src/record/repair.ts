/** What was found to be wrong and what was done about it. */
import { z } from 'zod';
import { CAUSES } from '../finding/causes.ts';
import { at, id, line, paragraph } from './parts.ts';

export const ADJUSTER_KINDS = ['automatic', 'manual', 'cannot-tell'] as const;
export type AdjusterKind = (typeof ADJUSTER_KINDS)[number];

export const MOST_PARTS = 40;
export const MOST_FREE_STROKE_MM = 200;

export const repairSchema = z
  .strictObject({
    id,
    at,
    by: line,
    cause: z.enum(CAUSES).nullable(),
    /** What was done, torques and clearances included, in the technician's words. */
    work: paragraph,
    parts: z.array(line).max(MOST_PARTS).readonly(),
    /** The adjuster that is on the brake after the repair; null where it was left as it was. */
    newAdjuster: z.enum(ADJUSTER_KINDS).nullable(),
    /** The adjuster was turned by hand to bring the stroke in. */
    adjustedByHand: z.boolean(),
    /** Free stroke that the brake was set to. */
    setFreeStrokeMm: z.number().min(0).max(MOST_FREE_STROKE_MM).nullable(),
  })
  .readonly();

export type Repair = z.infer<typeof repairSchema>;
