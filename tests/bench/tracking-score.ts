/** A track against the truth. The seed mark's own offset is taken off: it is the hand's, and the same in every frame. */
import { readFileSync } from 'node:fs';
import { type FollowedKind, placeAt, type Track } from '../../src/marks/track.ts';
import type { ClipTruth, Px, StudyClip, TruthPose } from './tracking-clip.ts';

export type Errors = {
  /** Both coordinates of each frame seen, px. */
  readonly px: readonly number[];
  /** The same, over the stated standard uncertainty. */
  readonly standardised: readonly number[];
  /** Length of the error in each frame; null in a gap and in the seed. */
  readonly lengthPx: readonly (number | null)[];
};

export type GapCount = {
  readonly hidden: number;
  readonly hiddenFound: number;
  /** Hidden by truth, yet a place is given, more than 2 px off. */
  readonly hiddenWrong: number;
  /** The pin is seen and not smeared by 3 px, yet nothing is given. */
  readonly falseGaps: number;
  /** Frames smeared by 3 px and more, and the gaps among them. */
  readonly blurred: number;
  readonly blurredGaps: number;
};

export type Score = {
  readonly pin: Errors;
  readonly camshaft: Errors;
  /** The camshaft's end again, its mark's offset turned with the arm: of the following alone. */
  readonly camshaftTurned: Errors;
  readonly face: Errors | null;
  readonly tape: Errors | null;
  readonly stills: Errors | null;
  readonly gaps: GapCount;
};

const SEEN = 0.95;
const HIDDEN = 0.3;
const SMEARED_PX = 3;

export function scored(clip: StudyClip, track: Track): Score {
  const { frames } = clip.truth;
  const ofKind = (kind: FollowedKind, name: keyof ClipTruth['frames'][number]['points']) =>
    errorsOf(clip, track, kind, (i) => frames[i]?.points[name] ?? null);
  const pin = ofKind('clevis-pin', 'clevisPin');
  return {
    pin,
    camshaft: ofKind('camshaft-end', 'camshaftEnd'),
    camshaftTurned: errorsOf(
      clip,
      track,
      'camshaft-end',
      (i) => frames[i]?.points.camshaftEnd ?? null,
      (i) => armTurnRad(clip, i),
    ),
    face: faceErrors(clip, track),
    tape: tapeErrors(clip, track),
    stills: stillErrors(clip, track),
    gaps: gapsOf(clip, pin),
  };
}

/** Wherever a place of the seed frame goes by truth: null where that is not known. */
type Where = (index: number) => Px | null;

function armTurnRad({ truth, seedIndex }: StudyClip, i: number): number {
  const way = (index: number) => {
    const points = truth.frames[index]?.points;
    if (!points) return 0;
    const [[px, py], [cx, cy]] = [points.clevisPin, points.camshaftEnd];
    return Math.atan2(py - cy, px - cx);
  };
  return way(i) - way(seedIndex);
}

function errorsOf(
  clip: StudyClip,
  track: Track,
  kind: FollowedKind,
  where: Where,
  turnRad: (index: number) => number = () => 0,
): Errors {
  const point = track.points.find((each) => each.kind === kind);
  if (!point) return { px: [], standardised: [], lengthPx: [] };
  return pointErrors(clip, track, point, where, turnRad);
}

function pointErrors(
  clip: StudyClip,
  track: Track,
  point: Track['points'][number],
  where: Where,
  turnRad: (index: number) => number = () => 0,
): Errors {
  const seedPlace = placeAt(point, clip.seedIndex - track.firstIndex);
  const seedTruth = where(clip.seedIndex);
  if (!seedPlace || !seedTruth) return { px: [], standardised: [], lengthPx: [] };
  const [ox, oy] = [seedPlace.xPx - seedTruth[0], seedPlace.yPx - seedTruth[1]];
  const each = track.timeTicks.map((_, i) => {
    const place = placeAt(point, i);
    const truth = where(track.firstIndex + i);
    if (!place || !truth || track.firstIndex + i === clip.seedIndex) return null;
    const turn = turnRad(track.firstIndex + i);
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    const [dx, dy] = [place.xPx - truth[0] - (c * ox - s * oy), place.yPx - truth[1] - (s * ox + c * oy)];
    return { dx, dy, sigma: place.sigmaPx };
  });
  const seen = each.flatMap((one) => (one ? [one] : []));
  return {
    px: seen.flatMap(({ dx, dy }) => [dx, dy]),
    standardised: seen.flatMap(({ dx, dy, sigma }) => [dx / sigma, dy / sigma]),
    lengthPx: each.map((one) => one && Math.hypot(one.dx, one.dy)),
  };
}

/** The rod leaves the face at another place as it tilts; what is followed is the seed's place on the chamber. */
function faceErrors(clip: StudyClip, track: Track): Errors | null {
  const { truth } = clip;
  const [view] = truth.views;
  if (!view || !isTruePerspective(truth)) return null;
  const { mm } = view.points.chamberFace;
  return errorsOf(clip, track, 'chamber-face', (i) => seenAt(view, truth.frames[i]?.cameraFromChamber, mm));
}

function tapeErrors(clip: StudyClip, track: Track): Errors | null {
  const { truth, marks } = clip;
  const [view] = truth.views;
  if (!view || !isTruePerspective(truth)) return null;
  const all = track.points.flatMap((point) => {
    const mark = marks.find(({ id }) => id === point.markId);
    if (point.kind !== 'tape-graduation' || mark?.kind !== 'tape-graduation') return [];
    const at = view.points.tapeGraduations.find(
      ({ inches }) => Math.abs(25.4 * inches - mark.readingMm) < 0.1,
    );
    if (!at) return [];
    const where: Where = (i) => seenAt(view, truth.frames[i]?.cameraFromChamber, at.mm);
    return [pointErrors(clip, track, point, where)];
  });
  return all.length > 0 ? together(all) : null;
}

function together(all: readonly Errors[]): Errors {
  return {
    px: all.flatMap(({ px }) => px),
    standardised: all.flatMap(({ standardised }) => standardised),
    lengthPx: all.flatMap(({ lengthPx }) => lengthPx),
  };
}

const isTruePerspective = ({ spec }: ClipTruth) => spec.readout_s === 0 && !spec.steadied;

function gapsOf({ truth, seedIndex }: StudyClip, { lengthPx }: Errors): GapCount {
  const count = (of: (frame: ClipTruth['frames'][number], errorPx: number | null) => boolean) =>
    truth.frames.filter((frame, i) => i !== seedIndex && of(frame, lengthPx[i] ?? null)).length;
  const smeared = (frame: ClipTruth['frames'][number]) => frame.pinBlurPx >= SMEARED_PX;
  return {
    hidden: count(({ pinVisible }) => pinVisible < HIDDEN),
    hiddenFound: count(({ pinVisible }, errorPx) => pinVisible < HIDDEN && errorPx === null),
    hiddenWrong: count(({ pinVisible }, errorPx) => pinVisible < HIDDEN && errorPx !== null && errorPx > 2),
    falseGaps: count((frame, errorPx) => frame.pinVisible > SEEN && !smeared(frame) && errorPx === null),
    blurred: count((frame) => frame.pinVisible > SEEN && smeared(frame)),
    blurredGaps: count((frame, errorPx) => frame.pinVisible > SEEN && smeared(frame) && errorPx === null),
  };
}

/**
 * Stills carried by the true poses with the piece of the scene that they lie on; of a clip whose pictures are true perspectives. A corner
 * at the edge of a near piece may belong to it though its middle shows what is behind: of the pieces about it the one counts that it goes with.
 */
function stillErrors(clip: StudyClip, track: Track): Errors | null {
  const { truth } = clip;
  const [view] = truth.views;
  if (!view || truth.patches.length === 0 || !isTruePerspective(truth)) return null;
  const ids = readFileSync(`${clip.folder}/ids.pgm`);
  const start = ids.length - view.widthPx * view.heightPx;
  const pieceAt = (x: number, y: number) => {
    const inside = x >= 0 && y >= 0 && x < view.widthPx && y < view.heightPx;
    return truth.patches[inside ? (ids[start + Math.floor(y) * view.widthPx + Math.floor(x)] ?? 255) : 255];
  };
  const all = track.points.flatMap((point) => {
    const seed = placeAt(point, clip.seedIndex - track.firstIndex);
    if (point.kind !== 'still' || !seed) return [];
    const { xPx, yPx } = seed;
    const pieces = new Set(AROUND.map(([x, y]) => pieceAt(xPx + x, yPx + y)).filter((piece) => piece?.still));
    const errors = [...pieces].flatMap((piece) => {
      if (!piece) return [];
      const mm = onPatch(view, [xPx, yPx], piece);
      return [pointErrors(clip, track, point, (i) => seenAt(view, truth.frames[i]?.cameraFromChamber, mm))];
    });
    return errors.sort((one, other) => rms(one.px) - rms(other.px)).slice(0, 1);
  });
  return together(all);
}

/** Of a still's place, within what is looked at about it. */
const AROUND: readonly Px[] = [
  [0, 0],
  ...Array.from(
    { length: 8 },
    (_, i): Px => [8 * Math.cos((i * Math.PI) / 4), 8 * Math.sin((i * Math.PI) / 4)],
  ),
];

type Vec = readonly [number, number, number];
type TruthView = ClipTruth['views'][number];

function seenAt({ focalPx, principalPx }: TruthView, pose: TruthPose | undefined, mm: Vec): Px | null {
  if (!pose) return null;
  const [x, y, z] = pose.map(([a, b, c, t]) => a * mm[0] + b * mm[1] + c * mm[2] + t) as [
    number,
    number,
    number,
  ];
  return [principalPx[0] + (focalPx * x) / z, principalPx[1] + (focalPx * y) / z];
}

/** Where the line of sight meets the patch's plane, chamber frame, mm. */
function onPatch(view: TruthView, [u, v]: Px, patch: ClipTruth['patches'][number]): Vec {
  const { focalPx, principalPx, cameraFromChamber: pose } = view;
  const ray: Vec = [(u - principalPx[0]) / focalPx, (v - principalPx[1]) / focalPx, 1];
  const turnedBack = (w: Vec): Vec =>
    [0, 1, 2].map((k) =>
      pose.reduce((sum, row, i) => sum + (row[k] ?? 0) * (w[i] ?? 0), 0),
    ) as unknown as Vec;
  const eye = turnedBack([-pose[0][3], -pose[1][3], -pose[2][3]]);
  const along = turnedBack(ray);
  const n = cross(patch.alongMm, patch.acrossMm);
  const away = dot(n, minus(patch.originMm, eye)) / dot(n, along);
  return [eye[0] + away * along[0], eye[1] + away * along[1], eye[2] + away * along[2]];
}

const dot = (a: Vec, b: Vec) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const minus = (a: Vec, b: Vec): Vec => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: Vec, b: Vec): Vec => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

export const rms = (values: readonly number[]) =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / Math.max(1, values.length));
export const worst = (values: readonly (number | null)[]) =>
  values.reduce<number>((a, b) => Math.max(a, b ?? 0), 0);
