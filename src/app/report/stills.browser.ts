/** The annotated pictures as files of their own, at the size of what was cut out of the camera's picture. */
import { fontRule, type ReportFonts } from '../../evidence/report-html.ts';
import type { ReportInput } from './compose-report.ts';
import { pictureDrawing } from './picture-drawing.ts';
import { annotatedPictures, type ReportPictures } from './report-drawings.ts';

export type Still = { readonly name: string; readonly blob: Blob };

const QUALITY = 0.92;
/** Lines and names are to be read without a magnifier. */
const LEAST_PX = 1080;

/** Those whose pictures are at hand. Rejects with the signal's reason when aborted. */
export async function annotatedStills(
  input: ReportInput,
  pictures: ReportPictures,
  fonts: ReportFonts,
  signal: AbortSignal,
): Promise<readonly Still[]> {
  const stills: Still[] = [];
  for (const { key, end, purpose, state, drawing } of annotatedPictures(input)) {
    signal.throwIfAborted();
    const href = pictures.get(key);
    if (!href) continue;
    const widthPx = Math.max(LEAST_PX, drawing.crop.widthPx);
    const heightPx = Math.round((widthPx * drawing.crop.heightPx) / drawing.crop.widthPx);
    const styles = fonts.map(fontRule).join('');
    const svg = pictureDrawing({ ...drawing, href, alone: { widthPx, heightPx, styles } });
    const { axle, side } = end.position;
    stills.push({
      name: `axle-${axle}-${side}-${purpose}-${state}`,
      blob: await rasterised(svg.text, widthPx, heightPx),
    });
  }
  return stills;
}

async function rasterised(svg: string, widthPx: number, heightPx: number): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = new Image(widthPx, heightPx);
    image.src = address;
    await image.decode();
    const canvas = new OffscreenCanvas(widthPx, heightPx);
    const context = canvas.getContext('2d', { alpha: false });
    if (!context) throw new Error('a canvas of a picture’s size can be drawn on');
    context.drawImage(image, 0, 0, widthPx, heightPx);
    return await canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
  } finally {
    URL.revokeObjectURL(address);
  }
}
