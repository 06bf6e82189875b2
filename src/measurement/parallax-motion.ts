/**
 * How the picture of a followed clip moves, with what near and far things move against each other.
 *
 * Model    p = A q + b + z e: q where something is in the seed frame, p where in this one; A, b, e of the frame, z of the thing (its
 *          nearness: what is in the plane that A and b follow has none). By turns: A, b, e of each frame with the z as they are, then
 *          each z from all frames; least squares, settled (places-fit.ts). First z: what the affine map leaves of the frame that
 *          it leaves most of.
 * Assumes  the camera moves aside by little beside its distance, to and fro or along a line rather than in a circle
 * Fails    null of a frame with too few still things
 * Source   the pin-hole camera: moved aside, all shift by the way over their distance; rank of such tracks: Tomasi and Kanade 1992
 *          (from memory)
 */
import { placeAt, type Track, type TrackPoint } from '../marks/track.ts';
import { type Place, placeBy, placesFit, settledFit } from './places-fit.ts';
import { placeOf, seedFrame, stillsOf } from './still-motion.ts';

const LEAST = 6;
const ROUNDS = 6;
const MOST_FRAMES = 90;
/** Holds e at nothing where no z differs. */
const HOLD = 1e-3;

/** Of a frame: a, b, d, e and shifts of A and b; parallax: e. */
export type FrameMotion = {
  readonly x: readonly [number, number, number];
  readonly y: readonly [number, number, number];
  readonly parallaxPx: Place;
};

export function parallaxMotion(track: Track): (frame: number) => FrameMotion | null {
  const stills = stillsOf(track).filter((still) => placeAt(still, seedFrame(track)));
  const every = Math.ceil(track.timeTicks.length / MOST_FRAMES);
  const frames = [...track.timeTicks.keys()].filter((frame) => frame % every === 0);
  let nearness = stills.map(() => 0);
  for (let round = 0; round < ROUNDS; round++) {
    const motions = frames.flatMap((frame) => {
      const motion = motionOf(track, stills, nearness, frame);
      return motion ? [{ frame, motion }] : [];
    });
    nearness = round === 0 ? firstNearness(track, stills, motions) : better(track, stills, motions);
  }
  return (frame) => motionOf(track, stills, nearness, frame);
}

/** Where a place of this frame would be in the seed frame, and how far each unit of nearness takes it from there. */
export function inSeed(
  { x, y, parallaxPx }: FrameMotion,
  [px, py]: Place,
): { readonly place: Place; readonly perNearness: Place } {
  const size = x[0] * y[1] - x[1] * y[0];
  const back = (u: number, v: number): Place => [(y[1] * u - x[1] * v) / size, (x[0] * v - y[0] * u) / size];
  return { place: back(px - x[2], py - y[2]), perNearness: back(...parallaxPx) };
}

type InFrame = { readonly frame: number; readonly motion: FrameMotion };

function offOf(motion: FrameMotion, track: Track, still: TrackPoint, frame: number): Place | null {
  const [from, to] = [placeAt(still, seedFrame(track)), placeAt(still, frame)];
  if (!from || !to) return null;
  const { x, y } = motion;
  return [
    to.xPx - x[0] * from.xPx - x[1] * from.yPx - x[2],
    to.yPx - y[0] * from.xPx - y[1] * from.yPx - y[2],
  ];
}

function firstNearness(track: Track, stills: readonly TrackPoint[], motions: readonly InFrame[]): number[] {
  const left = motions.map(({ frame, motion }) => stills.map((still) => offOf(motion, track, still, frame)));
  const square = (offs: readonly (Place | null)[]) =>
    offs.reduce((sum, off) => sum + (off ? off[0] ** 2 + off[1] ** 2 : 0), 0);
  const most = left.reduce((a, b) => (square(b) > square(a) ? b : a), left[0] ?? []);
  let [xx, xy, yy] = [0, 0, 0];
  for (const off of most) {
    if (!off) continue;
    xx += off[0] ** 2;
    xy += off[0] * off[1];
    yy += off[1] ** 2;
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  return scaled(most.map((off) => (off ? off[0] * Math.cos(angle) + off[1] * Math.sin(angle) : 0)));
}

function better(track: Track, stills: readonly TrackPoint[], motions: readonly InFrame[]): number[] {
  return scaled(
    stills.map((still) => {
      let [along, square] = [0, 0];
      for (const { frame, motion } of motions) {
        const off = offOf(motion, track, still, frame);
        if (!off) continue;
        const [ex, ey] = motion.parallaxPx;
        along += off[0] * ex + off[1] * ey;
        square += ex * ex + ey * ey;
      }
      return square > 0 ? along / square : 0;
    }),
  );
}

function scaled(values: readonly number[]): number[] {
  const size = Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / Math.max(1, values.length));
  return values.map((value) => (size > 0 ? value / size : 0));
}

function motionOf(
  track: Track,
  stills: readonly TrackPoint[],
  nearness: readonly number[],
  frame: number,
): FrameMotion | null {
  const pairs = stills.flatMap((still, k) => {
    const [from, to] = [placeAt(still, seedFrame(track)), placeAt(still, frame)];
    if (!from || !to) return [];
    const [x, y] = placeOf(from);
    return [{ row: [x / 1000, y / 1000, 1, nearness[k] as number], to: placeOf(to) }];
  });
  if (pairs.length < LEAST) return null;
  const [rows, to] = [pairs.map((pair) => pair.row), pairs.map((pair) => pair.to)];
  const fit = settledFit(
    to,
    (weights) => placesFit(rows, to, weights, HOLD),
    (fitted, k) => placeBy(fitted, rows[k] as readonly number[]),
  );
  if (!fit) return null;
  const [x, y] = fit.map(([a, b, c]) => [(a as number) / 1000, (b as number) / 1000, c as number] as const);
  return { x, y, parallaxPx: [fit[0][3] as number, fit[1][3] as number] } as FrameMotion;
}
