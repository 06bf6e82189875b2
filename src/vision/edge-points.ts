/**
 * Points along a straight edge of a tape's blade that a hand pointed to: a plumb line, so where a lens bends it they must follow.
 *
 * Model    the line near the hand's point that most steps lie on (assist-tape-edge.ts); then windows along it, outwards from the
 *          middle and on past the graduations: a window's place is the mean of its steps beside where its two neighbours lead
 *          sigma: the steps' spread, those of CORRELATED columns as one, and FLOOR_PX for nicks, dirt and shadow
 * Assumes  the edge stands out from what is behind it; a lens bends it by less than a window's REACH_PX from one to the next
 * Fails    'tape/no-edge' where too few windows show it
 */
import { middleOf } from '../basics/middle.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import { onEdge } from './assist-lattice.ts';
import type { AssistQuestion, AssistSight, FailureOf, FoundMark } from './assist-sight.ts';
import { type Frame, levelsAcross, placeIn, stepsAcross, tapeEdge } from './assist-tape-edge.ts';
import type { Gray } from './gray.ts';
import { isInPicture } from './level-at.ts';
import type { Point } from './point.ts';

type EdgeQuestion = Extract<AssistQuestion, { readonly of: 'tape-edge' }>;
type Window = { readonly s: number; readonly t: number; readonly sigmaPx: number };

/** Over the marked length, and at most so many beyond either end: a hand or the case ends the blade. */
const WITHIN = 8;
const BEYOND = 4;
const COLUMNS = 24;
const REACH_PX = 2;
const LEAST_SEEN = 0.6;
const LEAST_WINDOWS = 6;
const CORRELATED = 3;
const FLOOR_PX = 0.1;
/** The other edge of a blade is 12 mm away, the ends of short strokes 2 mm. */
const REACH_MM = 1.5;
const LEAST_REACH_PX = 5;

export function findEdgePoints(
  gray: Gray,
  { fromPx, toPx, lengthMm, nearPx }: Omit<EdgeQuestion, 'of'>,
): Result<AssistSight, FailureOf<'tape'>> {
  const lengthPx = Math.hypot(toPx[0] - fromPx[0], toPx[1] - fromPx[1]);
  const along: Point = [(toPx[0] - fromPx[0]) / lengthPx, (toPx[1] - fromPx[1]) / lengthPx];
  const across: Point = [-along[1], along[0]];
  const aside = (nearPx[0] - fromPx[0]) * across[0] + (nearPx[1] - fromPx[1]) * across[1];
  const marked: Frame = { origin: placeIn({ origin: fromPx, along, across }, 0, aside), along, across };
  const reachPx = Math.max(LEAST_REACH_PX, (REACH_MM * lengthPx) / lengthMm);
  const edge = tapeEdge(gray, marked, lengthPx, reachPx);
  if (!edge.ok) return edge;
  const frame = onEdge(marked, edge.value, edge.value.lighter);
  const windows = followed(gray, frame, lengthPx);
  if (windows.length < LEAST_WINDOWS) return fail({ code: 'tape/no-edge', share: windows.length / WITHIN });
  return ok({
    marks: windows.map(
      ({ s, t, sigmaPx }): FoundMark => ({ placePx: placeIn(frame, s, t), sigmaPx, readingMm: null }),
    ),
  });
}

/** Outwards from the middle in both directions, until the edge is lost. */
function followed(gray: Gray, frame: Frame, lengthPx: number): readonly Window[] {
  const step = lengthPx / WITHIN;
  const middle = Math.floor(WITHIN / 2);
  const found: Window[] = [];
  for (const way of [1, -1] as const) {
    const behind = found.slice(0, 2);
    let [last, before] = way === 1 ? [undefined, undefined] : [behind[0], behind[1]];
    const end = way === 1 ? WITHIN + BEYOND : -BEYOND - 1;
    let lost = 0;
    for (let i = way === 1 ? middle : middle - 1; i !== end; i += way) {
      const led = last && before ? 2 * last.t - before.t : (last?.t ?? 0);
      const window = windowAt(gray, frame, { from: i * step, to: (i + 1) * step }, led);
      // One may be covered; past the marked part the first that is ends it.
      if (!window && (i < 0 || i >= WITHIN || ++lost > 1)) break;
      if (!window) continue;
      [before, last] = [last, window];
      found.push(window);
    }
  }
  return found.sort((a, b) => a.s - b.s);
}

function windowAt(
  gray: Gray,
  frame: Frame,
  { from, to }: { readonly from: number; readonly to: number },
  led: number,
): Window | null {
  const half = Math.ceil(Math.abs(led) + REACH_PX) + 3;
  const places: number[] = [];
  for (let column = 0; column < COLUMNS; column++) {
    const s = from + ((to - from) * (column + 0.5)) / COLUMNS;
    if (!isInPicture(gray, ...placeIn(frame, s, led), half)) continue;
    const near = stepsAcross(levelsAcross(gray, frame, s, half), s, half, 1).filter(
      ({ t }) => Math.abs(t - led) < REACH_PX,
    );
    const steepest = near.sort((a, b) => b.rise - a.rise)[0];
    if (steepest) places.push(steepest.t);
  }
  if (places.length < LEAST_SEEN * COLUMNS) return null;
  const median = middleOf(places) as number;
  const kept = places.filter((t) => Math.abs(t - median) < 1);
  if (kept.length < LEAST_SEEN * COLUMNS) return null;
  const t = kept.reduce((sum, each) => sum + each, 0) / kept.length;
  const rms = Math.sqrt(kept.reduce((sum, each) => sum + (each - t) ** 2, 0) / kept.length);
  return { s: (from + to) / 2, t, sigmaPx: Math.hypot(rms / Math.sqrt(kept.length / CORRELATED), FLOOR_PX) };
}
