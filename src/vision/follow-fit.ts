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
import { addUp, type FitRoom, isWithin, lightOf, quality } from './follow-residuals.ts';
import { SHAPE } from './follow-solver.ts';
import type { Gray } from './gray.ts';

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
  let map = start;
  let spread = 0;
  let shiftsLeft = MOST_SHIFT_STEPS;
  room.robust.fill(1);
  if (!cutInto(room.cutout, gray, start.place)) return null;
  for (let [round, cuts] = [0, 0]; round < MOST_STEPS; round++) {
    if (!isWithin(room.cutout, patch, map)) {
      if (++cuts > MOST_CUTS || !cutInto(room.cutout, gray, map.place)) return null;
      if (!isWithin(room.cutout, patch, map)) return null;
    }
    const light = lightOf(patch, room, map);
    if (!light) return null;
    spread = addUp(patch, room, light, spread);
    const step = shiftsLeft > 0 ? shiftStep(patch, room) : shapeStep(patch, room, map.steps, start.steps);
    const next = composed(map, step, patch.radiusPx);
    if (!next) return null;
    const movedPx = Math.hypot(next.place[0] - map.place[0], next.place[1] - map.place[1]);
    const shapePx = 0.25 * Math.hypot(step[2], step[3], step[4], step[5]);
    map = next;
    if (!(movedPx + shapePx < patch.radiusPx)) return null;
    if (shiftsLeft > 0) shiftsLeft = movedPx < SHIFTED_PX * patch.stepPx ? 0 : shiftsLeft - 1;
    else if (movedPx + shapePx < SETTLED_PX * patch.stepPx) {
      const size = map.steps[0] * map.steps[3] - map.steps[1] * map.steps[2];
      return { ...map, ...quality(patch, room, light, size) };
    }
  }
  return null;
}

type Step = readonly [number, number, number, number, number, number];

function shiftStep({ solver }: Patch, { sums }: FitRoom): Step {
  const [xx, xy, yy] = solver.shiftCofactors;
  const [gx, gy] = [sums[0] as number, sums[1] as number];
  return [xx * gx + xy * gy, xy * gx + yy * gy, 0, 0, 0, 0];
}

/** Held near the shape it started with. */
function shapeStep(
  { solver: { cofactors, shapeHold }, radiusPx }: Patch,
  { sums }: FitRoom,
  [xx, xy, yx, yy]: PatchMap['steps'],
  [sxx, sxy, syx, syy]: PatchMap['steps'],
): Step {
  const hold = (shapeHold * radiusPx) / (sxx * syy - sxy * syx);
  sums[2] = (sums[2] as number) + hold * (syy * xx - sxy * yx) - shapeHold * radiusPx;
  sums[3] = (sums[3] as number) + hold * (syy * xy - sxy * yy);
  sums[4] = (sums[4] as number) + hold * (sxx * yx - syx * xx);
  sums[5] = (sums[5] as number) + hold * (sxx * yy - syx * xy) - shapeHold * radiusPx;
  const row = (k: number) => {
    let sum = 0;
    for (let j = 0; j < SHAPE; j++) sum += (cofactors[k * SHAPE + j] as number) * (sums[j] as number);
    return sum;
  };
  return [row(0), row(1), row(2), row(3), row(4), row(5)];
}

/** The patch would need (I + M) d + t: the map takes its inverse first. */
function composed({ place, steps }: PatchMap, step: Step, radiusPx: number): PatchMap | null {
  const [xx, xy, yx, yy] = steps;
  const [mxx, mxy] = [1 + step[2] / radiusPx, step[3] / radiusPx];
  const [myx, myy] = [step[4] / radiusPx, 1 + step[5] / radiusPx];
  const size = mxx * myy - mxy * myx;
  if (!(size > 0.25 && size < 4)) return null;
  const [axx, axy] = [(xx * myy - xy * myx) / size, (xy * mxx - xx * mxy) / size];
  const [ayx, ayy] = [(yx * myy - yy * myx) / size, (yy * mxx - yx * mxy) / size];
  const [tx, ty] = [step[0], step[1]];
  return {
    place: [place[0] - axx * tx - axy * ty, place[1] - ayx * tx - ayy * ty],
    steps: [axx, axy, ayx, ayy],
  };
}
