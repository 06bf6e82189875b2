/**
 * Start rotations from the printed target: its plane's two possible directions, and the rod's direction in it.
 *
 * Model    homography H from the card (u, v) to the unit image plane by least algebraic squares with |H| = 1, both sides centred and
 *          scaled; the card's normal is h1 x h2, away from the camera since u is to the right and v down. Little perspective
 *          leaves its mirror image about the line of sight as likely. The card lies near enough in the plane of motion that its
 *          normal serves as the depth axis, and the chamber axis runs in that plane as the rod does in the picture.
 * Assumes  four corners at least, no distortion, focal length at its prior.
 * Fails    empty where there are fewer, or where they span no plane.
 * Source   Hartley, Zisserman: Multiple View Geometry, 2nd ed., 4.1 (DLT; section from memory).
 */
import { cross, dot, type Mat3, unit, type Vec3 } from '../basics/rotation.ts';
import { symmetricEigen } from '../basics/symmetric-eigen.ts';
import { targetCorner } from '../references/target-card.ts';
import type { Problem, ProblemView } from './problem.ts';
import { normalisedRay } from './start-rays.ts';

/** f, p: rays of the face and of the pin. */
export function cardRotations(problem: Problem, view: ProblemView, f: Vec3, p: Vec3): readonly Mat3[] {
  if (!problem.references.target) return [];
  const pairs = view.marks.flatMap((mark): readonly Pair[] => {
    const corner = mark.kind === 'target-corner' ? targetCorner(mark.marker, mark.corner) : null;
    const [a, b] = normalisedRay(problem.cameras[view.camera] as Problem['cameras'][number], mark);
    return corner ? [[corner.uMm, corner.vMm, a, b]] : [];
  });
  if (pairs.length < 4) return [];
  const [u, v, a, b] = ([0, 1, 2, 3] as const).map((k) => centred(pairs.map((pair) => pair[k])));
  if (!u || !v || !a || !b) return [];
  const h = homography(pairs.map((_p, i) => [u.of[i], v.of[i], a.of[i], b.of[i]] as unknown as Pair));
  // Back to rays: x = mean + spread x', so the third row adds the means to the first two.
  const column = (k: 0 | 1): Vec3 => {
    const [h0, h1, h2] = [h[k] as number, h[3 + k] as number, h[6 + k] as number];
    const scale = k === 0 ? u.spread : v.spread;
    return [(a.spread * h0 + a.mean * h2) / scale, (b.spread * h1 + b.mean * h2) / scale, h2 / scale];
  };
  // H's sign: the card's middle, (0, 0) after centring, is in front of the camera.
  const normal = unit(cross(column(0), column(1)));
  const sight = unit([a.mean, b.mean, 1]);
  const along = 2 * dot(normal, sight);
  const mirrored: Vec3 = [
    along * sight[0] - normal[0],
    along * sight[1] - normal[1],
    along * sight[2] - normal[2],
  ];
  return [normal, mirrored]
    .filter((n) => n.every(Number.isFinite))
    .flatMap((n) => inPlane(n, f, p, problem.hand));
}

type Pair = readonly [u: number, v: number, a: number, b: number];

function centred(values: readonly number[]) {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const spread = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length) || 1;
  return { mean, spread, of: values.map((value) => (value - mean) / spread) };
}

/** Row by row. */
function homography(pairs: readonly Pair[]): readonly number[] {
  const moments = new Array<number>(81).fill(0);
  for (const [u, v, a, b] of pairs) {
    const rows = [
      [u, v, 1, 0, 0, 0, -a * u, -a * v, -a],
      [0, 0, 0, u, v, 1, -b * u, -b * v, -b],
    ];
    for (const row of rows)
      for (let i = 0; i < 9; i++)
        for (let j = 0; j < 9; j++)
          moments[i * 9 + j] = (moments[i * 9 + j] as number) + (row[i] as number) * (row[j] as number);
  }
  return symmetricEigen(moments, 9).vectors[0] as readonly number[];
}

function inPlane(normal: Vec3, f: Vec3, p: Vec3, hand: 1 | -1): readonly Mat3[] {
  const n: Vec3 = normal[2] < 0 ? [-normal[0], -normal[1], -normal[2]] : normal;
  const [atF, atP] = [1 / dot(n, f), 1 / dot(n, p)];
  if (!(atF > 0) || !(atP > 0)) return [];
  const x = unit([p[0] * atP - f[0] * atF, p[1] * atP - f[1] * atF, atP - atF]);
  const z: Vec3 = [hand * n[0], hand * n[1], hand * n[2]];
  const y = cross(z, x);
  return [[x[0], y[0], z[0], x[1], y[1], z[1], x[2], y[2], z[2]]];
}
