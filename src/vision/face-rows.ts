/**
 * What a picture shows along the push rod about the chamber face, row by row across the rod.
 *
 * Model    a row: levels at every pixel s along the frame, at u half widths to the side of its axis; between pixels linear
 */
import { type Frame, levelIn } from './assist-tape-edge.ts';
import type { Gray } from './gray.ts';
import { linearAt } from './linear-light.ts';

/** stepAt: by how many levels, lightStepAt: by how much light, 0 to 1, it changes over 2 REACH_PX about s. */
export type FaceRow = {
  readonly u: number;
  readonly stepAt: (s: number) => number;
  readonly lightStepAt: (s: number) => number;
};

/** Near the rod's own edges its rounding darkens. */
const MOST_U = 0.8;
const ROWS = 17;
/** Over the half width: a row is the mean of two, so far to either side. */
const WIDE = 0.03;
const REACH_PX = 1.5;
const LIGHT_REACH_PX = 1;

/** farPx: to either side along the frame. */
export function faceRows(gray: Gray, frame: Frame, halfPx: number, farPx: number): readonly FaceRow[] {
  return Array.from({ length: ROWS }, (_, i): FaceRow => {
    const u = MOST_U * ((2 * i) / (ROWS - 1) - 1);
    const levels = new Float64Array(2 * farPx + 1);
    const light = new Float64Array(levels.length);
    for (let j = 0; j < levels.length; j++) {
      const [a, b] = [-WIDE, WIDE].map((by) => levelIn(gray, frame, j - farPx, (u + by) * halfPx)) as [
        number,
        number,
      ];
      levels[j] = (a + b) / 2;
      light[j] = (linearAt(a) + linearAt(b)) / 2;
    }
    const at = (values: Float64Array, s: number): number => {
      const place = s + farPx;
      const before = Math.floor(place);
      const [a, b] = [values[before] ?? Number.NaN, values[before + 1] ?? Number.NaN];
      return a + (place - before) * (b - a);
    };
    return {
      u,
      stepAt: (s) => at(levels, s + REACH_PX) - at(levels, s - REACH_PX),
      lightStepAt: (s) => at(light, s + LIGHT_REACH_PX) - at(light, s - LIGHT_REACH_PX),
    };
  });
}
