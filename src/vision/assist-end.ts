/**
 * The middle of the visible end of pin or camshaft, near where a hand marked it.
 *
 * Model    round edges about the mark (round-edges.ts); within each, near its middle, a centre mark (fit-centre-mark.ts); about that its
 *          rim (mark-rim.ts), whose middle it is. An outline alone does not tell the end's middle: light on chamfer and side wall shifts
 *          it by up to a fifth of its radius. Two looks at the same mark, by its shading and by its rim, must agree.
 * Assumes  a flat round end, centre mark in its middle
 * Fails    with the reason: nothing round, no centre mark in it or none with a clear rim, one that may be seen deep in its bore only,
 *          several that contradict each other, too near to the border; and whatever cannot be put within half a pixel
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { AssistSight, EndQuestion, FailureOf } from './assist-sight.ts';
import { type CentreMark, explainedAt, fitCentreMark } from './fit-centre-mark.ts';
import type { Gray } from './gray.ts';
import { isInPicture } from './level-at.ts';
import { markRim } from './mark-rim.ts';
import { apart, type Point } from './point.ts';
import { type RoundEdge, roundEdges } from './round-edges.ts';

type OneEnd = Omit<EndQuestion, 'same'>;

/** Radius of the end over the length from face to pin, 110 to 200 mm. Pins: 12.7 mm and their heads; camshafts: 32 to 42 mm. */
const RADII = { 'clevis-pin': [0.028, 0.1], 'camshaft-end': [0.075, 0.22] } as const;
const LEAST_RADIUS_PX = 4.5;
const LEAST_SCORE = 0.6;
const LEAST_SHARE = 0.75;
/** Over the radius; a camshaft's end has teeth. */
const MOST_RMS = { 'clevis-pin': 0.035, 'camshaft-end': 0.06 } as const;
/** Over the radius: how far chamfer and side wall shift an outline's middle, at most. */
const MOST_SHIFT = 0.16;
/** Radius of a centre mark over that of the end. */
const MARK_RADII = [0.09, 0.12, 0.16, 0.21, 0.27] as const;
/** Below it spots of rust are taken for marks, above it their rims tell. */
const LEAST_EXPLAINED = 0.6;
/** Of the hand's uncertainty: what is worth a tap. */
const SURER = 0.8;
/** Levels of 255: dirt is fainter. */
const LEAST_DEPTH = 14;
const LEAST_SHADOW = 10;
/** Levels of 255: of a fainter rim, noise and dirt move edges. */
const LEAST_STEP = 18;
/** Some times the blur: of a smaller rim, bevel and bore run into one edge. */
const LEAST_RIM_PX = 6;
/** Over the mark's radius: between its middle by its shading and that of its rim. */
const MOST_BETWEEN = 0.2;
/** Measured: docs/assists.md. */
const FLOOR_PX = 0.15;
/** Of what the rim's edges are off. */
const PER_RMS = 0.4;
/** Nine in ten within half a pixel: 0.5 / sqrt(2 ln 10). */
const MOST_SIGMA_PX = 0.5 / Math.sqrt(2 * Math.log(10));
const MOST_APART_PX = 0.7;

type Middle = { readonly placePx: Point; readonly sigmaPx: number };

export function findEnd(gray: Gray, question: OneEnd): Result<AssistSight, FailureOf<'disc'>> {
  const { of, placePx, sigmaPx, lengthPx } = question;
  const radiiPx = RADII[of].map((part) => part * lengthPx) as [number, number];
  radiiPx[0] = Math.max(LEAST_RADIUS_PX, radiiPx[0]);
  if (!isInPicture(gray, ...placePx, 1.3 * radiiPx[1])) return fail({ code: 'disc/out-of-picture' });
  const reachPx = Math.min(0.6 * radiiPx[1], Math.max(0.012 * lengthPx, 3.5 * sigmaPx));
  const edges = roundEdges(gray, { placePx, reachPx, radiiPx });
  const round = edges.filter(
    ({ score, share, rmsPx, longPx }) =>
      score > LEAST_SCORE && share > LEAST_SHARE && rmsPx < Math.max(0.45, MOST_RMS[of] * longPx),
  );
  const share = Math.max(0, ...edges.map((edge) => edge.share * edge.score));
  if (round.length === 0) return fail({ code: 'disc/not-round', share });
  const marked = round.flatMap((edge) => marksIn(gray, edge, question).map((mark) => ({ edge, mark })));
  if (marked.length === 0) return fail({ code: 'disc/no-centre-mark' });
  return surest(
    marked.flatMap(({ edge, mark }) => middleOf(gray, edge, mark) ?? []),
    sigmaPx,
  );
}

function surest(middles: readonly Middle[], handSigmaPx: number): Result<AssistSight, FailureOf<'disc'>> {
  const [best, ...others] = [...middles].sort((a, b) => a.sigmaPx - b.sigmaPx);
  if (!best || best.sigmaPx > MOST_SIGMA_PX) return fail({ code: 'disc/loose-centre-mark' });
  const { placePx, sigmaPx } = best;
  const apartPx = Math.max(0, ...others.map((other) => apart(other.placePx, placePx)));
  if (apartPx > MOST_APART_PX) return fail({ code: 'disc/two-ways', apartPx });
  if (sigmaPx > SURER * handSigmaPx) return fail({ code: 'disc/no-surer', sigmaPx });
  return ok({ marks: [{ placePx, sigmaPx, readingMm: null }] });
}

function middleOf(gray: Gray, { shortPx, longPx, angleRad }: RoundEdge, mark: CentreMark): Middle | null {
  const rim = markRim(gray, mark.placePx, mark.radiusPx, { shortBy: shortPx / longPx, angleRad });
  if (!rim || rim.step < LEAST_STEP || rim.radiusPx < LEAST_RIM_PX) return null;
  if (apart(rim.placePx, mark.placePx) > MOST_BETWEEN * rim.radiusPx) return null;
  return { placePx: rim.placePx, sigmaPx: Math.hypot(FLOOR_PX, PER_RMS * rim.rmsPx) };
}

function marksIn(
  gray: Gray,
  { centre, longPx }: RoundEdge,
  { placePx, sigmaPx }: OneEnd,
): readonly CentreMark[] {
  const reach = MOST_SHIFT * longPx;
  const step = Math.max(0.8, reach / 6);
  const n = Math.ceil(reach / step);
  const tried = MARK_RADII.flatMap((part) => {
    const radiusPx = part * longPx;
    if (radiusPx < 1.5) return [];
    const all: { readonly place: Point; readonly radiusPx: number; readonly explained: number }[] = [];
    for (let i = -n; i <= n; i++)
      for (let j = -n; j <= n; j++) {
        if (Math.hypot(i, j) > n + 0.1) continue;
        const place: Point = [centre[0] + i * step, centre[1] + j * step];
        all.push({ place, radiusPx, explained: explainedAt(gray, place, radiusPx) });
      }
    return all;
  });
  const starts = MARK_RADII.flatMap((part) => {
    const alike = tried.filter(({ radiusPx }) => radiusPx === part * longPx);
    return alike.sort((a, b) => b.explained - a.explained).slice(0, 2);
  });
  const marks = starts.flatMap(({ place, radiusPx }) => fitCentreMark(gray, place, radiusPx) ?? []);
  return marks.filter(
    (mark) =>
      mark.explained > LEAST_EXPLAINED &&
      mark.depth > LEAST_DEPTH &&
      mark.shadow > LEAST_SHADOW &&
      apart(mark.placePx, placePx) < 1 + 2.7 * sigmaPx &&
      apart(mark.placePx, centre) < 1.2 * reach &&
      mark.radiusPx < 0.33 * longPx,
  );
}
