/** Pictures of a tape and of a pin's end with known places, drawn without any code of the assists: sampled finely, blurred, with noise. */
import { drawFrom } from '../../src/basics/random.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { homographyOf, inverseOf, mapped } from '../../src/vision/homography.ts';
import type { Point } from '../../src/vision/point.ts';
import { isInked } from './tape-numerals.ts';

const INCH = 25.4;
const FINE = 8;
const FINE_DOWN = 3;

/** Each pixel the mean of FINE x FINE_DOWN places in and about it, then noise. */
function picture(
  widthPx: number,
  heightPx: number,
  noise: number,
  light: (x: number, y: number) => number,
): Gray {
  const draw = drawFrom(7);
  const values = new Uint8Array(widthPx * heightPx);
  for (let row = 0; row < heightPx; row++)
    for (let column = 0; column < widthPx; column++) {
      let sum = 0;
      // Half a pixel wider than a pixel: the lens's blur.
      for (let i = 0; i < FINE * FINE_DOWN; i++)
        sum += light(
          column - 0.25 + (1.5 * (i % FINE)) / (FINE - 1),
          row - 0.25 + (1.5 * Math.floor(i / FINE)) / (FINE_DOWN - 1),
        );
      values[row * widthPx + column] = Math.max(
        0,
        Math.min(255, sum / (FINE * FINE_DOWN) + draw.normal(0, noise)),
      );
    }
  return { widthPx, heightPx, values };
}

export type TapePicture = {
  readonly gray: Gray;
  readonly placeOf: (inches: number, acrossMm: number) => Point;
};

const SHOWN: readonly Point[] = [
  [40, 96],
  [620, 60],
  [618, 28],
  [42, 52],
];

const darkBehind = (x: number, y: number) => 60 + 8 * Math.sin(x / 17) * Math.sin(y / 11);
/** A chamber to the left, before a sky that is lighter than the blade. */
export const skyBehind = (x: number, y: number) => (x < 150 ? darkBehind(x, y) : 205);

const NONE: readonly string[] = [];

/** numerals: beside the whole inches from the first, to the left of their strokes; upsideDown: those. 12 in of a blade 19 mm wide that goes away to the right; strokes at sixteenths, longer at eighths, quarters, halves, inches. */
export function tapePicture({
  strokes = true,
  noise = 2,
  shown = SHOWN,
  behind = darkBehind,
  wholeMm = 19,
  numerals = NONE,
  upsideDown = false,
} = {}): TapePicture {
  const corners: Point[] = [
    [0, 0],
    [12 * INCH, 0],
    [12 * INCH, 19],
    [0, 19],
  ];
  const px = homographyOf(corners, shown);
  if (!px) throw new Error('four corners make a plane');
  const mm = inverseOf(px);
  const gray = picture(660, 130, noise, (x, y) => {
    const [along, across] = mapped(mm, [x, y]);
    if (along < 0 || along > 12 * INCH || across < 0 || across > 19) return behind(x, y);
    const sixteenth = Math.round((along * 16) / INCH);
    const off = Math.abs(along - (sixteenth * INCH) / 16);
    const longMm =
      sixteenth % 16 === 0
        ? wholeMm
        : sixteenth % 8 === 0
          ? 7.4
          : sixteenth % 4 === 0
            ? 5.6
            : sixteenth % 2 === 0
              ? 4.2
              : 2.7;
    const [inch, beside] = [Math.ceil(along / INCH), (along % INCH) - INCH];
    // The blade's edge lies below it in the picture.
    const [right, down] = [beside + 6.5, 11.5 - across];
    const turned: Point = upsideDown ? [-right, -down] : [right, down];
    const inked = isInked(numerals[inch] ?? '', turned, 7.5);
    return (strokes && off < 0.2 && across < longMm) || inked ? 40 : 190;
  });
  return { gray, placeOf: (inches, acrossMm) => mapped(px, [inches * INCH, acrossMm]) };
}

/**
 * A pin's end, radius 24 px, seen a little from the side, its lower edge before a darker one; its centre mark is lit on one side and shaded on
 * the other, dark all round, or not there.
 */
export function pinPicture({
  mark = 'lit' as 'lit' | 'dark' | 'none',
  markPx = 6.8,
  noise = 2,
  angular = false,
} = {}): {
  readonly gray: Gray;
  readonly centre: Point;
} {
  const centre: Point = [80.3, 74.6];
  const gray = picture(160, 150, noise, (x, y) => {
    const [dx, dy] = [(x - centre[0]) / 0.93, y - centre[1]];
    const rho = angular ? Math.max(Math.abs(dx), Math.abs(dy)) : Math.hypot(dx, dy);
    const lit = dx / Math.max(rho, 0.5);
    if (mark !== 'none' && rho < markPx) return mark === 'lit' ? 165 + 75 * lit : 55 + 40 * lit;
    if (rho < 24) return 165 + 0.3 * dx;
    return 80 + 6 * Math.sin(x / 5) * Math.cos(y / 7);
  });
  return { gray, centre };
}
