/**
 * The pin's way through a clip before there is any scale: in pixels of the seed frame, along the rod.
 *
 * Model    the pin's place taken to the seed frame (still-motion.ts); its part along the line from the face to the pin there, outwards
 * Assumes  all in one plane: good to tell when the brake moves, not how far
 * Fails    'clip/pin-lost', 'clip/few-still'
 */
import { assert, fail, ok, type Result } from '../basics/result.ts';
import { placeAt, type Track } from '../marks/track.ts';
import type { ClipFailure } from './clip-measurement.ts';
import type { TravelPoint } from './phases.ts';
import { placeOf, seedFrame, seedFromFrame } from './still-motion.ts';

const LEAST_SEEN = 0.25;
const LEAST_STILLS = 6;

export type ClipTravel = {
  readonly points: readonly TravelPoint[];
  /** From face to pin in the seed frame. */
  readonly rodPx: number;
};

export function clipTravel(track: Track, ticksPerSecond: number): Result<ClipTravel, ClipFailure> {
  const of = (kind: string) => track.points.find((point) => point.kind === kind);
  const [pin, face] = [of('clevis-pin'), of('chamber-face')];
  assert(pin && face, 'face and pin are followed always');
  const seed = seedFrame(track);
  const [from, to] = [placeAt(face, seed), placeAt(pin, seed)];
  assert(from && to, 'the seed shows its own marks');
  const rodPx = Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx);
  const way = [(to.xPx - from.xPx) / rodPx, (to.yPx - from.yPx) / rodPx] as const;
  const frames = track.timeTicks.length;
  let moved = 0;
  const points = track.timeTicks.flatMap((ticks, frame): TravelPoint[] => {
    const map = seedFromFrame(track, frame);
    if (map) moved++;
    const place = placeAt(pin, frame);
    if (!map || !place) return [];
    const [x, y] = map(placeOf(place));
    const travel = (x - to.xPx) * way[0] + (y - to.yPx) * way[1];
    return [{ frame, timeS: ticks / ticksPerSecond, travel, u: place.sigmaPx }];
  });
  if (moved < LEAST_SEEN * frames) return fail({ code: 'clip/few-still', found: 0, needed: LEAST_STILLS });
  if (points.length < LEAST_SEEN * frames)
    return fail({ code: 'clip/pin-lost', seen: points.length, frames });
  return ok({ points, rodPx });
}
