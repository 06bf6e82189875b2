/**
 * The middle of the visible end of pin or camshaft, near where a hand marked it.
 *
 * Model    round edges about the mark (round-edges.ts); within each, near its middle, the centre mark (fit-centre-mark.ts): the middle of
 *          that, where it is clear. An outline alone does not tell the end's middle: light on chamfer and side wall shifts it by up to a
 *          fifth of its radius, so that without a centre mark nothing is handed on
 * Assumes  a flat round end, centre mark in its middle
 * Fails    with the reason: nothing round, no centre mark in it, several that contradict each other, too near to the border
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { AssistSight, EndQuestion, FailureOf } from './assist-sight.ts';
import { type CentreMark, explainedAt, fitCentreMark } from './fit-centre-mark.ts';
import type { Gray } from './gray.ts';
import { isInPicture } from './level-at.ts';
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
/** Below it spots of rust are taken for marks. */
const LEAST_EXPLAINED = { 'clevis-pin': 0.8, 'camshaft-end': 0.84 } as const;
const RIVAL = 0.1;
/** Of the hand's uncertainty: what is worth a tap. */
const SURER = 0.8;
const LARGER = 1.25;
const NEARLY = 0.15;
/** Levels of 255: dirt is fainter. */
const LEAST_DEPTH = 14;
const LEAST_SHADOW = 10;
/** What rust about a mark does to its middle. Measured: docs/assists.md. */
const FLOOR_PX = 0.15;
const PER_U = 2.5;
/** Over the mark's radius: of it, and of what the fit leaves over. Of a cone seen at an angle often the dark side alone is seen. */
const PER_RADIUS = 0.08;
const PER_LEFT = 1;

type Marked = { readonly edge: RoundEdge; readonly mark: CentreMark };

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
  const marked = round
    .flatMap((edge): Marked[] => {
      const mark = markIn(gray, edge, question);
      return mark ? [{ edge, mark }] : [];
    })
    .sort((a, b) => b.mark.explained - a.mark.explained);
  const best = marked[0];
  return best ? byMark(best, marked, sigmaPx) : fail({ code: 'disc/no-centre-mark' });
}

function byMark(
  { mark }: Marked,
  all: readonly Marked[],
  handSigmaPx: number,
): Result<AssistSight, FailureOf<'disc'>> {
  const rival = all.find(
    (other) =>
      other.mark.explained > mark.explained - RIVAL &&
      apart(other.mark.placePx, mark.placePx) > mark.radiusPx,
  );
  if (rival) return fail({ code: 'disc/two-ways', apartPx: apart(rival.mark.placePx, mark.placePx) });
  const { uPx, radiusPx, explained } = mark;
  const sigmaPx = Math.hypot(
    PER_U * uPx,
    FLOOR_PX,
    PER_RADIUS * radiusPx,
    PER_LEFT * (1 - explained) * radiusPx,
  );
  if (sigmaPx > SURER * handSigmaPx) return fail({ code: 'disc/no-surer', sigmaPx });
  return ok({ marks: [{ placePx: mark.placePx, sigmaPx, readingMm: null }] });
}

function markIn(
  gray: Gray,
  { centre, longPx }: RoundEdge,
  { of, placePx, sigmaPx }: OneEnd,
): CentreMark | null {
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
  const clear = marks.filter(
    (mark) =>
      mark.explained > LEAST_EXPLAINED[of] &&
      mark.depth > LEAST_DEPTH &&
      mark.shadow > LEAST_SHADOW &&
      apart(mark.placePx, placePx) < 1 + 2.7 * sigmaPx &&
      apart(mark.placePx, centre) < 1.2 * reach &&
      mark.radiusPx < 0.33 * longPx,
  );
  return wholeMark(clear.sort((a, b) => b.explained - a.explained));
}

/** The dark half of a mark, taken for a smaller one, lies within the whole: then that counts. */
function wholeMark(clear: readonly CentreMark[]): CentreMark | null {
  const best = clear[0];
  if (!best) return null;
  const whole = clear
    .filter(
      (mark) =>
        mark.radiusPx > LARGER * best.radiusPx &&
        apart(mark.placePx, best.placePx) < mark.radiusPx &&
        mark.explained > best.explained - NEARLY,
    )
    .sort((a, b) => b.explained - a.explained)[0];
  return whole ?? best;
}
