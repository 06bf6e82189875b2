/**
 * The clamp band's rim towards the rod, about the chamber that face and pin point to.
 *
 * Model    rims about the chamber (rims-about.ts); the one that is the band's (choose-rim.ts); marks along it (rim-marks.ts). What is
 *          told of the axis ratio by them: their sigmas through the arc's cofactors
 * Assumes  a view from the rod's side, face and pin marked to within a few hundredths of their distance
 * Fails    with the reason: no rim seen well, only one of the band's edges, two that would do, not where it was pointed to, too loose
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { type Arc, arcAngle, arcNormal, arcPoint, fitArc } from './arc.ts';
import type { AssistQuestion, FailureOf, FoundMark } from './assist-sight.ts';
import { chooseRim } from './choose-rim.ts';
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';
import { rimMarks } from './rim-marks.ts';
import { rimsAbout } from './rims-about.ts';

export type BandSight = {
  readonly marks: readonly FoundMark[];
  readonly rim: Arc;
  readonly ratio: number;
  readonly uRatio: number;
  /** Of the near half, where the rim is seen. */
  readonly share: number;
};
type BandQuestion = Extract<AssistQuestion, { readonly of: 'clamp-band' }>;

const LEAST_MARKS = 12;
const MOST_U_RATIO = 0.014;
/** How far from the rim a finger may point, over half the diameter: anywhere on the band. */
const REACH = 0.35;

export function findBand(
  gray: Gray,
  { facePx, pinPx, nearPx }: Omit<BandQuestion, 'of'>,
): Result<BandSight, FailureOf<'band'>> {
  const chosen = chooseRim(rimsAbout(gray, facePx, pinPx));
  if (!chosen.ok) return chosen;
  const { arc, share } = chosen.value;
  const offPx = nearPx ? offRim(arc, nearPx) : 0;
  if (offPx > REACH * arc.longPx) return fail({ code: 'band/elsewhere', offPx });
  const marks = rimMarks(chosen.value);
  const uRatio = marks.length < LEAST_MARKS ? 1 : ratioUncertainty(arc, marks);
  if (!(uRatio < MOST_U_RATIO)) return fail({ code: 'band/loose', uRatio });
  return ok({ marks, rim: arc, ratio: arc.shortPx / arc.longPx, uRatio, share });
}

function offRim(arc: Arc, near: Point): number {
  const w = Math.max(-Math.PI / 2, Math.min(Math.PI / 2, arcAngle(arc, near)));
  const [[x, y], [nx, ny]] = [arcPoint(arc, w), arcNormal(arc, w)];
  return Math.abs((near[0] - x) * nx + (near[1] - y) * ny);
}

function ratioUncertainty(start: Arc, marks: readonly FoundMark[]): number {
  const fit = fitArc(
    start,
    marks.map(({ placePx, sigmaPx }) => ({ placePx, weight: 1 / sigmaPx ** 2 })),
  );
  if (!fit) return 1;
  const { longPx, shortPx } = fit.arc;
  const [byLong, byShort] = [-shortPx / longPx ** 2, 1 / longPx];
  const at = (i: number, j: number) => fit.cofactors[5 * i + j] as number;
  return Math.sqrt(byLong ** 2 * at(2, 2) + 2 * byLong * byShort * at(2, 3) + byShort ** 2 * at(3, 3));
}
