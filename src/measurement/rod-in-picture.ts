/**
 * The push rod in a picture near the chamber face: which way its middle line runs from the face, how wide it is, how long a
 * millimetre along it.
 *
 * Model    adjusted: the rod runs from its inner end through the pin, both in the plane of motion; two of its points and the
 *          greatest length that a millimetre has in the picture in any direction (a round bar's outline is not foreshortened)
 *          from marks alone: from the face mark through the farthest mark on the rod's middle line, else through the pin; scale from
 *          tape graduations, else from how far a pin usually is from the face
 * Assumes  a rod of 5/8 in
 * Fails    without a face mark, or without a mark that gives its direction; from marks alone the pin's end, which is nearer to the
 *          camera than the rod, turns the direction by some degrees
 * Source   rod diameter and distance from face to pin: common practice, no source
 */
import type { Adjustment } from '../adjustment/adjustment.ts';
import { pictureOf } from '../adjustment/picture-of.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import type { Mark } from '../marks/mark.ts';
import type { BrakeState, View } from '../marks/view.ts';
import type { PicturePoint, RodScale } from './measurement.ts';

export type RodInPicture = Omit<RodScale, 'state'> & { readonly facePx: PicturePoint };

export type RodFailure = {
  readonly code: 'rod-in-picture/mark-missing';
  readonly kind: 'chamber-face' | 'clevis-pin';
};

/** Common practice, no source: rods are made of 5/8 in round steel; a tenth more or less does not matter here. */
const ROD_RADIUS_MM = 15.875 / 2;
/** As far from the face as the over-stroke mark can be. */
const NEAR_FACE_MM = 30;
/** Common practice, no source: 100 to 145 mm released, and a stroke of 25 to 60 mm more. */
const FACE_TO_PIN_MM: Readonly<Record<BrakeState, number>> = { released: 125, applied: 168, pulled: 140 };

export function adjustedRod(adjustment: Adjustment, viewIndex: number): RodScale {
  const { layout, problem, best } = adjustment;
  const { state } = problem.views[viewIndex] as (typeof problem.views)[number];
  const seen = pictureOf(adjustment, viewIndex);
  const pin = layout.pins[state] as number;
  const [xMm, yMm] = [best.x[pin] as number, best.x[pin + 1] as number];
  const rodMm = (best.x[layout.pins.released as number] as number) + (best.x[layout.rodInner] as number);
  const onRod = (fromFaceMm: number) => yMm * (1 + (fromFaceMm - xMm) / rodMm);
  const face = seen([0, onRod(0), 0]);
  const out = seen([NEAR_FACE_MM, onRod(NEAR_FACE_MM), 0]);
  const apartPx = Math.hypot(out[0] - face[0], out[1] - face[1]);
  const [dx, dy, dz] = (
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const
  ).map(([x, y, z]) => {
    const at = seen([x, onRod(0) + y, z]);
    return [at[0] - face[0], at[1] - face[1]] as const;
  }) as [PicturePoint, PicturePoint, PicturePoint];
  return {
    state,
    way: [(out[0] - face[0]) / apartPx, (out[1] - face[1]) / apartPx],
    pxPerMm: apartPx / NEAR_FACE_MM,
    halfWidthPx: ROD_RADIUS_MM * greatestStretch([dx, dy, dz]),
  };
}

/** Singular value of the 2 x 3 matrix with these columns. */
function greatestStretch(columns: readonly PicturePoint[]): number {
  const [a, b, c] = columns.reduce<readonly [number, number, number]>(
    ([xx, xy, yy], [x, y]) => [xx + x * x, xy + x * y, yy + y * y],
    [0, 0, 0],
  );
  return Math.sqrt((a + c) / 2 + Math.hypot((a - c) / 2, b));
}

/** adjusted: of this view, where the stroke could be measured. */
export function rodInPicture(
  { state, marks }: Pick<View, 'state' | 'marks'>,
  adjusted: Omit<RodScale, 'state'> | null,
): Result<RodInPicture, RodFailure> {
  const [facePx, pinPx] = [meanOf(marks, 'chamber-face'), meanOf(marks, 'clevis-pin')];
  if (!facePx) return fail({ code: 'rod-in-picture/mark-missing', kind: 'chamber-face' });
  if (adjusted) {
    const { way, pxPerMm, halfWidthPx } = adjusted;
    return ok({ facePx, way, pxPerMm, halfWidthPx });
  }
  if (!pinPx || apart(facePx, pinPx) < 1)
    return fail({ code: 'rod-in-picture/mark-missing', kind: 'clevis-pin' });
  const onRod = marks.filter(({ kind }) => kind === 'rod-line').map(({ xPx, yPx }) => [xPx, yPx] as const);
  const farthest = onRod.reduce<PicturePoint>(
    (best, point) => (best === pinPx || apart(facePx, point) > apart(facePx, best) ? point : best),
    pinPx,
  );
  const lengthPx = apart(facePx, farthest);
  const pxPerMm = tapeScale(marks) ?? apart(facePx, pinPx) / FACE_TO_PIN_MM[state];
  return ok({
    facePx,
    way: [(farthest[0] - facePx[0]) / lengthPx, (farthest[1] - facePx[1]) / lengthPx],
    pxPerMm,
    halfWidthPx: ROD_RADIUS_MM * pxPerMm,
  });
}

/** The tape lies along the rod. */
function tapeScale(marks: readonly Mark[]): number | null {
  const inOrder = marks
    .filter((mark) => mark.kind === 'tape-graduation')
    .sort((a, b) => a.readingMm - b.readingMm);
  const [low, high] = [inOrder[0], inOrder.at(-1)];
  if (!low || !high || low.readingMm === high.readingMm) return null;
  return apart([low.xPx, low.yPx], [high.xPx, high.yPx]) / (high.readingMm - low.readingMm);
}

function meanOf(marks: readonly Mark[], kind: Mark['kind']): PicturePoint | null {
  const those = marks.filter((mark) => mark.kind === kind);
  if (those.length === 0) return null;
  const sum = those.reduce<PicturePoint>(([x, y], { xPx, yPx }) => [x + xPx, y + yPx], [0, 0]);
  return [sum[0] / those.length, sum[1] / those.length];
}

const apart = (a: PicturePoint, b: PicturePoint) => Math.hypot(a[0] - b[0], a[1] - b[1]);
