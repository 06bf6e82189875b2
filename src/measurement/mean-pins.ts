/**
 * Where the pin was while the brake rested, as one mark.
 *
 * Model    mean over a plateau's frames of the pin's place in mm, each in its own frame's pose; seen in one frame
 * Assumes  poses and world as adjusted
 * Fails    'clip/pin-lost' where no frame of the plateau shows it
 */
import type { Adjustment } from '../adjustment/adjustment.ts';
import { project } from '../adjustment/camera.ts';
import { transformed } from '../adjustment/pose.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import { IDENTITY3 } from '../basics/rotation.ts';
import type { Mark } from '../marks/mark.ts';
import { placeAt, type Track, type TrackPoint } from '../marks/track.ts';
import type { ClipFailure } from './clip-measurement.ts';
import type { Poses } from './frame-poses.ts';
import { plateauMean } from './plateau-mean.ts';
import type { restingPart } from './resting-part.ts';

/** What is followed from one light into another is off by as much in all frames of a plateau: docs/tracking.md. */
const PLATEAU_SIGMA_PX = 0.1;

type Part = ReturnType<typeof restingPart>;
type MeanPlace = Pick<Mark, 'xPx' | 'yPx' | 'sigmaPx'>;

/** Of each spot of the pin that the middle frame shows, by the mark that it was followed from. */
export function meanPins(
  adjustment: Adjustment,
  track: Track,
  poses: Poses,
  part: Part,
  middle: number,
): Result<ReadonlyMap<string, MeanPlace>, ClipFailure> {
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
  poses: Poses,
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
