/**
 * The printed target in a picture: markers are detected, fitted, must agree on one plane, and lend it to those that the
 * detector missed. A marker that is not sure is reported as missing.
 */
import { assert, type Result } from '../basics/result.ts';
import { detectMarkers } from './detect-markers.ts';
import { fitMarker } from './fit-marker.ts';
import type { Gray } from './gray.ts';
import { mapped } from './homography.ts';
import type { Opencv } from './opencv.ts';
import { asQuad, type Point, type Quad } from './point.ts';
import { type PlacedMarker, shiftedBy, type TargetPlane, targetPlane } from './target-plane.ts';
import type { CardMarker, SeenCorner, TargetSight } from './target-sight.ts';
import type { VisionFailure } from './vision-failure.ts';
import { withOpencv } from './with-opencv.ts';

/** What the model leaves out, beside noise: a part that is always there, and one that grows with blur. Measured: docs/target.md. */
const FLOOR_PX = 0.03;
const FLOOR_OF_BLUR = 0.02;

export function findTarget(
  cv: Opencv,
  gray: Gray,
  card: readonly CardMarker[],
): Result<TargetSight, VisionFailure> {
  return withOpencv(cv, (keep) => {
    const rough = detectMarkers(cv, keep, gray);
    // A number that is seen twice cannot be told apart from something that looks alike.
    const detected = card.flatMap((known) => {
      const [one, ...others] = rough.filter(({ marker }) => marker === known.marker);
      return one && others.length === 0 ? placed(gray, known, one.cornersPx) : [];
    });
    const first = targetPlane(detected);
    if (!first.ok) return { corners: [], missing: card.map(({ marker }) => marker) };
    const lent = card
      .filter(({ marker }) => !first.value.agreeing.some((each) => each.marker === marker))
      .flatMap((known) => placed(gray, known, predicted(first.value, known)));
    const all = targetPlane([...first.value.agreeing, ...lent]);
    const plane = all.ok ? all.value : first.value;
    return {
      corners: plane.agreeing.flatMap((marker) => seenCorners(plane, marker)),
      missing: card
        .map(({ marker }) => marker)
        .filter((marker) => !plane.agreeing.some((each) => each.marker === marker)),
    };
  });
}

function placed(gray: Gray, { marker, rows, cornersMm }: CardMarker, rough: Quad): PlacedMarker[] {
  const fitted = fitMarker(gray, rough, rows);
  if (!fitted.ok) return [];
  const { cornersPx, blurPx } = fitted.value;
  const sigmasPx = fitted.value.sigmasPx.map((sigma) => Math.hypot(sigma, FLOOR_PX, FLOOR_OF_BLUR * blurPx));
  return [{ marker, cornersMm, cornersPx, sigmasPx }];
}

function predicted({ pxFromMm }: TargetPlane, { cornersMm }: CardMarker): Quad {
  return asQuad(cornersMm.map((place) => mapped(pxFromMm, place)));
}

function seenCorners(
  plane: TargetPlane,
  { marker, cornersMm, cornersPx, sigmasPx }: PlacedMarker,
): SeenCorner[] {
  return ([0, 1, 2, 3] as const).map((corner) => {
    const [place, sigmaPx] = [cornersMm[corner], sigmasPx[corner]];
    assert(sigmaPx !== undefined, 'a fitted marker has four corners');
    const [dx, dy]: Point = shiftedBy(plane, place, corner);
    const [x, y] = cornersPx[corner];
    return {
      marker,
      corner,
      xPx: x - plane.shiftMm * dx,
      yPx: y - plane.shiftMm * dy,
      sigmaPx: Math.hypot(sigmaPx, (plane.uShiftMm * Math.hypot(dx, dy)) / Math.SQRT2),
    };
  });
}
