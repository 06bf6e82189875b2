/**
 * The axis and the rings about it that go best through the edges seen along them, all together.
 *
 * Model    unknown: foot (2), turn and tilt of the axis, log f with a prior, the first ring's radius (its place is the foot), place and radius
 *          of each other; of a band's two rims the sizes are the same to U_ALIKE. Distances of the edges along the outlines' normals; least
 *          squares, one Gauss-Newton step (edges are looked for anew from there), derivatives by differences; weights: steepness,
 *          Tukey's biweight (biweight.ts) of a ring's own spread, over that spread squared
 *          covariance A^-1 B A^-1, B from the squares of what each edge is off, and LONG_PX of what is off alike along a piece
 * Fails    null where the edges leave something open
 */
import { choleskyFactor, choleskySolve, inverseFromLower, lowerInverse } from '../basics/symmetric.ts';
import { biweight, spreadOf } from './biweight.ts';
import { type Axis, type Ring, ringAt } from './coaxial.ts';
import type { EdgePlace } from './ring-edges.ts';

/** The rim towards the rod, the other rim, and where it is known the flank's end. */
export type Coaxial = {
  readonly axis: Axis;
  readonly rings: readonly [rim: Ring, other: Ring, flank?: Ring];
};
export type CoaxialFit = {
  readonly coaxial: Coaxial;
  /** Of each ring, each of its edges: how far off, outwards. */
  readonly residuals: readonly (readonly number[])[];
  readonly spreads: readonly number[];
  /** Of the unknowns in the order of `changed`. */
  readonly covariance: Float64Array;
};
type Row = { readonly by: Float64Array; readonly offPx: number; readonly steep: number };

const GLOBAL = 5;
const LOG_FOCAL = 4;
/** What phones have, from memory: 24 to 28 mm as of a 36 mm film, seldom cut. */
export const U_LOG_FOCAL = 0.15;
/** Both rims of a band are bent to one size; over the radius. */
export const U_ALIKE = 0.008;
const ROUNDS = 4;
const LEAST_SPREAD_PX = 0.12;
const CLEAR_STEEP = 6;
/** What a piece may be off by beside its scatter: rust, shading, chamfer. Measured: docs/assists.md. */
const LONG_PX = 0.32;

export const ringsOf = ({ rings: [rim, other, flank] }: Coaxial): readonly Ring[] =>
  flank ? [rim, other, flank] : [rim, other];
export const unknownsOf = (coaxial: Coaxial) => GLOBAL + 2 * ringsOf(coaxial).length - 1;
export const stepOf = (k: number) => (k === 2 || k === 3 ? 1e-4 : k === LOG_FOCAL ? 1e-2 : 0.05);
const ringOf = (k: number) => Math.floor((k - GLOBAL + 1) / 2);

/** The k-th unknown changed: foot, turn, tilt, log f, the first radius, then place and radius of each other. */
export function changed({ axis, rings }: Coaxial, k: number, by: number): Coaxial {
  const [x, y] = axis.foot;
  const to = (more: Partial<Axis>) => ({ axis: { ...axis, ...more }, rings });
  if (k === 0) return to({ foot: [x + by, y] });
  if (k === 1) return to({ foot: [x, y + by] });
  if (k === 2) return to({ turnRad: axis.turnRad + by });
  if (k === 3) return to({ tiltRad: axis.tiltRad + by });
  if (k === LOG_FOCAL) return to({ focalPx: axis.focalPx * Math.exp(by) });
  const isRadius = (k - GLOBAL) % 2 === 0;
  const change = ({ behind, radius }: Ring): Ring =>
    isRadius ? { behind, radius: radius + by } : { behind: behind + by, radius };
  const [rim, other, flank] = ringsOf({ axis, rings }).map((ring, i) =>
    i === ringOf(k) ? change(ring) : ring,
  ) as [Ring, Ring, Ring?];
  return { axis, rings: flank ? [rim, other, flank] : [rim, other] };
}

export function fitCoaxial(
  start: Coaxial,
  edges: readonly (readonly EdgePlace[])[],
  usualFocalPx: number,
): CoaxialFit | null {
  const n = unknownsOf(start);
  const rows = edges.map((seen, r) => rowsOf(start, r, seen));
  const delta = new Float64Array(n);
  let [lower, residuals, spreads]: [Float64Array | null, number[][], number[]] = [null, [], []];
  let weights: number[][] = [];
  for (let round = 0; round < ROUNDS; round++) {
    residuals = rows.map((each) => each.map(({ by, offPx }) => offPx - dot(by, delta)));
    spreads = residuals.map((each) => spreadOf(each, LEAST_SPREAD_PX));
    weights = rows.map((each, r) => weightsOf(each, residuals[r] as number[], spreads[r] as number));
    const { normal, right } = priors(start, usualFocalPx, n);
    rows.forEach((each, r) => {
      each.forEach(({ by, offPx }, i) => {
        add(normal, right, by, weights[r]?.[i] as number, offPx);
      });
    });
    lower = choleskyFactor(normal, n);
    if (!lower) return null;
    delta.set(choleskySolve(lower, n, right));
  }
  if (!lower) return null;
  let coaxial = start;
  for (let k = 0; k < n; k++) coaxial = changed(coaxial, k, delta[k] as number);
  const inverse = inverseFromLower(lowerInverse(lower, n), n);
  return { coaxial, residuals, spreads, covariance: spreadOut(rows, residuals, weights, inverse, n) };
}

const weightsOf = (rows: readonly Row[], residuals: readonly number[], spread: number): number[] =>
  rows.map(
    ({ steep }, i) =>
      (Math.min(1, steep / CLEAR_STEEP) * biweight(residuals[i] as number, spread)) / (spread * spread),
  );

function priors({ axis, rings: [rim, other] }: Coaxial, usualFocalPx: number, n: number) {
  const [normal, right, row] = [new Float64Array(n * n), new Float64Array(n), new Float64Array(n)];
  row[LOG_FOCAL] = 1;
  add(normal, right, row, 1 / U_LOG_FOCAL ** 2, Math.log(usualFocalPx / axis.focalPx));
  row.fill(0);
  [row[GLOBAL], row[GLOBAL + 2]] = [-1, 1];
  add(normal, right, row, 1 / (U_ALIKE * rim.radius) ** 2, rim.radius - other.radius);
  return { normal, right };
}

/** How far the r-th ring's outline moves outwards at each place by each unknown. */
export function outlineMoves(
  coaxial: Coaxial,
  r: number,
  places: readonly Pick<EdgePlace, 'w' | 'outline'>[],
): readonly Float64Array[] {
  const n = unknownsOf(coaxial);
  const moves = places.map(() => new Float64Array(n));
  for (let k = 0; k < n; k++) {
    if (k >= GLOBAL && ringOf(k) !== r) continue;
    const there = changed(coaxial, k, stepOf(k));
    places.forEach(({ w, outline: { at, normal } }, i) => {
      const [x, y] = ringAt(there.axis, ringsOf(there)[r] as Ring, w).at;
      (moves[i] as Float64Array)[k] = ((x - at[0]) * normal[0] + (y - at[1]) * normal[1]) / stepOf(k);
    });
  }
  return moves;
}

function rowsOf(start: Coaxial, r: number, seen: readonly EdgePlace[]): readonly Row[] {
  const moves = outlineMoves(start, r, seen);
  return seen.map(({ offPx, steep }, i) => ({ by: moves[i] as Float64Array, offPx, steep }));
}

function add(normal: Float64Array, right: Float64Array, row: Float64Array, weight: number, off: number) {
  const n = right.length;
  for (let a = 0; a < n; a++) {
    const wa = weight * (row[a] as number);
    if (wa === 0) continue;
    right[a] = (right[a] as number) + wa * off;
    for (let b = 0; b <= a; b++) normal[a * n + b] = (normal[a * n + b] as number) + wa * (row[b] as number);
  }
}

function spreadOut(
  rows: readonly (readonly Row[])[],
  residuals: readonly (readonly number[])[],
  weights: readonly (readonly number[])[],
  inverse: Float64Array,
  n: number,
): Float64Array {
  const middle = new Float64Array(n * n);
  let count = 0;
  rows.forEach((each, r) => {
    each.forEach(({ by }, i) => {
      const [weight, off] = [weights[r]?.[i] as number, residuals[r]?.[i] as number];
      const square = weight * weight * (off ** 2 + LONG_PX ** 2);
      if (weight > 0) count++;
      for (let a = 0; a < n; a++)
        for (let b = 0; b < n; b++)
          middle[a * n + b] = (middle[a * n + b] as number) + square * (by[a] as number) * (by[b] as number);
    });
  });
  const more = count / Math.max(1, count - n);
  for (let i = 0; i < middle.length; i++) middle[i] = (middle[i] as number) * more;
  const focal = LOG_FOCAL * n + LOG_FOCAL;
  middle[focal] = (middle[focal] as number) + 1 / U_LOG_FOCAL ** 2;
  return product(inverse, product(middle, inverse, n), n);
}

function product(a: Float64Array, b: Float64Array, n: number): Float64Array {
  const c = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let k = 0; k < n; k++)
      for (let j = 0; j < n; j++)
        c[i * n + j] = (c[i * n + j] as number) + (a[i * n + k] as number) * (b[k * n + j] as number);
  return c;
}

const dot = (a: Float64Array, b: Float64Array) => a.reduce((sum, v, i) => sum + v * (b[i] as number), 0);
