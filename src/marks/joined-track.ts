/**
 * A track and what was followed from one frame more, where a person showed where things are.
 *
 * Model    between two frames marked by hand (anchors) there are two paths, the old one and the new one. They agree in a frame where they
 *          are no farther apart than both hands and both followings make (3 sigma): what lies between a path's own anchor and an agreeing
 *          frame is vouched for.
 *          1. A hand mark judges the path that runs through its frame: a path that is elsewhere there is dropped, back to where both agree
 *             or to its next gap.
 *          2. Where both are seen and agree, both stay: of two spots of one thing the adjustment learns how they lie to each other.
 *          3. Where they differ, the one that was never lost since its anchor stays; if that is so of both or of neither, none does.
 *          4. Where one is seen, it stays.
 *          Beyond the last anchor, an old path that the new hand mark confirms counts from there.
 * Assumes  a path goes wrong by leaps or after a gap, and does not creep: every frame is fitted to the seed's look (docs/tracking.md)
 * Fails    never; what is not vouched for becomes a gap
 */
import type { Mark } from './mark.ts';
import { type Correction, type FollowedPlace, placeAt, type Track, type TrackPoint } from './track.ts';

const FAR_OFF = 3;

/** marks: by hand, of the seed's view. followed: from the correction, one point for each of its marks, as long as the track. */
export function joinedTrack(
  before: Track,
  marks: readonly Mark[],
  correction: Correction,
  followed: readonly TrackPoint[],
): Track {
  const track = withoutCorrection(before, correction.frame.index);
  const hands = [...marks, ...[...track.corrections, correction].flatMap((each) => each.marks)];
  const sigmaOf = ({ markId }: TrackPoint) => hands.find(({ id }) => id === markId)?.sigmaPx ?? 0;
  const joined = followed.map((point) => {
    const olds = track.points.filter(({ kind }) => kind === point.kind);
    const at = correction.frame.index - track.firstIndex;
    return joinedPoints(olds, point, sigmaOf, { at, ...anchorsAbout(track, point.kind, at) });
  });
  const changed = new Map(joined.flatMap(({ olds }) => olds.map((old) => [old.markId, old] as const)));
  const isSeen = ({ xCentiPx }: TrackPoint) => xCentiPx.some((x) => x !== null);
  const moving = track.points
    .filter(({ kind }) => kind !== 'still')
    .map((point) => changed.get(point.markId) ?? point);
  const stills = track.points.filter(({ kind }) => kind === 'still');
  return {
    ...track,
    corrections: [...track.corrections, correction].sort((a, b) => a.frame.index - b.frame.index),
    points: [...[...moving, ...joined.map(({ point }) => point)].filter(isSeen), ...stills],
  };
}

/** Put right once more, a frame is what it was put to last. */
function withoutCorrection(track: Track, index: number): Track {
  const gone = track.corrections
    .filter(({ frame }) => frame.index === index)
    .flatMap(({ marks }) => marks.map(({ id }) => id));
  return {
    ...track,
    corrections: track.corrections.filter(({ frame }) => frame.index !== index),
    points: track.points.filter(({ markId }) => !gone.includes(markId)),
  };
}

/** Frames, counted from the track's first; null where there is none on that side. */
export type Anchors = { readonly before: number | null; readonly after: number | null };

/** The frames next to this one in which the kind was marked by hand. */
export function anchorsAbout(track: Track, kind: TrackPoint['kind'], at: number): Anchors {
  const marked = [
    track.seed.index,
    ...track.corrections
      .filter(({ marks }) => marks.some((mark) => mark.kind === kind))
      .map(({ frame }) => frame.index),
  ].map((index) => index - track.firstIndex);
  const [less, more] = [marked.filter((frame) => frame < at), marked.filter((frame) => frame > at)];
  return {
    before: less.length > 0 ? Math.max(...less) : null,
    after: more.length > 0 ? Math.min(...more) : null,
  };
}

type Joined = { readonly olds: readonly TrackPoint[]; readonly point: TrackPoint };

function joinedPoints(
  olds: readonly TrackPoint[],
  point: TrackPoint,
  sigmaOf: (point: TrackPoint) => number,
  { at, before, after }: Anchors & { readonly at: number },
): Joined {
  const last = point.xCentiPx.length - 1;
  const oldGone = new Set<number>();
  const newGone = new Set<number>();
  const frameOf = (frame: number): InFrame => {
    const place = placeAt(point, frame);
    const seen = olds.flatMap((old) => {
      const there = placeAt(old, frame);
      return there ? [{ place: there, handPx: sigmaOf(old) }] : [];
    });
    const agree = place !== null && seen.some((old) => isNear(old, { place, handPx: sigmaOf(point) }));
    return { hasOld: seen.length > 0, hasNew: place !== null, agree };
  };
  for (const side of [
    { step: -1, anchor: before, end: 0 },
    { step: 1, anchor: after, end: last },
  ]) {
    const count = Math.max(0, side.step * ((side.anchor ?? side.end) - at)) + 1;
    const frames = Array.from({ length: count }, (_, i) => at + side.step * i);
    const gone = goneOf(frames.map(frameOf), side.anchor !== null);
    for (const i of gone.old) oldGone.add(frames[i] as number);
    for (const i of gone.new) newGone.add(frames[i] as number);
  }
  // Past the next frame that was marked by hand, that mark's own path counts.
  for (let frame = 0; frame <= last; frame++)
    if (frame < (before ?? 0) || frame > (after ?? last)) newGone.add(frame);
  return { olds: olds.map((old) => without(old, oldGone)), point: without(point, newGone) };
}

type InFrame = { readonly hasOld: boolean; readonly hasNew: boolean; readonly agree: boolean };

/** frames: from the new anchor on, to the old one where there is one. What is dropped, by their places in the list. */
function goneOf(
  frames: readonly InFrame[],
  anchored: boolean,
): { readonly old: ReadonlySet<number>; readonly new: ReadonlySet<number> } {
  const end = frames.length - 1;
  const old = new Set<number>();
  const fresh = new Set<number>();
  const at = (i: number) => frames[i] as InFrame;
  const differs = (i: number) => at(i).hasOld && at(i).hasNew && !at(i).agree;
  if (differs(0))
    for (let i = 0; i < end + (anchored ? 0 : 1) && at(i).hasOld && !at(i).agree; i++) old.add(i);
  if (anchored && differs(end)) for (let i = end; i > 0 && at(i).hasNew && !at(i).agree; i--) fresh.add(i);
  const confirmed = at(0).agree;
  const newUnlost = (i: number) => frames.slice(0, i + 1).every(({ hasNew }) => hasNew);
  const oldUnlost = (i: number) =>
    anchored
      ? frames.slice(i).every(({ hasOld }) => hasOld)
      : confirmed && frames.slice(0, i + 1).every(({ hasOld }) => hasOld);
  for (const [i] of frames.entries()) {
    if (!differs(i) || old.has(i) || fresh.has(i) || i === 0 || (anchored && i === end)) continue;
    const [keepNew, keepOld] = [newUnlost(i), oldUnlost(i)];
    if (!keepOld || keepNew) old.add(i);
    if (!keepNew || keepOld) fresh.add(i);
  }
  return { old, new: fresh };
}

type Told = { readonly place: FollowedPlace; readonly handPx: number };

function isNear(a: Told, b: Told): boolean {
  const apartPx = Math.hypot(a.place.xPx - b.place.xPx, a.place.yPx - b.place.yPx);
  return apartPx <= FAR_OFF * Math.hypot(a.handPx, b.handPx, a.place.sigmaPx, b.place.sigmaPx);
}

function without(point: TrackPoint, gone: ReadonlySet<number>): TrackPoint {
  const left = (column: TrackPoint['xCentiPx']) =>
    column.map((value, frame) => (gone.has(frame) ? null : value));
  return {
    ...point,
    xCentiPx: left(point.xCentiPx),
    yCentiPx: left(point.yCentiPx),
    sigmaMilliPx: left(point.sigmaMilliPx),
  };
}
