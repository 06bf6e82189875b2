/** Between places of the upright picture and those of a frame's pixels as stored, which a camera may have turned or stretched. */
import type { Capture } from '../../captures/capture.ts';
import { storedPlaces } from '../../captures/stored-place.ts';

type Place = readonly [x: number, y: number];

export type LumaPlaces = {
  readonly fromUpright: (place: Place) => Place;
  readonly toUpright: (place: Place) => Place;
};

export function lumaPlaces(
  capture: Pick<Capture, 'widthPx' | 'heightPx' | 'rotationDeg'>,
  luma: { readonly widthPx: number; readonly heightPx: number },
): LumaPlaces {
  const stored = storedPlaces(capture);
  const [wide, high] = [luma.widthPx / stored.size.widthPx, luma.heightPx / stored.size.heightPx];
  const fromUpright = ([x, y]: Place): Place => {
    const [storedX, storedY] = stored.place(x, y);
    return [wide * storedX, high * storedY];
  };
  // A turn and two scales: what a step along x and one along y become tells the way back.
  const [ox, oy] = fromUpright([0, 0]);
  const along = (step: Place): Place => {
    const [x, y] = fromUpright(step);
    return [x - ox, y - oy];
  };
  const [a, c] = along([1, 0]);
  const [b, d] = along([0, 1]);
  const size = a * d - b * c;
  return {
    fromUpright,
    toUpright: ([x, y]) => {
      const [dx, dy] = [x - ox, y - oy];
      return [(d * dx - b * dy) / size, (a * dy - c * dx) / size];
    },
  };
}
