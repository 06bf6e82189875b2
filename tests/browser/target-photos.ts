/** A photo pair with the printed target in it, made for the test, and where the target's corners truly are. */
import type { Page } from '@playwright/test';
import { type CardPictureOptions, cardPicture, PLAIN } from '../vision/card-picture.ts';
import { grayJpeg } from './gray-jpeg.ts';
import type { FileToChoose } from './shell-start.ts';

const WIDTH_PX = 1600;
const HEIGHT_PX = 1200;

export type TargetPhoto = {
  readonly file: FileToChoose;
  readonly corner: (marker: number, corner: number) => readonly [x: number, y: number];
};

/** The card at a place of a larger gray picture, coded as JPEG by the browser. */
export async function targetPhoto(
  page: Page,
  name: string,
  [leftPx, topPx]: readonly [number, number],
  over: Partial<CardPictureOptions>,
): Promise<TargetPhoto> {
  const card = cardPicture({ ...PLAIN, markerPx: 90, turnDeg: 4, tiltDeg: 12, ...over });
  const buffer = await grayJpeg(page, card.gray, { leftPx, topPx, widthPx: WIDTH_PX, heightPx: HEIGHT_PX });
  return {
    file: { name, mimeType: 'image/jpeg', buffer },
    corner: (marker, corner) => {
      const [x, y] = card.corner(marker, corner);
      return [x + leftPx, y + topPx];
    },
  };
}
