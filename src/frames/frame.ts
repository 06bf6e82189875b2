/** Which picture, which instant: a frame of a clip is named by the track's own integer time, never by a frame rate. */
import { z } from 'zod';

export const frameSchema = z
  .strictObject({
    /** Position in presentation order, from 0. */
    index: z.int().min(0),
    /** Presentation time in the track's ticks. */
    timeTicks: z.int(),
  })
  .readonly();

export type Frame = z.infer<typeof frameSchema>;

/** times: of a clip, in the order in which they are shown. */
export const framesOf = (times: readonly Pick<Frame, 'timeTicks'>[]): readonly Frame[] =>
  times.map(({ timeTicks }, index) => ({ index, timeTicks }));
