/** Photos of the calibration board by a camera that is known, as JPEG files; some held upright, as the EXIF of a phone says it. */
import type { Page } from '@playwright/test';
import { type BoardSceneOptions, boardScene, PHONE } from '../adjustment/board-scene.ts';
import { boardPicture } from '../vision/board-picture.ts';
import { grayJpeg } from './gray-jpeg.ts';
import type { FileToChoose } from './shell-start.ts';

/** The size of the shell's own photos. */
export const SCENE: BoardSceneOptions = {
  ...PHONE,
  seed: 21,
  count: 9,
  widthPx: 1200,
  heightPx: 900,
  lens: { focalPx: 1010, cxPx: 611, cyPx: 442, k1: -0.06, k2: 0.02 },
  tiltRad: 0.75,
  noisePx: 0,
};

export async function boardPhotos(page: Page, count = SCENE.count): Promise<readonly FileToChoose[]> {
  const files: FileToChoose[] = [];
  for (const [i, { hold }] of boardScene({ ...SCENE, count }).entries()) {
    const gray = boardPicture({
      ...{ ...SCENE, seed: i, hold },
      ...{ blurPx: 0.8, noise: 3, lightFall: 0.3, inkMm: 0.1 },
    });
    const jpeg = await grayJpeg(page, gray);
    // The camera and its pixels are the same; only which side was up differs.
    const buffer = i % 3 === 0 ? jpeg : withOrientation(jpeg, i % 3 === 1 ? 6 : 8);
    files.push({ name: `board-${i + 1}.jpg`, mimeType: 'image/jpeg', buffer });
  }
  return files;
}

/** An APP1 segment after the start of the file: Exif 2.32, 4.5.4 and 4.6.4, tag 274 (clauses from memory). */
function withOrientation(jpeg: Buffer, orientation: number): Buffer {
  const tiff = Buffer.alloc(26);
  tiff.write('MM', 0, 'latin1');
  tiff.writeUInt16BE(42, 2);
  tiff.writeUInt32BE(8, 4);
  tiff.writeUInt16BE(1, 8);
  tiff.writeUInt16BE(274, 10);
  tiff.writeUInt16BE(3, 12);
  tiff.writeUInt32BE(1, 14);
  tiff.writeUInt16BE(orientation, 18);
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
  const head = Buffer.from([0xff, 0xe1, 0, body.length + 2]);
  return Buffer.concat([jpeg.subarray(0, 2), head, body, jpeg.subarray(2)]);
}
