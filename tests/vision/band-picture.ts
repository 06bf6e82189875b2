/** A chamber with its clamp band, seen from the rod's side: circles about one axis, drawn by rays through a pinhole camera. */
import type { Gray } from '../../src/vision/gray.ts';
import type { Point } from '../../src/vision/point.ts';

type Ring = { readonly behindMm: number; readonly radiusMm: number };
export const RIM: Ring = { behindMm: 54, radiusMm: 102.8 };

/** Of the axis from the picture’s plane: its far end away from the camera. */
const SEEN_RAD = -0.32;
const [WIDTH, HEIGHT, FOCAL] = [760, 640, 900] as const;
const FAR_MM = 640;

export function bandPicture({ bandLevel = 170, noise = 2 } = {}) {
  const [c, s] = [Math.cos(SEEN_RAD), Math.sin(SEEN_RAD)];
  /** behind: along the axis away from the rod; x right, z away from the camera. */
  const see = (behind: number, y: number, z: number): Point => {
    const [x, depth] = [c * behind + s * z, -s * behind + c * z + FAR_MM];
    return [300 + (FOCAL * x) / depth, HEIGHT / 2 + (FOCAL * y) / depth];
  };
  const rim = (angle: number, { behindMm, radiusMm }: Ring = RIM) =>
    see(behindMm, radiusMm * Math.sin(angle), -radiusMm * Math.cos(angle));
  const values = new Uint8Array(WIDTH * HEIGHT);
  let seed = 7;
  for (let row = 0; row < HEIGHT; row++)
    for (let column = 0; column < WIDTH; column++) {
      let sum = 0;
      for (const [dx, dy] of [
        [0.25, 0.25],
        [0.75, 0.25],
        [0.25, 0.75],
        [0.75, 0.75],
      ] as const)
        sum += levelOf((column + dx - 300) / FOCAL, (row + dy - HEIGHT / 2) / FOCAL, bandLevel);
      seed = (seed * 1103515245 + 12345) % 2147483648;
      values[row * WIDTH + column] = Math.max(0, Math.min(255, sum / 4 + noise * (seed / 1073741824 - 1)));
    }
  const gray: Gray = { widthPx: WIDTH, heightPx: HEIGHT, values };
  return { gray, rim, facePx: see(0, 0, -8), pinPx: see(-125, 0, -20) };
}

/** From near to far along the axis; each a cylinder from its ring to the next, its flat end towards the rod. */
const SOLIDS = [
  { from: 0, to: 50, radius: 84, side: 90, end: 60 },
  { from: 54, to: 71, radius: RIM.radiusMm, side: 0, end: 110 },
  { from: 71, to: 112, radius: 94, side: 70, end: 50 },
] as const;

/** What the ray through (u, v, 1) meets first. */
function levelOf(u: number, v: number, bandLevel: number): number {
  const [c, s] = [Math.cos(SEEN_RAD), Math.sin(SEEN_RAD)];
  // Ray in the chamber's frame: behind, y, z.
  const origin = [s * FAR_MM, 0, -c * FAR_MM] as const;
  const way = [c * u - s, v, s * u + c] as const;
  let [nearest, level] = [Number.POSITIVE_INFINITY, 130];
  for (const { from, to, radius, side, end } of SOLIDS) {
    const t = (from - origin[0]) / way[0];
    if (t > 0 && t < nearest && Math.hypot(origin[1] + t * way[1], origin[2] + t * way[2]) < radius)
      [nearest, level] = [t, end];
    const a = way[1] ** 2 + way[2] ** 2;
    const b = origin[1] * way[1] + origin[2] * way[2];
    const root = b * b - a * (origin[1] ** 2 + origin[2] ** 2 - radius ** 2);
    if (root < 0) continue;
    const entry = (-b - Math.sqrt(root)) / a;
    const at = origin[0] + entry * way[0];
    if (entry > 0 && entry < nearest && at >= from && at <= to) [nearest, level] = [entry, side || bandLevel];
  }
  return level;
}
