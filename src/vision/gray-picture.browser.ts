/** The gray values of a picture, which is closed. */
import { assert } from '../basics/result.ts';
import { type Gray, grayOf } from './gray.ts';

export function grayPicture(picture: ImageBitmap): Gray {
  const { width, height } = picture;
  const pen = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
  assert(pen, 'a worker can draw');
  pen.drawImage(picture, 0, 0);
  picture.close();
  return grayOf(pen.getImageData(0, 0, width, height).data, width, height);
}
