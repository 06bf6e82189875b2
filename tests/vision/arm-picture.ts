/** An arm that turns on its axis before a ground that stands still, both with a look of their own, seen through projective maps of one plane. */
import { drawFrom } from '../../src/basics/random.ts';
import type { ArmView } from '../../src/vision/assist-sight.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { type Homography, inverseOf, mapped } from '../../src/vision/homography.ts';
import type { Point } from '../../src/vision/point.ts';

const SIZE_PX = 560;
export const AXIS_MM: Point = [0, 0];
export const ARM_MM = 146;
const HALF_WIDTH_MM = 19;
/** Of a fleck of rust. */
const FLECK_MM = 2.2;

/** 1.7 px to the millimetre, somewhat from the side; shiftPx: where the second picture was taken. */
export const planePx = (shiftPx: number): Homography => [
  1.7,
  0.05,
  270 + shiftPx,
  -0.04,
  1.62,
  470,
  1e-4,
  -6e-5,
  1,
];

/** armRad: from up; of the arm, which leads from the axis to the pin. */
export const pinAt = (armRad: number): Point => [ARM_MM * Math.sin(armRad), -ARM_MM * Math.cos(armRad)];

export function armPicture(armRad: number, shiftPx: number): { gray: Gray; view: ArmView } {
  const armPx = planePx(shiftPx);
  const back = inverseOf(armPx);
  const [c, s] = [Math.cos(armRad), Math.sin(armRad)];
  const values = new Uint8Array(SIZE_PX * SIZE_PX);
  for (let row = 0; row < SIZE_PX; row++)
    for (let column = 0; column < SIZE_PX; column++) {
      const [x, y] = mapped(back, [column + 0.5, row + 0.5]);
      const [across, along] = [c * x + s * y, s * x - c * y];
      const isArm = Math.abs(across) < HALF_WIDTH_MM && along > -20 && along < ARM_MM + 15;
      values[row * SIZE_PX + column] = isArm ? 70 + flecks(across, along, 1) : 120 + flecks(x, y, 2);
    }
  const gray: Gray = { widthPx: SIZE_PX, heightPx: SIZE_PX, values };
  return { gray, view: { armPx, endPx: armPx, pinMm: pinAt(armRad) } };
}

/** Between random levels at the corners of a grid, smoothly. */
function flecks(x: number, y: number, seed: number): number {
  const [u, v] = [x / FLECK_MM, y / FLECK_MM];
  const [i, j] = [Math.floor(u), Math.floor(v)];
  const [fu, fv] = [smooth(u - i), smooth(v - j)];
  const at = (di: number, dj: number) => level(i + di, j + dj, seed);
  return (1 - fv) * ((1 - fu) * at(0, 0) + fu * at(1, 0)) + fv * ((1 - fu) * at(0, 1) + fu * at(1, 1));
}

const smooth = (t: number) => t * t * (3 - 2 * t);

const known = new Map<string, number>();
function level(i: number, j: number, seed: number): number {
  const key = `${i} ${j} ${seed}`;
  let value = known.get(key);
  if (value === undefined) {
    value = drawFrom(1 + seed + 7919 * (i + 500) + 104_729 * (j + 500)).uniform(0, 80);
    known.set(key, value);
  }
  return value;
}
