/**
 * The edge along a ring's outline, to a part of a pixel: one place for each piece of the way.
 *
 * Model    across the outline, at rays along a piece, brightness averaged over a few pixels along, then over the rays: what is no edge along
 *          it averages out; the derivative of a Gaussian across; the steepest place within reach, whichever its sign
 * Assumes  the outline known to lie within reach, and nearly along the edge for a piece of it
 * Fails    fewer places, or none
 */
import { type Axis, type Outline, type Ring, ringAt } from './coaxial.ts';
import type { Gray } from './gray.ts';
import { isInPicture, levelAt } from './level-at.ts';

/** offPx: from the outline, outwards. */
export type EdgePlace = {
  readonly w: number;
  readonly outline: Outline;
  readonly offPx: number;
  readonly steep: number;
};
/** How far to look to either side of the outline, and of the nearest point along it. */
export type Reach = { readonly reachPx: number; readonly endRad: number };

export const PIECES = 24;
const RAYS = 7;
/** Of 255 levels a pixel. */
const LEAST_STEEP = 0.8;
/** A side seen more from along than this has no edge of its own. */
const LEAST_FACING = 0.12;
const STEP_PX = 0.5;
const WIDTH_PX = 1.1;
const ALONG_PX = [-1, 0, 1] as const;
const KERNEL_HALF = Math.ceil((3 * WIDTH_PX) / STEP_PX);
const KERNEL = derivative();

/** Of levels STEP_PX apart: their slope a pixel. */
function derivative(): Float64Array {
  const raw = Float64Array.from({ length: 2 * KERNEL_HALF + 1 }, (_, i) => {
    const x = ((i - KERNEL_HALF) * STEP_PX) / WIDTH_PX;
    return x * Math.exp((-x * x) / 2);
  });
  const sum = raw.reduce((total, v, i) => total + v * (i - KERNEL_HALF) * STEP_PX, 0);
  return raw.map((v) => v / sum);
}

export function edgesAlong(
  gray: Gray,
  axis: Axis,
  ring: Ring,
  { reachPx, endRad }: Reach,
): readonly EdgePlace[] {
  const half = Math.ceil(reachPx / STEP_PX) + 1;
  return Array.from({ length: PIECES }, (_, piece): EdgePlace | null => {
    const at = (ray: number) => endRad * ((2 * (piece * RAYS + ray + 0.5)) / (PIECES * RAYS) - 1);
    const rays = Array.from({ length: RAYS }, (__, ray) => ringAt(axis, ring, at(ray)));
    const isSeen = rays.every(
      ({ at: [x, y], facing }) => facing > LEAST_FACING && isInPicture(gray, x, y, reachPx + 6),
    );
    const found = isSeen ? steepest(steepAcross(gray, rays, half), half) : null;
    if (!found) return null;
    const w = at((RAYS - 1) / 2);
    return { w, outline: ringAt(axis, ring, w), ...found };
  }).filter((place) => place !== null);
}

function steepAcross(gray: Gray, rays: readonly Outline[], half: number): Float64Array {
  const reach = half + KERNEL_HALF;
  const level = new Float64Array(2 * reach + 1);
  for (const {
    at: [x, y],
    normal: [nx, ny],
  } of rays)
    for (let i = 0; i < level.length; i++) {
      const d = (i - reach) * STEP_PX;
      for (const along of ALONG_PX)
        level[i] = (level[i] as number) + levelAt(gray, x + d * nx - along * ny, y + d * ny + along * nx);
    }
  const steep = new Float64Array(2 * half + 1);
  for (let i = 0; i < steep.length; i++) {
    let sum = 0;
    for (let k = 0; k < KERNEL.length; k++) sum += (KERNEL[k] as number) * (level[i + k] as number);
    steep[i] = sum / (ALONG_PX.length * rays.length);
  }
  return steep;
}

function steepest(
  steep: Float64Array,
  half: number,
): { readonly offPx: number; readonly steep: number } | null {
  let found: { offPx: number; steep: number } | null = null;
  for (let i = 1; i < steep.length - 1; i++) {
    const sign = Math.sign(steep[i] as number);
    const b = sign * (steep[i] as number);
    if (b < (found?.steep ?? LEAST_STEEP)) continue;
    const [a, c] = [sign * (steep[i - 1] as number), sign * (steep[i + 1] as number)];
    if (b < a || b <= c) continue;
    found = { offPx: (i - half + (a - c) / (2 * (a - 2 * b + c) || -1)) * STEP_PX, steep: b };
  }
  return found;
}
