/**
 * From a track to the views that are measured: the seed's own, one of the other state, and side views.
 *
 * Model    travel in the seed's pixels -> phases -> of all applications the one with the longest travel (the safe side) -> a frame in
 *          the middle of its plateau, ties that both plateaus show, side frames -> adjusted once -> the pin's mean place over the plateau,
 *          in mm, seen in that frame
 * Assumes  the seed frame is at rest in its state
 * Fails    ClipFailure; MeasurementFailure where the marks and references of the seed give no measurement
 */
import type { Adjustment } from '../adjustment/adjustment.ts';
import { project } from '../adjustment/camera.ts';
import { transformed } from '../adjustment/pose.ts';
import { assert, fail, ok, type Result } from '../basics/result.ts';
import { IDENTITY3 } from '../basics/rotation.ts';
import type { Mark } from '../marks/mark.ts';
import { placeAt, sharpestPlace, type Track, type TrackPoint } from '../marks/track.ts';
import { BRAKE_STATES, type View } from '../marks/view.ts';
import type { ClipFailure, Phase } from './clip-measurement.ts';
import { clipTravel } from './clip-travel.ts';
import { followedMarks, frameView, tieMarks, withCarriedHands } from './followed-marks.ts';
import { framePoses } from './frame-poses.ts';
import type { MeasureInput, MeasurementFailure } from './measurement.ts';
import { phasesOf, type TravelPoint } from './phases.ts';
import { plateauMean } from './plateau-mean.ts';
import { restingPart } from './resting-part.ts';
import { sideFrames } from './side-frames.ts';
import { soundMarks } from './sound-marks.ts';
import { LEAST_TIES, spreadTies } from './spread-ties.ts';
import { seedFrame, stillsOf } from './still-motion.ts';

export type ClipViews = { readonly views: readonly View[]; readonly sideViews: readonly View[] };

/** Of the rod from face to pin: no application is so short. */
const LEAST_TRAVEL = 0.05;
const MOST_SIDE_VIEWS = 8;
/** Frames of a plateau that are looked at for side views. */
const MOST_CANDIDATES = 60;
/** Of the still things that the best frame of a plateau shows. */
const SEEN_SHARE = 0.7;
/** What is followed from one light into another is off by as much in all frames of a plateau: docs/tracking.md. */
const PLATEAU_SIGMA_PX = 0.1;

export function clipViews(
  input: MeasureInput,
  track: Track,
): Result<ClipViews, ClipFailure | MeasurementFailure> {
  const seedView = input.views.find(({ state }) => state === track.state);
  const capture = input.captures.find(({ id }) => id === track.captureId);
  assert(seedView && capture?.clip, 'a track is of a clip and of a view');
  const travel = clipTravel(track, capture.clip.ticksPerSecond);
  if (!travel.ok) return travel;
  const { points, rodPx } = travel.value;
  const phases = phasesOf(points, LEAST_TRAVEL * rodPx);
  if (!phases.ok) return phases;
  const plateaus = plateausOf(phases.value, points, track);
  if (!plateaus.ok) return plateaus;
  const [own, other] = [restingPart(plateaus.value.own), restingPart(plateaus.value.other)];

  const seed = seedFrame(track);
  const middle = middleFrame(track, points, other);
  const all = [own, other].map((part) => framesOf(part, MOST_CANDIDATES));
  const frames = all.flatMap((some, i) => withTape(track, some, i === 0 ? own : other));
  const ties = spreadTies(track, frames, [seed, middle]);
  if (ties.length < LEAST_TIES)
    return fail({ code: 'clip/few-still', found: ties.length, needed: LEAST_TIES });
  const bySeed = { ...seedView, marks: seedView.marks.filter(({ placedBy }) => placedBy !== 'tracker') };
  const otherState = track.state === 'released' ? 'applied' : 'released';
  const kinds = ['clevis-pin', 'tape-graduation'] as const;
  const taped = sideFrames(track, frames, [seed, middle], MOST_SIDE_VIEWS);
  const more = sideFrames(track, all.flat(), [seed, middle, ...taped], MOST_SIDE_VIEWS - taped.length);
  const sideViews = [...taped, ...more].map((frame) => {
    const isOwn = frame >= own.from && frame <= own.to;
    // Where the arm has turned, what was marked beside the camshaft's centre has gone about it.
    const ofState = isOwn ? ([...kinds, 'camshaft-end'] as const) : kinds;
    return frameView(track, frame, isOwn ? track.state : otherState, [
      ...followedMarks(track, frame, bySeed, ofState),
      ...tieMarks(track, frame, ties),
    ]);
  });
  const otherView = frameView(track, middle, otherState, [
    ...followedMarks(track, middle, bySeed, ['chamber-face', ...kinds]),
    ...tieMarks(track, middle, ties),
  ]);
  // What was followed from another frame than the seed, too, ties that frame's spot to this one.
  const besides = followedMarks(
    { ...track, points: track.points.filter(isOfCorrection(track)) },
    seed,
    bySeed,
    ['chamber-face', 'clevis-pin'],
  );
  const ownView = { ...bySeed, marks: [...bySeed.marks, ...besides, ...tieMarks(track, seed, ties)] };
  const [otherCarried, ownCarried, ...sideCarried] = withCarriedHands(
    [otherView, ownView, ...sideViews],
    track,
  ) as readonly [View, View, ...View[]];
  const views = [ownCarried, otherCarried, ...input.views.filter(({ state }) => state === 'pulled')];
  const inOrder = BRAKE_STATES.flatMap((state) => views.filter((view) => view.state === state));
  const sound = soundMarks({ ...input, views: inOrder, sideViews: sideCarried });
  if (!sound.ok) return sound;
  const means = meanPins(sound.value.adjustment, track, other, middle);
  if (!means.ok) return means;
  const asMean = (mark: Mark): Mark => {
    const mean = means.value.get(mark.followedFrom ?? mark.carriedFrom ?? '');
    if (mark.kind !== 'clevis-pin' || !mean) return mark;
    return { ...mark, ...mean, ...(mark.carriedFrom === undefined ? {} : { sigmaPx: mark.sigmaPx }) };
  };
  const { views: soundViews, sideViews: soundSideViews } = sound.value.input;
  return ok({
    views: soundViews.map((view) =>
      view.state === otherState ? { ...view, marks: view.marks.map(asMean) } : view,
    ),
    sideViews: soundSideViews,
  });
}

const isOfCorrection =
  ({ corrections }: Track) =>
  ({ markId }: TrackPoint) =>
    corrections.some(({ marks }) => marks.some(({ id }) => id === markId));

type Part = ReturnType<typeof restingPart>;

/** The plateau that the seed is in, and that of the other state with the longest travel from it. */
function plateausOf(
  phases: readonly Phase[],
  points: readonly TravelPoint[],
  track: Track,
): Result<{ readonly own: Phase; readonly other: Phase }, ClipFailure> {
  const kind = track.state === 'released' ? 'released' : 'held';
  const seed = seedFrame(track);
  const at = phases.find(({ from, to }) => from <= seed && seed <= to) ?? null;
  if (at?.kind !== kind)
    return fail({ code: 'clip/seed-elsewhere', state: track.state, phase: at?.kind ?? null });
  const others = phases.filter((phase) => phase.kind === (kind === 'held' ? 'released' : 'held'));
  const travelOf = ({ from, to }: Phase) => {
    const inside = points.filter(({ frame }) => frame >= from && frame <= to);
    return inside.reduce((sum, { travel }) => sum + travel, 0) / inside.length;
  };
  const own = travelOf(at);
  const [first, ...rest] = others;
  if (!first) return fail({ code: 'clip/one-state', phase: kind });
  const farther = (a: Phase, b: Phase) => (Math.abs(travelOf(b) - own) > Math.abs(travelOf(a) - own) ? b : a);
  return ok({ own: at, other: rest.reduce(farther, first) });
}

/** Of the frames that show pin and face and most that stands still, the one nearest to the plateau's mean. */
function middleFrame(track: Track, points: readonly TravelPoint[], { from, to }: Part): number {
  const inside = points
    .filter(({ frame }) => frame >= from && frame <= to)
    .map((point) => ({
      ...point,
      seen: stillsOf(track).filter((still) => placeAt(still, point.frame)).length,
      faced: sharpestPlace(track, 'chamber-face', point.frame) !== null,
    }));
  const most = Math.max(...inside.map(({ seen }) => seen));
  const mean = inside.reduce((sum, { travel }) => sum + travel, 0) / inside.length;
  const fit = inside.filter(({ seen, faced }) => faced && seen >= SEEN_SHARE * most);
  const taped = fit.filter(({ frame }) => showsTape(track, frame));
  const off = (point: TravelPoint) => Math.abs(point.travel - mean) + point.u;
  const pool = [taped, fit, inside].find(({ length }) => length > 0) as typeof inside;
  const best = pool.reduce((a, b) => (off(b) < off(a) ? b : a));
  return best.frame;
}

/** Of a plateau the frames in which the tape was looked for and seen, where there are such; else those given. */
function withTape(track: Track, frames: readonly number[], { from, to }: Part): readonly number[] {
  const seen = Array.from({ length: to - from + 1 }, (_, i) => from + i).filter((frame) =>
    showsTape(track, frame),
  );
  return seen.length > 0 ? seen : frames;
}

const LEAST_GRADUATIONS = 3;

const showsTape = ({ points }: Track, frame: number): boolean =>
  points.filter((point) => point.kind === 'tape-graduation' && placeAt(point, frame)).length >=
  LEAST_GRADUATIONS;

function framesOf({ from, to }: Part, most: number): readonly number[] {
  const count = to - from + 1;
  const every = Math.max(1, Math.ceil(count / most));
  return Array.from({ length: Math.ceil(count / every) }, (_, i) => from + i * every);
}

type MeanPlace = Pick<Mark, 'xPx' | 'yPx' | 'sigmaPx'>;

/** Of each spot of the pin that the middle frame shows, by the mark that it was followed from. */
function meanPins(
  adjustment: Adjustment,
  track: Track,
  part: Part,
  middle: number,
): Result<ReadonlyMap<string, MeanPlace>, ClipFailure> {
  const poses = framePoses(adjustment, track);
  const means = new Map<string, MeanPlace>();
  for (const point of track.points) {
    if (point.kind !== 'clevis-pin' || !placeAt(point, middle)) continue;
    const mean = meanPin(adjustment, poses, point, part, middle);
    if (!mean.ok) return mean;
    means.set(point.markId, mean.value);
  }
  return ok(means);
}

/** Where a followed spot of the pin would be in the middle frame if it were at its mean place over the frames of the plateau that show it. */
function meanPin(
  { problem, layout, best }: Adjustment,
  poses: ReturnType<typeof framePoses>,
  point: TrackPoint,
  { from, to }: Part,
  middle: number,
): Result<MeanPlace, ClipFailure> {
  const pins = poses.flatMap((pose, frame) =>
    pose?.pin && frame >= from && frame <= to && placeAt(point, frame) ? [pose.pin] : [],
  );
  const at = poses[middle];
  if (pins.length === 0 || !at)
    return fail({ code: 'clip/pin-lost', seen: pins.length, frames: to - from + 1 });
  const mean = (value: (pin: (typeof pins)[number]) => number, i: number) =>
    plateauMean(
      pins.map(value),
      pins.map(({ covariance }) => Math.sqrt(covariance[i] as number)),
    );
  const [x, y] = [mean(({ xMm }) => xMm, 0), mean(({ yMm }) => yMm, 3)];
  const offset = layout.offsets.get(point.markId);
  const [ox, oy] = offset === undefined ? [0, 0] : [best.x[offset] as number, best.x[offset + 1] as number];
  const z = problem.hand * (best.x[layout.pinDepth] as number);
  const camera = layout.cameras[problem.views[0]?.camera ?? 0] as number;
  const seen = (dx: number, dy: number) =>
    project(
      best.x,
      camera,
      transformed({ ...at.pose, jacobian: IDENTITY3 }, [x.value + ox + dx, y.value + oy + dy, z]).camera,
    );
  const place = seen(0, 0);
  const [alongX, alongY] = [seen(x.u, 0), seen(0, y.u)];
  const offX = Math.hypot(alongX.u - place.u, alongX.v - place.v);
  const offY = Math.hypot(alongY.u - place.u, alongY.v - place.v);
  return ok({
    xPx: place.u,
    yPx: place.v,
    sigmaPx: Math.hypot(Math.max(offX, offY), PLATEAU_SIGMA_PX),
  });
}
