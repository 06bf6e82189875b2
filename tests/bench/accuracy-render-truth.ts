/** What a ray-traced pair says of itself (accuracy-render.mjs). */
import { z } from 'zod';

const px = z.tuple([z.number(), z.number()]);

const viewSchema = z.strictObject({
  state: z.enum(['released', 'applied']),
  offSquareDeg: z.number(),
  chamberFace: px,
  clevisPin: px,
  camshaftEnd: px,
  rodLine: z.array(px),
  clampBand: z.array(px),
  tapeGraduations: z.array(z.strictObject({ inches: z.number(), px })),
  targetCorners: z.array(z.strictObject({ marker: z.int(), corner: z.int(), px })),
  fixedThings: z.array(z.strictObject({ name: z.string(), px })),
});

export const renderedPairSchema = z.strictObject({
  number: z.int(),
  held: z.enum(['target on the pin', 'target anew', 'tape', 'nothing']),
  tried: z.int(),
  dirt: z.number(),
  blurPx: z.number(),
  exposure: z.number(),
  greyNoise: z.number(),
  light: z.enum(['hard', 'soft']),
  widthPx: z.int(),
  heightPx: z.int(),
  focalPx: z.number(),
  distanceMm: z.number(),
  strokeMm: z.number(),
  armAngleAppliedDeg: z.number(),
  armLengthMm: z.number(),
  bandDiameterMm: z.number(),
  pinEndMm: z.number(),
  printSize: z.number(),
  views: z.array(viewSchema),
});

export type RenderedPair = z.infer<typeof renderedPairSchema>;
export type RenderedView = RenderedPair['views'][number];
