/** Graduations as they truly are in a picture, and how far off one that was found lies. */
import { z } from 'zod';
import type { FoundMark } from '../../src/vision/assist-sight.ts';
import type { Point } from '../../src/vision/point.ts';

export const INCH = 25.4;

const px = z.tuple([z.number(), z.number()]);
/** strokePx: along its stroke. */
export const graduationSchema = z.object({ inches: z.number(), px, strokePx: z.array(px) });
export type Graduation = z.infer<typeof graduationSchema>;

type Found = Pick<FoundMark, 'placePx' | 'readingMm' | 'sigmaPx'>;

/** Across the true stroke, where the mark lies on it; a reading whose stroke lies elsewhere counts in full. strokeOf: the line that counts. */
export function markOff(
  { placePx, readingMm, sigmaPx }: Found,
  all: readonly Graduation[],
  strokeOf: (truth: Graduation) => readonly Point[] = ({ strokePx }) => strokePx,
) {
  const truth = all.find(({ inches }) => Math.abs(inches * INCH - (readingMm ?? 0)) < 0.01);
  if (!truth) return null;
  const line = strokeOf(truth);
  const offs = line.slice(1).map((to, i) => {
    const from = line[i] as Point;
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const share = ((placePx[0] - from[0]) * dx + (placePx[1] - from[1]) * dy) / (dx * dx + dy * dy);
    const part = Math.max(0, Math.min(1, share));
    const [x, y] = [from[0] + part * dx, from[1] + part * dy];
    const side = Math.sign(dx * (placePx[1] - y) - dy * (placePx[0] - x)) || 1;
    return side * Math.hypot(placePx[0] - x, placePx[1] - y);
  });
  return { offPx: offs.reduce((least, off) => (Math.abs(off) < Math.abs(least) ? off : least)), sigmaPx };
}
