/** The values of a picture, which is closed. */
import { assert } from '../basics/result.ts';
import { type Gray, grayOf } from './gray.ts';
import type { Picture } from './picture-quality.ts';

export function grayPicture(picture: ImageBitmap): Gray {
  const { rgba, widthPx, heightPx } = rgbaPicture(picture);
  return grayOf(rgba, widthPx, heightPx);
}

export function rgbaPicture(picture: ImageBitmap): Picture {
  const { width, height } = picture;
  const pen = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
  assert(pen, 'a worker can draw');
  pen.drawImage(picture, 0, 0);
  picture.close();
  return { rgba: pen.getImageData(0, 0, width, height).data, widthPx: width, heightPx: height };
}
