/**
 * The card's plane in the picture, from the markers that agree on it, and how far all their edges are shifted.
 *
 * Model    p = H(c + d n): c a corner's place on the card, n = (+-1, +-1) outward from its marker, d the shift in card mm,
 *          one for the whole card: ink that runs out, a sensor or a coding of light that lets white spread into black.
 *          H, d by least squares over all corners, each weighted by its own uncertainty.
 * Assumes  a card that is nearly flat and a lens that bends straight lines by a small part of a marker.
 * Fails    'target/no-plane' where no two markers agree: one alone may be something else that looks alike.
 * Source   choice of the pair that most others agree with: Fischler, Bolles, CACM 24 (1981) 381-395 (from memory), here with
 *          every pair instead of drawn ones
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { descend, type Squares } from './descend.ts';
import { type Homography, homographyOf, mapped } from './homography.ts';
import type { Point, Quad } from './point.ts';

export type PlacedMarker = {
  readonly marker: number;
  readonly cornersMm: Quad;
  readonly cornersPx: Quad;
  readonly sigmasPx: readonly number[];
};

export type TargetPlane = {
  readonly pxFromMm: Homography;
  readonly agreeing: readonly PlacedMarker[];
  readonly shiftMm: number;
  readonly uShiftMm: number;
};

export type NoPlane = { readonly code: 'target/no-plane' };

/** Share of a marker's side by which a corner may be off the plane that two others span. */
const TOLERANCE = 0.2;
const UNKNOWNS = 9;
const OUTWARD: Quad = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
];

export function targetPlane(markers: readonly PlacedMarker[]): Result<TargetPlane, NoPlane> {
  let best: readonly PlacedMarker[] = [];
  markers.forEach((a, index) => {
    for (const b of markers.slice(index + 1)) {
      const agreeing = agreeingWith(planeThrough([a, b]), markers);
      if (agreeing.includes(a) && agreeing.includes(b) && agreeing.length > best.length) best = agreeing;
    }
  });
  const start = best.length < 2 ? null : planeThrough(best);
  if (!start) return fail({ code: 'target/no-plane' });
  const flat = Float64Array.from([...start.slice(0, 8).map((value) => value / start[8]), 0]);
  const fitted = descend(flat, squaresOver(best));
  if (!fitted.ok) return fail({ code: 'target/no-plane' });
  const { x, sum, cofactors } = fitted.value;
  // Where lens and paper bend the plane by more than the corners' own uncertainties, the shift is known less well too.
  const spread = Math.max(1, sum / (8 * best.length - UNKNOWNS));
  return ok({
    pxFromMm: [...x.slice(0, 8), 1] as unknown as Homography,
    agreeing: best,
    shiftMm: x[8] as number,
    uShiftMm: Math.sqrt(spread * (cofactors[UNKNOWNS * UNKNOWNS - 1] as number)),
  });
}

/** How far the shift by one mm outward moves a corner in the picture. */
export function shiftedBy({ pxFromMm }: TargetPlane, cornerMm: Point, corner: number): Point {
  const step = 0.01;
  const outward = OUTWARD[corner] as Point;
  const [x0, y0] = mapped(pxFromMm, cornerMm);
  const [x1, y1] = mapped(pxFromMm, [cornerMm[0] + step * outward[0], cornerMm[1] + step * outward[1]]);
  return [(x1 - x0) / step, (y1 - y0) / step];
}

function planeThrough(markers: readonly PlacedMarker[]): Homography | null {
  return homographyOf(
    markers.flatMap(({ cornersMm }) => cornersMm),
    markers.flatMap(({ cornersPx }) => cornersPx),
  );
}

function agreeingWith(plane: Homography | null, markers: readonly PlacedMarker[]): readonly PlacedMarker[] {
  if (!plane) return [];
  return markers.filter(({ cornersMm, cornersPx }) => {
    const [a, , c] = cornersPx;
    const sidePx = Math.hypot(a[0] - c[0], a[1] - c[1]) / Math.SQRT2;
    return cornersMm.every((place, corner) => {
      const [x, y] = mapped(plane, place);
      const [px, py] = cornersPx[corner] as Point;
      return Math.hypot(x - px, y - py) < TOLERANCE * sidePx;
    });
  });
}

function squaresOver(markers: readonly PlacedMarker[]): (h: Float64Array) => Squares {
  return (h) => {
    const normal = new Float64Array(UNKNOWNS * UNKNOWNS);
    const gradient = new Float64Array(UNKNOWNS);
    let sum = 0;
    const add = (row: readonly number[], residual: number) => {
      sum += residual * residual;
      row.forEach((ri, i) => {
        gradient[i] = (gradient[i] as number) + ri * residual;
        row.forEach((rj, j) => {
          normal[i * UNKNOWNS + j] = (normal[i * UNKNOWNS + j] as number) + ri * rj;
        });
      });
    };
    const at = (k: number) => h[k] as number;
    for (const { cornersMm, cornersPx, sigmasPx } of markers)
      cornersMm.forEach(([cu, cv], corner) => {
        const [nu, nv] = OUTWARD[corner] as Point;
        const [u, v] = [cu + at(8) * nu, cv + at(8) * nv];
        const w = at(6) * u + at(7) * v + 1;
        const x = (at(0) * u + at(1) * v + at(2)) / w;
        const y = (at(3) * u + at(4) * v + at(5)) / w;
        const [px, py] = cornersPx[corner] as Point;
        const weight = 1 / (sigmasPx[corner] as number);
        const byShift = (along: number, across: number, value: number) =>
          (along * nu + across * nv - value * (at(6) * nu + at(7) * nv)) / w;
        const scaled = (row: readonly number[]) => row.map((value) => value * weight);
        add(
          scaled([u / w, v / w, 1 / w, 0, 0, 0, (-x * u) / w, (-x * v) / w, byShift(at(0), at(1), x)]),
          (x - px) * weight,
        );
        add(
          scaled([0, 0, 0, u / w, v / w, 1 / w, (-y * u) / w, (-y * v) / w, byShift(at(3), at(4), y)]),
          (y - py) * weight,
        );
      });
    return { sum, normal, gradient };
  };
}
