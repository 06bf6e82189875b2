/** Ray-traced looks that were made before (npm run bench:assists -- --only marks makes them), with their truth. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';

const FOLDER = fileURLToPath(new URL('../../node_modules/.cache/assists-marks', import.meta.url));

const px = z.tuple([z.number(), z.number()]);
const truthSchema = z.object({
  number: z.int(),
  blurPx: z.number(),
  widthPx: z.number(),
  heightPx: z.number(),
  offSquareDeg: z.number(),
  chamberFace: px,
  clevisPin: px,
  camshaftEnd: px,
  rodLine: z.array(px),
  rodHalfPx: z.number(),
  rim: z.array(px),
  rimSeen: z.array(px),
  tapeGraduations: z.array(z.object({ inches: z.number(), px, strokePx: z.array(px) })),
});
export type Known = { readonly picture: string; readonly truth: z.infer<typeof truthSchema> };

export function looksKept(from = 0, to = Number.POSITIVE_INFINITY): readonly Known[] {
  if (!existsSync(FOLDER)) return [];
  return readdirSync(FOLDER)
    .flatMap((name) => /^look-(\d+)\.json$/.exec(name)?.[1] ?? [])
    .map(Number)
    .sort((a, b) => a - b)
    .filter((number) => number >= from && number < to)
    .flatMap((number) => {
      const [picture, file] = [`${FOLDER}/look-${number}.jpg`, `${FOLDER}/look-${number}.json`];
      return existsSync(picture)
        ? [{ picture, truth: truthSchema.parse(JSON.parse(readFileSync(file, 'utf8'))) }]
        : [];
    });
}
