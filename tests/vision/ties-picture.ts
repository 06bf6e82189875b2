/**
 * Two pictures of textured boards at several distances, one of which has moved between them, made without any code of the search:
 * a pinhole camera with radial distortion looks along rays at boards, then blur, light and noise follow.
 */
import { drawFrom } from '../../src/basics/random.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { specksAt } from './specks.ts';

type P2 = readonly [number, number];
type P3 = readonly [number, number, number];

/** A board at a distance, square to the first camera's axis, between these places (mm). */
type Board = {
  readonly z: number;
  readonly x: P2;
  readonly y: P2;
  readonly seed: number;
  /** Between the pictures. */
  readonly moved: P2;
};

const WIDTH_PX = 1200;
const HEIGHT_PX = 900;
export const FOCAL_PX = 950;
const K1 = 0.01;
const SPECK_MM = 5;

/** The moving one hangs before the others. */
const BOARDS: readonly Board[] = [
  { z: 560, x: [-60, 70], y: [-50, 60], seed: 5, moved: [38, 9] },
  { z: 700, x: [-330, -90], y: [-200, 220], seed: 1, moved: [0, 0] },
  { z: 720, x: [110, 320], y: [-230, 40], seed: 2, moved: [0, 0] },
  { z: 850, x: [40, 420], y: [80, 330], seed: 3, moved: [0, 0] },
  { z: 1000, x: [-900, 900], y: [-700, 700], seed: 4, moved: [0, 0] },
];

export type Pose = { readonly eye: P3; readonly turnRad: P3 };
export const FIRST: Pose = { eye: [0, 0, 0], turnRad: [0, 0, 0] };
export const SECOND: Pose = { eye: [45, -38, 20], turnRad: [0.05, 0.06, 0.07] };

export type TiesPicture = {
  readonly gray: Gray;
  /** Whether what is seen there has moved. */
  readonly moves: (place: P2) => boolean;
  /** What is seen there, mm. */
  readonly seen: (place: P2) => P3;
};

export function tiesPicture(pose: Pose, later: boolean, noise: number, seed: number): TiesPicture {
  const hit = looking(pose, later);
  const light = new Float64Array(WIDTH_PX * HEIGHT_PX);
  for (let row = 0; row < HEIGHT_PX; row++)
    for (let column = 0; column < WIDTH_PX; column++) {
      let sum = 0;
      // Specks are larger than five pixels: only the boards' rims would need more of them.
      for (const part of [0.25, 0.75]) sum += hit([column + part, row + part]).level();
      light[row * WIDTH_PX + column] = sum / 2;
    }
  const draw = drawFrom(seed);
  const values = Uint8Array.from(light, (level) =>
    Math.max(0, Math.min(255, Math.round(30 + 180 * level + draw.normal(0, noise)))),
  );
  return {
    gray: { widthPx: WIDTH_PX, heightPx: HEIGHT_PX, values },
    moves: (place) => hit(place).board.moved[0] !== 0,
    seen: (place) => hit(place).at,
  };
}

/** Where a camera shows a place of the scene. */
export function shownAt(pose: Pose, at: P3): P2 {
  const [x, y, z] = turned(
    pose.turnRad,
    [at[0] - pose.eye[0], at[1] - pose.eye[1], at[2] - pose.eye[2]],
    false,
  );
  const [a, b] = [x / z, y / z];
  const bent = 1 + K1 * (a * a + b * b);
  return [WIDTH_PX / 2 + FOCAL_PX * a * bent, HEIGHT_PX / 2 + FOCAL_PX * b * bent];
}

function looking(pose: Pose, later: boolean) {
  const axes = ([[1, 0, 0] as const, [0, 1, 0] as const, [0, 0, 1] as const] as const).map((axis) =>
    turned(pose.turnRad, axis, true),
  ) as [P3, P3, P3];
  const [ex, ey, ez] = pose.eye;
  return ([xPx, yPx]: P2) => {
    const [a, b] = straight((xPx - WIDTH_PX / 2) / FOCAL_PX, (yPx - HEIGHT_PX / 2) / FOCAL_PX);
    const dx = a * axes[0][0] + b * axes[1][0] + axes[2][0];
    const dy = a * axes[0][1] + b * axes[1][1] + axes[2][1];
    const dz = a * axes[0][2] + b * axes[1][2] + axes[2][2];
    for (const board of BOARDS) {
      const reach = (board.z - ez) / dz;
      const x = ex + reach * dx;
      const y = ey + reach * dy;
      const u = later ? x - board.moved[0] : x;
      const v = later ? y - board.moved[1] : y;
      if (u < board.x[0] || u > board.x[1] || v < board.y[0] || v > board.y[1]) continue;
      return { board, at: [x, y, board.z] as P3, level: () => texture(board.seed, u, v) };
    }
    throw new Error('the last board fills the picture');
  };
}

/** Distortion taken out by repeated substitution. */
function straight(a: number, b: number): P2 {
  let x = a;
  let y = b;
  for (let i = 0; i < 5; i++) {
    const bent = 1 + K1 * (x * x + y * y);
    x = a / bent;
    y = b / bent;
  }
  return [x, y];
}

/** About x, then y, then z; back in the other order. */
function turned([ax, ay, az]: P3, [x, y, z]: P3, back: boolean): P3 {
  const about = (k: 0 | 1 | 2, v: P3, angle: number): P3 => {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    if (k === 0) return [v[0], c * v[1] - s * v[2], s * v[1] + c * v[2]];
    if (k === 1) return [c * v[0] + s * v[2], v[1], c * v[2] - s * v[0]];
    return [c * v[0] - s * v[1], s * v[0] + c * v[1], v[2]];
  };
  return back
    ? about(0, about(1, about(2, [x, y, z], -az), -ay), -ax)
    : about(2, about(1, about(0, [x, y, z], ax), ay), az);
}

/** Specks of several sizes, smooth between the knots of a lattice. */
function texture(seed: number, u: number, v: number): number {
  const specks = (size: number) => specksAt(seed + size, u / size, v / size);
  return (specks(SPECK_MM) + specks(3 * SPECK_MM) + 0.7 * specks(9 * SPECK_MM)) / 2.7;
}
