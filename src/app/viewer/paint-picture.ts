/** Draws the picture into a canvas at the screen's own pixels. */
import type { View } from './view-transform.ts';

/** From this many screen pixels per frame pixel on, pixels are shown as squares: nothing is invented between them. */
const SQUARES_FROM = 4;

export function paintPicture(
  canvas: HTMLCanvasElement,
  picture: ImageBitmap,
  view: Pick<View, 'screen' | 'scale' | 'origin'>,
  quality: ImageSmoothingQuality,
): void {
  const ratio = window.devicePixelRatio;
  const width = Math.round(view.screen.widthCss * ratio);
  const height = Math.round(view.screen.heightCss * ratio);
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width;
    canvas.height = height;
    canvas.style.width = `${width / ratio}px`;
    canvas.style.height = `${height / ratio}px`;
  }
  const context = canvas.getContext('2d');
  // A picture of no size was freed by its owner, who is about to show another.
  if (!context || picture.width === 0) return;
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.clearRect(0, 0, width, height);
  const scale = ratio * view.scale;
  context.setTransform(scale, 0, 0, scale, ratio * view.origin.xCss, ratio * view.origin.yCss);
  context.imageSmoothingEnabled = view.scale < SQUARES_FROM;
  context.imageSmoothingQuality = quality;
  context.drawImage(picture, 0, 0);
}
