/**
 * The projective map between two planes.
 *
 * Model    x = (h0 u + h1 v + h2) / w, y = (h3 u + h4 v + h5) / w, w = h6 u + h7 v + 1
 *          from point pairs by linear least squares of x w = ..., y w = ..., both planes centred and scaled first
 * Assumes  the origin of the centred first plane is not mapped to infinity
 * Fails    null where the points do not hold it: fewer than four, or three of four on one line
 * Source   Hartley, Zisserman: Multiple View Geometry, 2nd ed., 4.1 and 4.4 (from memory)
 */
import { choleskyFactor, choleskySolve } from '../basics/symmetric.ts';
import type { Point } from './point.ts';

/** Row by row, the last of the nine is free. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

export function mapped(h: Homography, [u, v]: Point): Point {
  const w = h[6] * u + h[7] * v + h[8];
  return [(h[0] * u + h[1] * v + h[2]) / w, (h[3] * u + h[4] * v + h[5]) / w];
}

export function homographyOf(from: readonly Point[], to: readonly Point[]): Homography | null {
  const [a, b] = [frameOf(from), frameOf(to)];
  const n = 8;
  const normal = new Float64Array(n * n);
  const right = new Float64Array(n);
  from.forEach((point, index) => {
    const [u, v] = inFrame(a, point);
    const [x, y] = inFrame(b, to[index] as Point);
    addRow(normal, right, [u, v, 1, 0, 0, 0, -x * u, -x * v], x);
    addRow(normal, right, [0, 0, 0, u, v, 1, -y * u, -y * v], y);
  });
  const lower = choleskyFactor(normal, n);
  if (!lower) return null;
  const h = choleskySolve(lower, n, right);
  return unframed([...h, 1] as unknown as Homography, a, b);
}

function addRow(normal: Float64Array, right: Float64Array, row: readonly number[], value: number): void {
  const n = row.length;
  row.forEach((ri, i) => {
    right[i] = (right[i] as number) + ri * value;
    row.forEach((rj, j) => {
      normal[i * n + j] = (normal[i * n + j] as number) + ri * rj;
    });
  });
}

type Frame = { readonly middle: Point; readonly scale: number };

function frameOf(points: readonly Point[]): Frame {
  const mean = (axis: 0 | 1) => points.reduce((sum, point) => sum + point[axis], 0) / points.length;
  const middle: Point = [mean(0), mean(1)];
  const reach = points.reduce((sum, [x, y]) => sum + Math.hypot(x - middle[0], y - middle[1]), 0);
  return { middle, scale: reach / points.length };
}

const inFrame = ({ middle, scale }: Frame, [x, y]: Point): Point => [
  (x - middle[0]) / scale,
  (y - middle[1]) / scale,
];

/** T_b^-1 H T_a. */
function unframed(h: Homography, a: Frame, b: Frame): Homography {
  const right = times(h, [
    1 / a.scale,
    0,
    -a.middle[0] / a.scale,
    0,
    1 / a.scale,
    -a.middle[1] / a.scale,
    0,
    0,
    1,
  ]);
  return times([b.scale, 0, b.middle[0], 0, b.scale, b.middle[1], 0, 0, 1], right);
}

function times(a: Homography, b: Homography): Homography {
  return Array.from({ length: 9 }, (_, at) => {
    const [row, column] = [Math.floor(at / 3), at % 3];
    return [0, 1, 2].reduce((sum, k) => sum + (a[3 * row + k] as number) * (b[3 * k + column] as number), 0);
  }) as unknown as Homography;
}

/** The map back, up to scale: the adjugate. */
export function inverseOf([a, b, c, d, e, f, g, h, i]: Homography): Homography {
  return [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
}
