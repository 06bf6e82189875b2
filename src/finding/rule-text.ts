/** Rules beside the table of limits, in our own words, each with its source: what a note on an axle or a vehicle rests on. */
import { z } from 'zod';

export const RULE_IDS = [
  'same-chamber-size',
  'same-arm-length',
  'same-stroke-class',
  'arm-near-square',
  'roadside-share',
  'steer-axle-alone',
  'automatic-adjuster-by-hand',
  'free-stroke',
  'reading-of-two-strokes',
] as const;
export type RuleId = (typeof RULE_IDS)[number];

export const ruleTextSchema = z
  .strictObject({
    id: z.enum(RULE_IDS),
    /** Law binds; criteria decide at the roadside; advice binds nobody. */
    force: z.enum(['law', 'criteria', 'advice']),
    text: z.string().min(1).max(600),
    /** Ids of the rule set's sources. */
    sources: z.array(z.string().min(1).max(64)).min(1).readonly(),
  })
  .readonly();

export type RuleText = z.output<typeof ruleTextSchema>;
