/** Cuts the wanted pictures out of the captures whose files are at hand, one after the other: only one is decoded at a time. */
import { openFrames } from '../../frames/open-frames.browser.ts';
import type { CropRect } from '../viewer/crop-rect.ts';
import type { WantedPicture } from './report-pictures.ts';

/** Of a whole picture; a crop keeps the camera's own pixels up to MOST_PX. */
const SMALL_PX = 1000;
/** On half a page this is about 570 dots per inch. */
const MOST_PX = 2000;
const QUALITY = 0.92;

export type TakenPictures = ReadonlyMap<string, Blob>;

export async function takePictures(
  wanted: readonly WantedPicture[],
  fileOf: (sha256: string) => Blob | null,
  signal: AbortSignal,
): Promise<TakenPictures> {
  const taken = new Map<string, Blob>();
  for (const capture of new Set(wanted.map((each) => each.capture))) {
    const file = fileOf(capture.sha256);
    const source = file && (await openFrames(capture, file, signal));
    if (!source?.ok) continue;
    try {
      for (const { key, frame, crop } of wanted.filter((each) => each.capture === capture)) {
        const picture = await source.value.picture(frame, signal);
        if (picture.ok) taken.set(key, await cutOut(picture.value, crop));
      }
    } finally {
      source.value.close();
    }
  }
  return taken;
}

/** Closes the picture. */
async function cutOut(picture: ImageBitmap, crop: CropRect | null): Promise<Blob> {
  try {
    const part = crop ?? { xPx: 0, yPx: 0, widthPx: picture.width, heightPx: picture.height };
    const mostPx = crop ? MOST_PX : SMALL_PX;
    const scale = Math.min(1, mostPx / Math.max(part.widthPx, part.heightPx));
    const canvas = new OffscreenCanvas(
      Math.max(1, Math.round(part.widthPx * scale)),
      Math.max(1, Math.round(part.heightPx * scale)),
    );
    const context = canvas.getContext('2d', { alpha: false });
    if (!context) throw new Error('a canvas of a picture’s size can be drawn on');
    context.imageSmoothingQuality = 'high';
    context.drawImage(
      picture,
      part.xPx,
      part.yPx,
      part.widthPx,
      part.heightPx,
      0,
      0,
      canvas.width,
      canvas.height,
    );
    return await canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
  } finally {
    picture.close();
  }
}
