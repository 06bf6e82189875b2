/** A push rod before a plain ground, with a tape beside it, drawn by rays through a pinhole camera. Millimetres, the camera at the origin looking along z. */
import type { Gray } from '../../src/vision/gray.ts';
import type { Point } from '../../src/vision/point.ts';

type Mm = readonly [number, number, number];

const [WIDTH, HEIGHT] = [960, 540] as const;
/** The usual one of phones. */
export const FOCAL = 0.78 * WIDTH;
const [LENGTH_MM, SEEN_MM, SQRT_4] = [125, 51, 2] as const;
const FACE: Mm = [-70, 22, 330];

export type RodLook = {
  readonly slantRad?: number;
  readonly radiusMm?: number;
  /** Of 255: the ground, and what each part of the rod's width has, from one edge to the other. */
  readonly ground?: number;
  readonly shades?: readonly number[];
  /** What lies on the rod, mm from the face, at a part of its width: levels in place of its own. */
  readonly paint?: (mm: number, share: number) => number | null;
};

export function rodPicture(look: RodLook = {}) {
  const { slantRad = 0.3, radiusMm = 15.875 / 2, ground = 120, shades = [60, 75, 90, 70, 50], paint } = look;
  const along: Mm = [Math.cos(slantRad), 0.04, Math.sin(slantRad)];
  const onAxis = (mm: number): Mm => [
    FACE[0] + mm * along[0],
    FACE[1] + mm * along[1],
    FACE[2] + mm * along[2],
  ];
  const see = ([x, y, z]: Mm): Point => [WIDTH / 2 + (FOCAL * x) / z, HEIGHT / 2 + (FOCAL * y) / z];
  const axisPx = (mm: number) => see(onAxis(mm));
  const tape = [1, 2, 3, 4, 5].map((inches) => {
    const [x, y, z] = onAxis(25.4 * inches);
    return { placePx: see([x, y - 26, z - 22]), sigmaPx: 0.3, readingMm: 25.4 * inches };
  });
  const values = new Uint8Array(WIDTH * HEIGHT);
  let seed = 11;
  for (let row = 0; row < HEIGHT; row++)
    for (let column = 0; column < WIDTH; column++) {
      let sum = 0;
      for (let part = 0; part < SQRT_4 ** 2; part++) {
        const [u, v] = [column + 0.25 + 0.5 * (part % SQRT_4), row + 0.25 + 0.5 * Math.floor(part / SQRT_4)];
        const hit = onRod([(u - WIDTH / 2) / FOCAL, (v - HEIGHT / 2) / FOCAL, 1], along, radiusMm);
        const own = hit && (paint?.(hit.mm, hit.share) ?? shades[Math.floor(hit.share * shades.length)]);
        sum += own ?? ground;
      }
      seed = (seed * 1103515245 + 12345) % 2147483648;
      values[row * WIDTH + column] = sum / SQRT_4 ** 2 + 2 * (seed / 1073741824 - 1);
    }
  const gray: Gray = { widthPx: WIDTH, heightPx: HEIGHT, values };
  const [facePx, [pinX, pinY]] = [axisPx(0), axisPx(LENGTH_MM)];
  const asked = { facePx, faceSigmaPx: 1.5, pinPx: [pinX, pinY - 6] as const, tape };
  return { gray, axisPx, asked, endPx: see(nearEnd(along, radiusMm)) };
}

/** Where a line of sight meets the rod's near side: from the face along it, and which part of its width; null where it passes it. */
function onRod(
  sight: Mm,
  along: Mm,
  radiusMm: number,
): { readonly mm: number; readonly share: number } | null {
  const square = cross(sight, along);
  const miss = dot(FACE, square) / Math.hypot(...square);
  if (Math.abs(miss) >= radiusMm) return null;
  // The point of the axis nearest to the line of sight, by the plane through that line square to both; from there back towards the camera.
  const side = cross(sight, square);
  const back = (Math.sqrt(radiusMm ** 2 - miss ** 2) * dot(sight, along)) / Math.hypot(...square);
  const mm = -dot(FACE, side) / dot(along, side) - back;
  return mm < 0 || mm > SEEN_MM ? null : { mm, share: (1 - miss / radiusMm) / 2 };
}

/** Where the near side's middle ends at the face. */
function nearEnd(along: Mm, radiusMm: number): Mm {
  const by = dot(FACE, along) / dot(along, along);
  const away: Mm = [FACE[0] - by * along[0], FACE[1] - by * along[1], FACE[2] - by * along[2]];
  const part = radiusMm / Math.hypot(...away);
  return [FACE[0] - part * away[0], FACE[1] - part * away[1], FACE[2] - part * away[2]];
}

const dot = (a: Mm, b: Mm) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Mm, b: Mm): Mm => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
