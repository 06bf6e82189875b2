/**
 * The pin's way through a clip before there is any scale: in pixels of the seed frame, along the rod.
 *
 * Model    the pin's place taken to the seed frame (parallax-motion.ts); its part along the line from the face to the pin there,
 *          outwards. How near the pin is to the camera, beside what stands still, is what leaves the travel stillest: of frames beside
 *          each other the change of travel over that of parallax, weighted median.
 * Assumes  the brake rests most of the time. Good to tell when it moves, not how far
 * Fails    as pinSeen
 */
import { assert, ok, type Result } from '../basics/result.ts';
import { placeAt, type Track } from '../marks/track.ts';
import type { ClipFailure } from './clip-measurement.ts';
import { inSeed, parallaxMotion } from './parallax-motion.ts';
import type { TravelPoint } from './phases.ts';
import { pinSeen } from './pin-seen.ts';
import type { Place } from './places-fit.ts';
import { seedFrame } from './still-motion.ts';

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
  const motionOf = parallaxMotion(track);
  const alongWay = ([x, y]: Place) => x * way[0] + y * way[1];
  const seen = pinSeen(track, ticksPerSecond, (frame) => {
    const motion = motionOf(frame);
    return (
      motion &&
      ((at) => {
        const { place, perNearness } = inSeed(motion, at);
        return { travel: alongWay([place[0] - to.xPx, place[1] - to.yPx]), sway: alongWay(perNearness) };
      })
    );
  });
  if (!seen.ok) return seen;
  const nearness = nearnessOfPin(seen.value);
  const points = seen.value.map(
    ({ travel, sway, ...point }): TravelPoint => ({ ...point, travel: travel - nearness * sway }),
  );
  return ok({ points, rodPx });
}

/** Less sway tells no nearness, px. */
const LEAST_SWAY_PX = 1.5;
/** In units of what stands still. */
const MOST_NEARNESS = 6;

function nearnessOfPin(seen: readonly { readonly travel: number; readonly sway: number }[]): number {
  const sways = seen.map(({ sway }) => sway);
  if (Math.max(...sways) - Math.min(...sways) < LEAST_SWAY_PX) return 0;
  const steps = seen.slice(1).flatMap(({ travel, sway }, i) => {
    const last = seen[i] as (typeof seen)[number];
    const by = sway - last.sway;
    return by === 0 ? [] : [{ nearness: (travel - last.travel) / by, weight: Math.abs(by) }];
  });
  steps.sort((a, b) => a.nearness - b.nearness);
  const half = steps.reduce((sum, { weight }) => sum + weight, 0) / 2;
  let sum = 0;
  for (const { nearness, weight } of steps) {
    sum += weight;
    if (sum >= half) return Math.max(-MOST_NEARNESS, Math.min(MOST_NEARNESS, nearness));
  }
  return 0;
}
