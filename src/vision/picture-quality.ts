/** What a picture is like where the brake is, before anything is marked on it: blur, light, glare on the tape. It judges nothing. */
import { z } from 'zod';
import { grayOf } from './gray.ts';
import { blurOf } from './picture-quality-blur.ts';
import { seenEdges } from './picture-quality-edges.ts';
import { glareShare } from './picture-quality-glare.ts';
import { lightIn } from './picture-quality-light.ts';
import type { Rect } from './rect.ts';

export type Picture = {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly rgba: Uint8ClampedArray;
};

const px = z.number();

export const qualityQuestionSchema = z
  .strictObject({
    /** Where the brake is; null: not known, the whole picture. */
    aboutPx: z.strictObject({ xPx: px, yPx: px, widthPx: px, heightPx: px }).nullable(),
    /** Graduations marked on the tape. */
    tape: z
      .array(z.strictObject({ placePx: z.tuple([px, px]).readonly(), readingMm: z.number() }).readonly())
      .readonly(),
  })
  .readonly();

export const pictureQualitySchema = z
  .strictObject({
    /** Null: too few edges to tell. */
    blur: z
      .strictObject({
        leastPx: z.number().positive(),
        mostPx: z.number().positive(),
        alongRad: z.number().nullable(),
        edges: z.int(),
      })
      .nullable(),
    light: z.strictObject({ burntShare: z.number(), darkShare: z.number() }),
    glareShare: z.number().nullable(),
  })
  .readonly();

export type QualityQuestion = z.infer<typeof qualityQuestionSchema>;
export type PictureQuality = z.infer<typeof pictureQualitySchema>;

export function pictureQuality(picture: Picture, { aboutPx, tape }: QualityQuestion): PictureQuality {
  const gray = grayOf(picture.rgba, picture.widthPx, picture.heightPx);
  const box = within(picture, aboutPx);
  return {
    blur: blurOf(seenEdges(gray, box)),
    light: lightIn(picture, gray.values, box),
    glareShare: glareShare(picture, tape),
  };
}

/** Whole pixels of the picture. */
function within({ widthPx, heightPx }: Picture, asked: Rect | null): Rect {
  if (!asked) return { xPx: 0, yPx: 0, widthPx, heightPx };
  const [left, top] = [asked.xPx, asked.yPx].map((v) => Math.max(0, Math.floor(v))) as [number, number];
  return {
    xPx: left,
    yPx: top,
    widthPx: Math.max(0, Math.min(widthPx, Math.ceil(asked.xPx + asked.widthPx)) - left),
    heightPx: Math.max(0, Math.min(heightPx, Math.ceil(asked.yPx + asked.heightPx)) - top),
  };
}
