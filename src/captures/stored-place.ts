/**
 * A place of the upright picture in the picture as stored, before its turn upright.
 *
 * Model    turned clockwise by 90 degrees, (x, y) of a picture of height H comes to (H - y, x); here the other way, once for each
 *          90 degrees: (x, y) of an upright picture of width W comes from (y, W - x).
 * Assumes  pixels from the corner of the first one. A mirroring is left as it is.
 */
import type { Capture } from './capture.ts';
import { type SizePx, uprightSize } from './upright.ts';

export type StoredPlaces = {
  readonly size: SizePx;
  readonly place: (xPx: number, yPx: number) => readonly [xPx: number, yPx: number];
};

export function storedPlaces({
  widthPx,
  heightPx,
  rotationDeg,
}: Pick<Capture, 'widthPx' | 'heightPx' | 'rotationDeg'>): StoredPlaces {
  return {
    // Turning back swaps the sides just as turning does.
    size: uprightSize({ widthPx, heightPx }, { rotationDeg, mirrored: false }),
    place(xPx, yPx) {
      let [x, y] = [xPx, yPx];
      let [width, height] = [widthPx, heightPx];
      for (let turned = 0; turned < rotationDeg; turned += 90) {
        [x, y] = [y, width - x];
        [width, height] = [height, width];
      }
      return [x, y];
    },
  };
}
