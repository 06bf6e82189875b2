/**
 * The two directions that the axis of a circle can have, from points of its picture.
 *
 * Model    conic through the points, x^T Q x = 0 with x = (a, b, 1) on the unit image plane, by least algebraic squares with
 *          |coefficients| = 1 after centring and scaling; with eigenvalues l1 >= l2 > 0 > l3 of Q (sign chosen so) the axis is
 *          +-sqrt((l1 - l2) / (l1 - l3)) e1 +- sqrt((l2 - l3) / (l1 - l3)) e3. The two differ by the mirrored tilt.
 * Assumes  at least five points, no distortion. A start value only: the algebraic fit is biased for short arcs.
 * Fails    empty where the conic is no ellipse (short arc, rim seen edge on).
 * Source   Kanatani, Liu: 3D interpretation of conics and orthogonality, 1993 (from memory).
 */
import type { Vec3 } from '../basics/rotation.ts';
import { symmetricEigen } from '../basics/symmetric-eigen.ts';

export function circleNormals(rays: readonly Vec3[]): readonly Vec3[] {
  if (rays.length < 5) return [];
  const { values, vectors } = symmetricEigen(conicThrough(rays), 3);
  const positive = values.filter((value) => value > 0).length;
  if (positive !== 1 && positive !== 2) return [];
  // Of Q and -Q take the one with two positive eigenvalues; values come in ascending order.
  const order = positive === 2 ? [2, 1, 0] : [0, 1, 2];
  const [l1, l2, l3] = order.map((i) => (values[i] as number) * (positive === 2 ? 1 : -1)) as [
    number,
    number,
    number,
  ];
  const [e1, e3] = [vectors[order[0] as number], vectors[order[2] as number]] as [number[], number[]];
  const c1 = Math.sqrt(Math.max(0, (l1 - l2) / (l1 - l3)));
  const c3 = Math.sqrt(Math.max(0, (l2 - l3) / (l1 - l3)));
  const combine = (s: number): Vec3 => [
    s * c1 * (e1[0] as number) + c3 * (e3[0] as number),
    s * c1 * (e1[1] as number) + c3 * (e3[1] as number),
    s * c1 * (e1[2] as number) + c3 * (e3[2] as number),
  ];
  const normals = [combine(1), combine(-1)];
  return normals.every((n) => n.every(Number.isFinite)) ? normals : [];
}

/** Q, row by row. */
function conicThrough(rays: readonly Vec3[]): readonly number[] {
  const n = rays.length;
  const ma = rays.reduce((sum, r) => sum + r[0], 0) / n;
  const mb = rays.reduce((sum, r) => sum + r[1], 0) / n;
  const spread = Math.sqrt(rays.reduce((sum, r) => sum + (r[0] - ma) ** 2 + (r[1] - mb) ** 2, 0) / n) || 1;
  const moments = new Array<number>(36).fill(0);
  for (const ray of rays) {
    const [a, b] = [(ray[0] - ma) / spread, (ray[1] - mb) / spread];
    const row = [a * a, a * b, b * b, a, b, 1];
    for (let i = 0; i < 6; i++)
      for (let j = 0; j < 6; j++)
        moments[i * 6 + j] = (moments[i * 6 + j] as number) + (row[i] as number) * (row[j] as number);
  }
  const [A, B, C, D, E, F] = symmetricEigen(moments, 6).vectors[0] as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const q = [A, B / 2, D / 2, B / 2, C, E / 2, D / 2, E / 2, F];
  // x' = T x with T = [1/s 0 -ma/s; 0 1/s -mb/s; 0 0 1]: Q = T^T Q' T.
  const t = [1 / spread, 0, -ma / spread, 0, 1 / spread, -mb / spread, 0, 0, 1];
  return product(product([t[0], t[3], t[6], t[1], t[4], t[7], t[2], t[5], t[8]] as number[], q), t);
}

function product(a: readonly number[], b: readonly number[]): number[] {
  return Array.from({ length: 9 }, (_, i) => {
    const [row, column] = [Math.floor(i / 3), i % 3];
    return [0, 1, 2].reduce((sum, k) => sum + (a[row * 3 + k] as number) * (b[k * 3 + column] as number), 0);
  });
}
