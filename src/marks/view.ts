/** A view: one frame of a capture taken as released, applied, or pulled by hand to lining contact, with its marks. */
import { z } from 'zod';
import { frameSchema } from '../frames/frame.ts';
import { markSchema } from './mark.ts';

export const BRAKE_STATES = ['released', 'applied', 'pulled'] as const;
export type BrakeState = (typeof BRAKE_STATES)[number];

export const viewSchema = z
  .strictObject({
    state: z.enum(BRAKE_STATES),
    captureId: z.string().min(1).max(64),
    /** The frame of a clip; null for a photo. */
    frame: frameSchema.nullable(),
    marks: z.array(markSchema).max(500).readonly(),
  })
  .readonly();

export type View = z.infer<typeof viewSchema>;
