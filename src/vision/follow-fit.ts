/**
 * Where a patch of the seed picture lies in another picture, to a small part of a pixel, with its uncertainty.
 *
 * Model    I(p + A d) = a T(d) + b over the patch's circle (follow-residuals.ts); each step composes the inverse of what T would need
 * Assumes  a start within about a fifth of the radius
 * Fails    null where it leaves the picture, runs away or does not settle
 * Source   as follow-patch.ts
 */
import type { PatchMap } from './fit-patch.ts';
import { cutInto } from './follow-cutout.ts';
import type { Patch } from './follow-patch.ts';
import { addUp, type FitRoom, isWithin, type Light, lightOf, quality } from './follow-residuals.ts';
import { SHAPE } from './follow-solver.ts';
import type { Gray } from './gray.ts';
import { lengthOf } from './point.ts';

export type FollowFit = PatchMap & {
  readonly sigmaPx: number;
  /** -1 to 1: correlation over the whole circle. */
  readonly likeness: number;
  /** 0 to 1: of the circle, what counted. */
  readonly share: number;
};

const MOST_STEPS = 14;
/** Shift first, shape after: what is some pixels off would look like another shape. */
const MOST_SHIFT_STEPS = 5;
const SHIFTED_PX = 0.3;
const SETTLED_PX = 0.02;
const MOST_CUTS = 4;

export function fitFollowed(patch: Patch, gray: Gray, start: PatchMap, room: FitRoom): FollowFit | null {
  const { cutout, map, step } = room;
  let spread = 0;
  let shiftsLeft = MOST_SHIFT_STEPS;
  room.robust.fill(1);
  map.set(start.place);
  map.set(start.steps, 2);
  if (!cutInto(cutout, gray, start.place)) return null;
  for (let round = 0, cuts = 0; round < MOST_STEPS; round++) {
    if (!isWithin(patch, room)) {
      if (++cuts > MOST_CUTS || !cutInto(cutout, gray, [map[0] as number, map[1] as number])) return null;
      if (!isWithin(patch, room)) return null;
    }
    const light = lightOf(patch, room);
    if (!light) return null;
    spread = addUp(patch, room, light, spread);
    if (shiftsLeft > 0) shiftStep(patch, room);
    else shapeStep(patch, room, start.steps);
    const shapePx = 0.25 * lengthOf(lengthOf(at(step, 2), at(step, 3)), lengthOf(at(step, 4), at(step, 5)));
    const movedPx = compose(room, patch.radiusPx);
    if (!(movedPx + shapePx < patch.radiusPx)) return null;
    if (shiftsLeft > 0) shiftsLeft = movedPx < SHIFTED_PX * patch.stepPx ? 0 : shiftsLeft - 1;
    else if (movedPx + shapePx < SETTLED_PX * patch.stepPx) return fitOf(patch, room, light);
  }
  return null;
}

function fitOf(patch: Patch, room: FitRoom, light: Light): FollowFit {
  const { map } = room;
  const [x, y, xx, xy, yx, yy] = [at(map, 0), at(map, 1), at(map, 2), at(map, 3), at(map, 4), at(map, 5)];
  const { sigmaPx, likeness, share } = quality(patch, room, light, xx * yy - xy * yx);
  return { place: [x, y], steps: [xx, xy, yx, yy], sigmaPx, likeness, share };
}

function shiftStep({ solver }: Patch, { sums, step }: FitRoom): void {
  const [xx, xy, yy] = solver.shiftCofactors;
  const gx = at(sums, 0);
  const gy = at(sums, 1);
  step.fill(0);
  step[0] = xx * gx + xy * gy;
  step[1] = xy * gx + yy * gy;
}

/** Held near the shape it started with. */
function shapeStep(
  { solver: { cofactors, shapeHold }, radiusPx }: Patch,
  { sums, map, step }: FitRoom,
  [sxx, sxy, syx, syy]: PatchMap['steps'],
): void {
  const hold = (shapeHold * radiusPx) / (sxx * syy - sxy * syx);
  const xx = at(map, 2);
  const xy = at(map, 3);
  const yx = at(map, 4);
  const yy = at(map, 5);
  sums[2] = at(sums, 2) + hold * (syy * xx - sxy * yx) - shapeHold * radiusPx;
  sums[3] = at(sums, 3) + hold * (syy * xy - sxy * yy);
  sums[4] = at(sums, 4) + hold * (sxx * yx - syx * xx);
  sums[5] = at(sums, 5) + hold * (sxx * yy - syx * xy) - shapeHold * radiusPx;
  for (let k = 0; k < SHAPE; k++) {
    let sum = 0;
    for (let j = 0; j < SHAPE; j++) sum += at(cofactors, k * SHAPE + j) * at(sums, j);
    step[k] = sum;
  }
}

/** The patch would need (I + M) d + t: the map takes its inverse first. How far its place moved, px; NaN where it runs away. */
function compose({ map, step }: FitRoom, radiusPx: number): number {
  const x = at(map, 0);
  const y = at(map, 1);
  const xx = at(map, 2);
  const xy = at(map, 3);
  const yx = at(map, 4);
  const yy = at(map, 5);
  const tx = at(step, 0);
  const ty = at(step, 1);
  const mxx = 1 + at(step, 2) / radiusPx;
  const mxy = at(step, 3) / radiusPx;
  const myx = at(step, 4) / radiusPx;
  const myy = 1 + at(step, 5) / radiusPx;
  const size = mxx * myy - mxy * myx;
  if (!(size > 0.25 && size < 4)) return Number.NaN;
  const axx = (xx * myy - xy * myx) / size;
  const axy = (xy * mxx - xx * mxy) / size;
  const ayx = (yx * myy - yy * myx) / size;
  const ayy = (yy * mxx - yx * mxy) / size;
  map[0] = x - axx * tx - axy * ty;
  map[1] = y - ayx * tx - ayy * ty;
  map[2] = axx;
  map[3] = axy;
  map[4] = ayx;
  map[5] = ayy;
  return lengthOf(map[0] - x, map[1] - y);
}

const at = (list: Float64Array, i: number) => list[i] as number;
