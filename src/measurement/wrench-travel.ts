/**
 * The push rod's way through a clip of the wrench, by the clevis pin, in pixels of the seed frame.
 *
 * Model    the pin's place taken to the seed frame (still-motion.ts); its part along the line from where it lies there to where it goes
 *          farthest, but for the farthest 2 %: outwards, since the brake is released there
 * Assumes  the brake released in the seed frame; all in one plane: good to tell when the brake moves, not how far
 * Fails    as pinSeen
 */
import { assert, ok, type Result } from '../basics/result.ts';
import { placeAt, type Track } from '../marks/track.ts';
import type { ClipFailure } from './clip-measurement.ts';
import type { TravelPoint } from './phases.ts';
import { pinSeen } from './pin-seen.ts';
import type { Place } from './places-fit.ts';
import { placeOf, seedFrame, seedFromFrame } from './still-motion.ts';

const FARTHEST = 0.98;

export function wrenchTravel(
  track: Track,
  ticksPerSecond: number,
): Result<readonly TravelPoint[], ClipFailure> {
  const pin = track.points.find(({ kind }) => kind === 'clevis-pin');
  const begin = pin && placeAt(pin, seedFrame(track));
  assert(pin && begin, 'the pin is followed always, and the seed shows it');
  const from = placeOf(begin);
  const seen = pinSeen(track, ticksPerSecond, (frame) => {
    const map = seedFromFrame(track, frame);
    return map && ((place) => ({ away: less(map(place), from) }));
  });
  if (!seen.ok) return seen;
  const byFar = seen.value.map(({ away }) => away).sort((a, b) => Math.hypot(...a) - Math.hypot(...b));
  const [x, y] = byFar[Math.floor(FARTHEST * (byFar.length - 1))] as Place;
  const farPx = Math.max(Math.hypot(x, y), 1e-9);
  return ok(
    seen.value.map(({ away, ...point }) => ({ ...point, travel: (away[0] * x + away[1] * y) / farPx })),
  );
}

const less = (a: Place, b: Place): Place => [a[0] - b[0], a[1] - b[1]];
