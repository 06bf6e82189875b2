/**
 * From a track to the views that are measured: the seed's own, one of the other state, and side views.
 *
 * Model    travel in the seed's pixels -> phases -> of all applications the one with the longest travel (the safe side) -> a frame in
 *          the middle of its plateau, ties that both plateaus show, side frames -> adjusted once -> the pin's mean place over the plateau,
 *          in mm, seen in that frame. Where millimetres tell another one to be the longest, that one is taken
 * Assumes  the seed frame is at rest in its state
 * Fails    ClipFailure; MeasurementFailure where the marks and references of the seed give no measurement
 */
import { assert, fail, ok, type Result } from '../basics/result.ts';
import type { Mark } from '../marks/mark.ts';
import { placeAt, sharpestPlace, type Track, type TrackPoint } from '../marks/track.ts';
import { BRAKE_STATES, type View } from '../marks/view.ts';
import type { ClipFailure, Phase } from './clip-measurement.ts';
import { longestOf, plateausOf, restsThere, seedElsewhere } from './clip-plateaus.ts';
import { clipTravel } from './clip-travel.ts';
import { followedMarks, frameView, tieMarks, withCarriedHands } from './followed-marks.ts';
import { framePoses, type Poses } from './frame-poses.ts';
import { meanPins } from './mean-pins.ts';
import type { MeasureInput, MeasurementFailure } from './measurement.ts';
import { phasesOf, type TravelPoint } from './phases.ts';
import { restingPart } from './resting-part.ts';
import { sideFrames } from './side-frames.ts';
import { soundMarks } from './sound-marks.ts';
import { LEAST_TIES, spreadTies } from './spread-ties.ts';
import { seedFrame, stillsOf } from './still-motion.ts';

export type ClipViews = { readonly views: readonly View[]; readonly sideViews: readonly View[] };

/** Of the rod from face to pin: no application is so short. */
const LEAST_TRAVEL = 0.05;
const MOST_SIDE_VIEWS = 12;
/** Noise of what is followed lasts for half a second or so, and a rest is not much longer: its side views are no whole witnesses each. By how much
 * theirs is wider, tried on simulated clips (docs/measurement.md). */
const LASTING = 1.3;
/** Frames of a plateau that are looked at for side views. */
const MOST_CANDIDATES = 60;
/** Of the still things that the best frame of a plateau shows. */
const SEEN_SHARE = 0.7;

export function clipViews(
  input: MeasureInput,
  track: Track,
): Result<ClipViews, ClipFailure | MeasurementFailure> {
  const capture = input.captures.find(({ id }) => id === track.captureId);
  assert(capture?.clip, 'a track is of a clip');
  const travel = clipTravel(track, capture.clip.ticksPerSecond);
  if (!travel.ok) return travel;
  const { points, rodPx } = travel.value;
  const phases = phasesOf(points, LEAST_TRAVEL * rodPx);
  if (!phases.ok) return phases;
  const plateaus = plateausOf(phases.value, points, track);
  if (!plateaus.ok) return plateaus;
  const { own, others } = plateaus.value;
  const made = viewsOf(input, track, points, [own, others[0]]);
  if (!made.ok) return made;
  if (!restsThere(made.value.poses, own, seedFrame(track))) return seedElsewhere(phases.value, track);
  const longest = longestOf(made.value.poses, own, others);
  const last = longest === others[0] ? made : viewsOf(input, track, points, [own, longest]);
  return last.ok ? ok(last.value.made) : last;
}

function viewsOf(
  input: MeasureInput,
  track: Track,
  points: readonly TravelPoint[],
  rests: readonly [own: Phase, other: Phase],
): Result<{ readonly made: ClipViews; readonly poses: Poses }, ClipFailure | MeasurementFailure> {
  const seedView = input.views.find(({ state }) => state === track.state);
  assert(seedView, 'a track is of a view');
  const [own, other] = [restingPart(rests[0]), restingPart(rests[1])];

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
    const marks = [...followedMarks(track, frame, bySeed, ofState), ...tieMarks(track, frame, ties)];
    const wider = marks.map((mark) => ({ ...mark, sigmaPx: LASTING * mark.sigmaPx }));
    return frameView(track, frame, isOwn ? track.state : otherState, wider);
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
  const { adjustment } = sound.value;
  const poses = framePoses(adjustment, track);
  const means = meanPins(adjustment, track, poses, other, middle);
  if (!means.ok) return means;
  const asMean = (mark: Mark): Mark => {
    const mean = means.value.get(mark.followedFrom ?? mark.carriedFrom ?? '');
    if (mark.kind !== 'clevis-pin' || !mean) return mark;
    return { ...mark, ...mean, ...(mark.carriedFrom === undefined ? {} : { sigmaPx: mark.sigmaPx }) };
  };
  const { views: soundViews, sideViews: soundSideViews } = sound.value.input;
  const withMeans = soundViews.map((view) =>
    view.state === otherState ? { ...view, marks: view.marks.map(asMean) } : view,
  );
  return ok({ made: { views: withMeans, sideViews: soundSideViews }, poses });
}

const isOfCorrection =
  ({ corrections }: Track) =>
  ({ markId }: TrackPoint) =>
    corrections.some(({ marks }) => marks.some(({ id }) => id === markId));

type Part = ReturnType<typeof restingPart>;

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
