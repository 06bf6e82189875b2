/**
 * What every frame of a followed clip says: stroke and arm angle over time, applications, times, gaps.
 *
 * Model    adjusted once from the views; pose of the camera and place of the pin in each frame (frame-pose.ts);
 *          stroke  px less the released px of the adjustment
 *          angle   between (-R, -py) and (cx - px, cy - py), as in quantities.ts, from the frame's own px, py
 *          u of a frame is of that frame alone; what all share (scale, direction of view, depths) is in the applications' U
 * Assumes  the views came of this track (clip-views.ts)
 * Fails    MeasurementFailure, ClipFailure
 */
import { adjust } from '../adjustment/adjust.ts';
import type { Adjustment } from '../adjustment/adjustment.ts';
import { assert, fail, ok, type Result } from '../basics/result.ts';
import { MM_PER_INCH } from '../basics/units.ts';
import { sharpestPlace, type Track } from '../marks/track.ts';
import { applicationsOf } from './applications.ts';
import { cameraSwayMm } from './camera-sway.ts';
import type { ClipFailure, ClipMeasurement, ClipWarning, CurvePoint } from './clip-measurement.ts';
import { picturedOf } from './clip-plateaus.ts';
import type { FramePose } from './frame-pose.ts';
import { framePoses } from './frame-poses.ts';
import { measurementOf } from './measure.ts';
import type { Measured } from './measured.ts';
import type { MeasureInput, MeasurementFailure } from './measurement.ts';
import { phasesOf } from './phases.ts';
import { problemFromViews } from './problem-from-views.ts';
import { squarePassing } from './square-passing.ts';
import { strokeDrawingInFrame } from './stroke-drawing.ts';

/** No application is so short, mm. */
const LEAST_TRAVEL_MM = 5;
/** From here on what stands still does not stand still, or the picture is not the picture of a camera. */
const WARPED = 2;
/** U that a stroke should have: 1/32 in. A hand's width to and fro reaches it with a tape: docs/measurement.md. */
const WANTED_MM = MM_PER_INCH / 32;
const ENOUGH_SWAY_MM = 60;
/** A phone films 24 to 60 frames a second; more is filmed to be shown slowly, and which of both the file's clock tells is open. */
const USUAL_FRAMES_PER_S = 100;
/** Applications of one brake that differ by more than this are worth a word: 1/16 in. */
const DIFFER_MM = 1.6;

export function strokeOverTime(
  input: MeasureInput,
  track: Track,
): Result<ClipMeasurement, ClipFailure | MeasurementFailure> {
  const problem = problemFromViews(input);
  if (!problem.ok) return problem;
  const adjusted = adjust(problem.value);
  if (!adjusted.ok) return fail({ code: 'measurement/no-solution' });
  const adjustment = adjusted.value;
  const measurement = measurementOf(input, adjustment);
  if (!measurement.ok) return measurement;
  const ticksPerSecond = input.captures.find(({ id }) => id === track.captureId)?.clip?.ticksPerSecond;
  assert(ticksPerSecond !== undefined, 'a track is of a clip');
  const poses = framePoses(adjustment, track);
  const curve = poses.map((pose, i) =>
    curvePoint(adjustment, pose, (track.timeTicks[i] as number) / ticksPerSecond),
  );
  const points = curve.flatMap(({ timeS, stroke }, frame) =>
    stroke ? [{ frame, timeS, travel: stroke.value, u: stroke.u }] : [],
  );
  const phases = phasesOf(points, LEAST_TRAVEL_MM);
  if (!phases.ok) return phases;
  const applications = applicationsOf(curve, phases.value, measurement.value.strokeMm);
  const strokes = applications.map(({ strokeMm }) => strokeMm);
  const spreadMm =
    strokes.length > 1
      ? {
          value:
            Math.max(...strokes.map(({ value }) => value)) - Math.min(...strokes.map(({ value }) => value)),
          u: Math.hypot(...applications.map(({ uFramesMm }) => uFramesMm)),
        }
      : null;
  const stillScatter = scatterOf(poses);
  return ok({
    curve,
    drawings: poses.map((pose) => strokeDrawingInFrame(adjustment, track.state, pose)),
    applications,
    ...picturedOf(input.views, track, applications),
    spreadMm,
    square: squarePassing(curve),
    stillScatter,
    marked: [track.seed, ...track.corrections.map(({ frame }) => frame)].map(
      ({ index }) => index - track.firstIndex,
    ),
    gaps: gapsOf(track),
    warnings: [
      ...swayWarning(input, measurement.value.strokeMm, poses),
      ...warningsOf(curve, stillScatter, spreadMm),
    ],
  });
}

function curvePoint({ best, layout }: Adjustment, pose: FramePose | null, timeS: number): CurvePoint {
  if (!pose?.pin) return { timeS, stroke: null, armAngleRad: null };
  const at = (index: number) => best.x[index] as number;
  const { xMm, yMm, covariance } = pose.pin;
  const [xx, xy, , yy] = covariance as [number, number, number, number];
  const released = at(layout.pins.released as number);
  const stroke = { value: xMm - released, u: Math.sqrt(xx) };
  if (layout.camshaft === null) return { timeS, stroke, armAngleRad: null };
  const rod = [-(released + at(layout.rodInner)), -yMm] as const;
  const arm = [at(layout.camshaft) - xMm, at(layout.camshaft + 1) - yMm] as const;
  const crossed = rod[0] * arm[1] - rod[1] * arm[0];
  const value = Math.atan2(Math.abs(crossed), rod[0] * arm[0] + rod[1] * arm[1]);
  const sense = crossed < 0 ? -1 : 1;
  const [rodSquare, armSquare] = [rod[0] ** 2 + rod[1] ** 2, arm[0] ** 2 + arm[1] ** 2];
  const byX = (-sense * -arm[1]) / armSquare;
  const byY = -((-sense * rod[0]) / rodSquare) - (sense * arm[0]) / armSquare;
  const variance = byX * byX * xx + 2 * byX * byY * xy + byY * byY * yy;
  return { timeS, stroke, armAngleRad: { value, u: Math.sqrt(Math.max(0, variance)) } };
}

function scatterOf(poses: readonly (FramePose | null)[]): number {
  const seen = poses.flatMap((pose) => pose ?? []);
  const sum = (of: (pose: FramePose) => number) => seen.reduce((total, pose) => total + of(pose), 0);
  const free = sum(({ degreesOfFreedom }) => degreesOfFreedom);
  return free > 0 ? Math.sqrt(sum(({ chiSquare }) => chiSquare) / free) : 1;
}

function gapsOf(track: Track): ClipMeasurement['gaps'] {
  const kinds = new Set(track.points.map(({ kind }) => kind));
  return (['clevis-pin', 'chamber-face', 'camshaft-end'] as const)
    .filter((kind) => kinds.has(kind))
    .flatMap((kind) => {
      const gaps: { kind: typeof kind; from: number; to: number }[] = [];
      for (const frame of track.timeTicks.keys()) {
        if (sharpestPlace(track, kind, frame)) continue;
        const last = gaps.at(-1);
        if (last && last.to === frame - 1) last.to = frame;
        else gaps.push({ kind, from: frame, to: frame });
      }
      return gaps;
    });
}

function swayWarning(
  { references }: MeasureInput,
  { U95 }: Measured,
  poses: readonly (FramePose | null)[],
): readonly ClipWarning[] {
  if (!references.tape || references.clampBand || references.target || U95 <= WANTED_MM) return [];
  const swayMm = cameraSwayMm(poses.flatMap((each) => each?.pose ?? []));
  return swayMm < ENOUGH_SWAY_MM ? [{ code: 'clip/little-sway', swayMm }] : [];
}

function warningsOf(
  curve: readonly CurvePoint[],
  stillScatter: number,
  spreadMm: ClipMeasurement['spreadMm'],
): readonly ClipWarning[] {
  const warnings: ClipWarning[] = [];
  if (stillScatter > WARPED) warnings.push({ code: 'clip/picture-warps', stillScatter });
  const lastingS = (curve.at(-1)?.timeS ?? 0) - (curve[0]?.timeS ?? 0);
  const framesPerSecond = lastingS > 0 ? (curve.length - 1) / lastingS : 0;
  if (framesPerSecond > USUAL_FRAMES_PER_S) warnings.push({ code: 'clip/clock-doubtful', framesPerSecond });
  if (spreadMm && spreadMm.value > Math.max(DIFFER_MM, 3 * spreadMm.u))
    warnings.push({ code: 'clip/applications-differ', spreadMm: spreadMm.value });
  return warnings;
}
