/** What can go wrong in looking at pictures; the numbers that explain it cross from the worker to the page. */
import { z } from 'zod';

export const visionFailureSchema = z.discriminatedUnion('code', [
  /** The page is not allowed to make functions from text, without which OpenCV does not start. */
  z.strictObject({ code: z.literal('vision/forbidden') }),
  /** OpenCV's file did not come, or is damaged. */
  z.strictObject({ code: z.literal('vision/not-loaded') }),
  z.strictObject({ code: z.literal('vision/not-started'), limitS: z.number() }),
  z.strictObject({ code: z.literal('vision/parts-missing'), names: z.array(z.string()).readonly() }),
  z.strictObject({ code: z.literal('vision/stalled'), limitS: z.number() }),
  /** OpenCV itself gave up; its own words. */
  z.strictObject({ code: z.literal('vision/opencv-failed'), text: z.string() }),
]);

export type VisionFailure = z.infer<typeof visionFailureSchema>;
