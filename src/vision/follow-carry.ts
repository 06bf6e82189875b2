/**
 * Where a place of the seed picture has gone that is no feature itself: carried by what stands still about it.
 *
 * Model    affine from seed to frame, weighted by nearness 1 / (1 + (d / reach)^2)^2 and by how well each agrees; its linear part is
 *          drawn towards the motion all have in common where the neighbours do not tell it
 *          sigma^2 = sum of squared weights x their scatter^2 + (PARALLAX x scatter)^2 + (PARALLAX x share of
 *          neighbours missing x scatter of all that stands still)^2
 * Assumes  the neighbours' depths surround that of the place
 * Fails    null with fewer than three
 */
import { choleskyFactor, choleskySolve } from '../basics/symmetric.ts';
import type { PatchMap } from './fit-patch.ts';
import { type Motion, type Moved, movedBy } from './follow-common.ts';
import type { Point } from './point.ts';

/** nearness: of how many neighbours, counted by how near they are. */
export type Carried = PatchMap & { readonly sigmaPx: number; readonly nearness: number };

const ROUNDS = 4;
/** Of the neighbours' scatter, what their mean may be off for the place's own depth. */
const PARALLAX = 0.7;
/** Share of the neighbours: some are always lost for a while. */
const ENOUGH = 0.75;
const LEAST_SCATTER_PX = 0.1;

/** fullNearness: with all its neighbours in sight. */
export type Neighbourhood = { readonly reachPx: number; readonly fullNearness: number };

export type StillPair = Moved & { readonly sigmaPx: number };

export function carried(
  place: Point,
  stills: readonly StillPair[],
  common: Motion,
  { reachPx, fullNearness }: Neighbourhood,
): Carried | null {
  if (stills.length < 3) return null;
  const nearness = stills.map(({ from }) => nearnessOf(from, place, reachPx));
  const near = stills.map(
    ({ sigmaPx }, i) => (nearness[i] as number) / (1 + (sigmaPx / LEAST_SCATTER_PX) ** 2),
  );
  const rows = stills.map(({ from, to }) => {
    const there = movedBy(common, from);
    return {
      dx: (from[0] - place[0]) / reachPx,
      dy: (from[1] - place[1]) / reachPx,
      x: to[0] - there[0],
      y: to[1] - there[1],
    };
  });
  let weights: readonly number[] = near;
  let local: Local | null = null;
  let scatter = 0;
  for (let round = 0; round < ROUNDS; round++) {
    local = localPlane(rows, weights);
    if (!local) return null;
    const { x, y } = local;
    const off = rows.map((row) => Math.hypot(row.x - planeAt(x, row), row.y - planeAt(y, row)));
    scatter = Math.max(LEAST_SCATTER_PX, 1.2 * weightedMedian(off, near));
    weights = near.map((weight, i) => weight / (1 + ((off[i] as number) / (2 * scatter)) ** 2) ** 2);
  }
  if (!local) return null;
  const sum = weights.reduce((all, weight) => all + weight, 0);
  const squares = weights.reduce((all, weight) => all + weight * weight, 0);
  const { x, y } = local;
  const at = movedBy(common, place);
  const seen = nearness.reduce((all, each) => all + each, 0);
  const missing = Math.max(0, ENOUGH - seen / fullNearness);
  const far = weightedMedian(
    rows.map((row) => Math.hypot(row.x, row.y)),
    rows.map(() => 1),
  );
  const sigmaPx = Math.hypot(
    scatter * Math.hypot(Math.sqrt(squares) / sum, PARALLAX),
    PARALLAX * missing * far,
  );
  return {
    place: [at[0] + x[0], at[1] + y[0]],
    steps: [
      common.a + x[1] / reachPx,
      -common.b + x[2] / reachPx,
      common.b + y[1] / reachPx,
      common.a + y[2] / reachPx,
    ],
    sigmaPx,
    nearness: seen,
  };
}

export function nearnessOf(from: Point, place: Point, reachPx: number): number {
  const d = Math.hypot(from[0] - place[0], from[1] - place[1]) / reachPx;
  return 1 / (1 + d * d) ** 2;
}

type Plane = readonly [number, number, number];
type Local = { readonly x: Plane; readonly y: Plane };
type Row = { readonly dx: number; readonly dy: number; readonly x: number; readonly y: number };

const planeAt = (plane: Plane, { dx, dy }: Row) => plane[0] + plane[1] * dx + plane[2] * dy;

function localPlane(rows: readonly Row[], weights: readonly number[]): Local | null {
  const normal = new Float64Array(9);
  const [right, left] = [new Float64Array(3), new Float64Array(3)];
  rows.forEach(({ dx, dy, x, y }, i) => {
    const w = weights[i] as number;
    const terms = [1, dx, dy] as const;
    for (let k = 0; k < 3; k++) {
      const wk = w * (terms[k] as number);
      right[k] = (right[k] as number) + wk * x;
      left[k] = (left[k] as number) + wk * y;
      for (let j = 0; j <= k; j++)
        normal[k * 3 + j] = (normal[k * 3 + j] as number) + wk * (terms[j] as number);
    }
  });
  // As a tenth of all neighbours, half the reach off to each side, saying: as all others.
  const pull = 0.05 * (normal[0] as number);
  normal[4] = (normal[4] as number) + pull;
  normal[8] = (normal[8] as number) + pull;
  const lower = choleskyFactor(normal, 3);
  if (!lower) return null;
  const planeOf = (sums: Float64Array) => {
    const [a, b, c] = choleskySolve(lower, 3, sums);
    return [a as number, b as number, c as number] as const;
  };
  return { x: planeOf(right), y: planeOf(left) };
}

function weightedMedian(values: readonly number[], weights: readonly number[]): number {
  const order = values.map((value, i) => ({ value, weight: weights[i] as number }));
  order.sort((a, b) => a.value - b.value);
  const half = order.reduce((sum, { weight }) => sum + weight, 0) / 2;
  let sum = 0;
  for (const { value, weight } of order) {
    sum += weight;
    if (sum >= half) return value;
  }
  return 0;
}
