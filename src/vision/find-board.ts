/**
 * The corners of the calibration board in a picture: coded markers tell which part of the board is where, the plane through
 * those near a corner where it must be, and its two edges where it is.
 *
 * Assumes  the lens bends little between a corner and the markers next to it.
 * Fails    never: a corner that is hidden, out of the picture or not sure is not returned.
 */
import type { Result } from '../basics/result.ts';
import { detectMarkers } from './detect-markers.ts';
import { fitCrossing, type RoughCrossing } from './fit-crossing.ts';
import type { Gray } from './gray.ts';
import { homographyOf, mapped } from './homography.ts';
import type { Opencv } from './opencv.ts';
import type { Point } from './point.ts';
import type { BoardPlan, SeenBoard } from './seen-board.ts';
import type { VisionFailure } from './vision-failure.ts';
import { withOpencv } from './with-opencv.ts';

/** Beside noise: what paper, lens and the coding of light leave of a corner's place. */
const FLOOR_PX = 0.03;
/** Of a square: as far as nothing but the four squares is seen, the markers' white rims being a fifth. */
const WINDOW_SHARE = 0.2;
const LEAST_HALF_WINDOW_PX = 3;
/** More pixels change little. */
const MOST_HALF_WINDOW_PX = 14;
/** Markers within this many squares of a corner say where it is; one at least lies beside it. */
const NEAR_SQUARES = 1.6;
const BESIDE_SQUARES = 0.8;

type PlacedMarker = { readonly cornersMm: readonly Point[]; readonly cornersPx: readonly Point[] };

export function findBoard(cv: Opencv, gray: Gray, plan: BoardPlan): Result<SeenBoard, VisionFailure> {
  return withOpencv(cv, (keep) => {
    const rough = detectMarkers(cv, keep, gray);
    // A number that is seen twice cannot be told apart from something that looks alike.
    const placed = plan.markers.flatMap(({ marker, cornersMm }) => {
      const [one, ...others] = rough.filter((each) => each.marker === marker);
      return one && others.length === 0 ? [{ cornersMm, cornersPx: one.cornersPx }] : [];
    });
    return {
      corners: plan.cornersMm.flatMap((placeMm, corner) => {
        const expected = roughCrossing(placeMm, plan.squareMm, placed);
        if (!expected) return [];
        const fitted = fitCrossing(gray, expected);
        if (!fitted.ok) return [];
        const [xPx, yPx] = fitted.value.placePx;
        return [{ corner, xPx, yPx, sigmaPx: Math.hypot(fitted.value.sigmaPx, FLOOR_PX) }];
      }),
    };
  });
}

function roughCrossing(
  placeMm: Point,
  squareMm: number,
  placed: readonly PlacedMarker[],
): RoughCrossing | null {
  const away = ({ cornersMm: [a, , b] }: PlacedMarker) =>
    a && b ? distance(placeMm, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]) / squareMm : Number.POSITIVE_INFINITY;
  if (!placed.some((marker) => away(marker) < BESIDE_SQUARES)) return null;
  const near = placed.filter((marker) => away(marker) < NEAR_SQUARES);
  const pxFromMm = homographyOf(
    near.flatMap(({ cornersMm }) => cornersMm),
    near.flatMap(({ cornersPx }) => cornersPx),
  );
  if (!pxFromMm) return null;
  const placePx = mapped(pxFromMm, placeMm);
  const along = [
    mapped(pxFromMm, [placeMm[0] + squareMm / 10, placeMm[1]]),
    mapped(pxFromMm, [placeMm[0], placeMm[1] + squareMm / 10]),
  ] as const;
  const [right, down] = along.map(([x, y]): Point => [10 * (x - placePx[0]), 10 * (y - placePx[1])]) as [
    Point,
    Point,
  ];
  // The nearer of the two pairs of edges of a square, which lies aslant in the picture.
  const area = Math.abs(right[0] * down[1] - right[1] * down[0]);
  const narrowPx = area / Math.max(Math.hypot(...right), Math.hypot(...down));
  const halfWindowPx = Math.min(MOST_HALF_WINDOW_PX, WINDOW_SHARE * narrowPx);
  if (halfWindowPx < LEAST_HALF_WINDOW_PX) return null;
  return {
    placePx,
    edgesRad: [Math.atan2(right[1], right[0]), Math.atan2(down[1], down[0])],
    halfWindowPx,
  };
}

function distance(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
