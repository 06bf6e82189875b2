/**
 * Arcs across a round push rod at which the picture's brightness changes, as a round bar's end is seen: roughly, then sharp.
 *
 * Model    s along the rod, u across it over its half width: s + k (1 - sqrt(1 - u^2)) + t u, as a plane square to the rod cuts it
 *          roughly: at every whole s the k and t of a small grid at which the steps are the greatest, in that of four quarters across
 *          in which all but one are greater; a quarter may be brighter on either side, as rods are shaded across
 *          sharp: in each row the steepest place in light near it, by a parabola; s, k and t by least squares with Tukey's biweight, k
 *          held by what is known of it beforehand
 * Fails    null where fewer than LEAST_ROWS rows show it
 */
import { choleskyFactor, choleskySolve, inverseFromLower, lowerInverse } from '../basics/symmetric.ts';
import { biweight, spreadOf } from './biweight.ts';
import type { FaceRow } from './face-rows.ts';

/** In pixels. */
export type Arc = { readonly s: number; readonly k: number; readonly t: number };
/** step: levels; senses: of each quarter, 1 where it is brighter outwards. */
export type SeenArc = Arc & { readonly step: number; readonly senses: readonly number[] };
/** seen: share of the rows that lie on it; sigmaPx: of s. */
export type ArcFit = Arc & { readonly spreadPx: number; readonly sigmaPx: number; readonly seen: number };
/** k as it must be, and how well that is known. */
export type Roundness = { readonly kPx: number; readonly uPx: number };

/** Over the half width. */
const TILTS = [-0.15, -0.1, -0.05, 0, 0.05, 0.1, 0.15];
const BESIDE = [-0.1, -0.05, 0, 0.05, 0.1];
const QUARTERS = 4;
const NEAR_PX = 2;
/** Of the arc's step. */
const LEAST_STEP = 0.3;
const LEAST_ROWS = 9;
const LEAST_SPREAD_PX = 0.05;
const USUAL_SPREAD_PX = 0.4;
/** Neighbouring rows share pixels. */
const CORRELATED = 3;
const ROUNDS = 5;

const bulge = (u: number) => 1 - Math.sqrt(1 - u * u);
export const arcAt = ({ s, k, t }: Arc, u: number) => s + k * bulge(u) + t * u;

/** Those that stand out from their neighbours, the clearest first. */
export function seenArcs(
  rows: readonly FaceRow[],
  kPx: number,
  halfPx: number,
  reachPx: number,
): readonly SeenArc[] {
  const all = Array.from({ length: 2 * reachPx + 1 }, (_, i) => clearestAt(rows, i - reachPx, kPx, halfPx));
  return all
    .filter(({ step }, i) => step > 0 && step >= (all[i - 1]?.step ?? 0) && step > (all[i + 1]?.step ?? 0))
    .sort((a, b) => b.step - a.step);
}

function clearestAt(rows: readonly FaceRow[], s: number, kPx: number, halfPx: number): SeenArc {
  let best: SeenArc = { s, k: kPx, t: 0, step: 0, senses: [] };
  for (const more of BESIDE)
    for (const tilt of TILTS) {
      const arc = { s, k: kPx + more * halfPx, t: tilt * halfPx };
      const sums = Array<number>(QUARTERS).fill(0);
      for (const [n, { u, stepAt }] of rows.entries()) {
        const quarter = quarterOf(n, rows);
        sums[quarter] = (sums[quarter] as number) + (QUARTERS / rows.length) * stepAt(arcAt(arc, u));
      }
      const step = sums.map(Math.abs).sort((a, b) => a - b)[1] as number;
      if (step > best.step) best = { ...arc, step, senses: sums.map(Math.sign) };
    }
  return best;
}

const quarterOf = (n: number, rows: readonly FaceRow[]) => Math.floor((QUARTERS * n) / rows.length);

export function arcFit(rows: readonly FaceRow[], seen: SeenArc, round: Roundness): ArcFit | null {
  let arc: Arc = seen;
  let fit: ArcFit | null = null;
  for (let times = 0; times < ROUNDS; times++) {
    const places = rows.flatMap(({ u, stepAt, lightStepAt }, n) => {
      const [about, sense] = [arcAt(arc, u), seen.senses[quarterOf(n, rows)] as number];
      if (sense * stepAt(about) < LEAST_STEP * seen.step) return [];
      const place = steepest((s) => sense * lightStepAt(s), about);
      return place === null ? [] : [{ u, place }];
    });
    fit = fitted(places, arc, round, rows.length);
    if (!fit) return null;
    arc = fit;
  }
  return fit;
}

/** Within NEAR_PX. */
function steepest(rise: (s: number) => number, about: number): number | null {
  let best: number | null = null;
  for (let s = Math.round(about - NEAR_PX); s <= about + NEAR_PX; s++)
    if (rise(s) >= rise(s - 1) && rise(s) > rise(s + 1) && (best === null || rise(s) > rise(best))) best = s;
  if (best === null) return null;
  const [before, here, after] = [rise(best - 1), rise(best), rise(best + 1)];
  return best + (before - after) / (2 * (before - 2 * here + after));
}

type RowPlace = { readonly u: number; readonly place: number };

function fitted(
  places: readonly RowPlace[],
  near: Arc,
  { kPx, uPx }: Roundness,
  rows: number,
): ArcFit | null {
  if (places.length < LEAST_ROWS) return null;
  const offs = places.map(({ u, place }) => place - arcAt(near, u));
  const spread = spreadOf(offs, USUAL_SPREAD_PX);
  const weights = offs.map((off) => biweight(off, spread));
  const count = weights.reduce((sum, weight) => sum + weight, 0);
  if (count < LEAST_ROWS) return null;
  const normal = new Float64Array(9);
  const right = new Float64Array(3);
  const add = (terms: readonly number[], value: number, weight: number) => {
    for (let i = 0; i < 3; i++) {
      const each = weight * (terms[i] as number);
      right[i] = (right[i] as number) + each * value;
      for (let j = 0; j <= i; j++)
        normal[3 * i + j] = (normal[3 * i + j] as number) + each * (terms[j] as number);
    }
  };
  for (const [n, { u, place }] of places.entries()) add([1, bulge(u), u], place, weights[n] as number);
  add([0, 1, 0], kPx, CORRELATED * (USUAL_SPREAD_PX / uPx) ** 2);
  const lower = choleskyFactor(normal, 3);
  if (!lower) return null;
  const [s, k, t] = choleskySolve(lower, 3, right) as unknown as [number, number, number];
  const square = places.reduce(
    (sum, { u, place }, n) => sum + (weights[n] as number) * (place - arcAt({ s, k, t }, u)) ** 2,
    0,
  );
  const spreadPx = Math.max(LEAST_SPREAD_PX, Math.sqrt(square / (count - 3)));
  const cofactor = inverseFromLower(lowerInverse(lower, 3), 3)[0] as number;
  return { s, k, t, spreadPx, sigmaPx: spreadPx * Math.sqrt(CORRELATED * cofactor), seen: count / rows };
}
