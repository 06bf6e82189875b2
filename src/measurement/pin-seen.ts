/**
 * What the frames of a followed clip that show the clevis pin say of it.
 *
 * Fails    'clip/few-still': what stands still tells how too few of the frames moved; 'clip/pin-lost': too few show the pin
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { Track } from '../marks/track.ts';
import type { ClipFailure } from './clip-measurement.ts';
import type { TravelPoint } from './phases.ts';
import { pinPlaces } from './pin-places.ts';
import type { Place } from './places-fit.ts';
import { placeOf } from './still-motion.ts';

const LEAST_SEEN = 0.25;
const LEAST_STILLS = 6;

/** lookOf: what the pin's place in a frame says; null of a frame of which it is not known how it moved. */
export function pinSeen<Look>(
  track: Track,
  ticksPerSecond: number,
  lookOf: (frame: number) => ((place: Place) => Look) | null,
): Result<readonly (Omit<TravelPoint, 'travel'> & Look)[], ClipFailure> {
  const places = pinPlaces(track);
  const frames = track.timeTicks.length;
  let moved = 0;
  const seen = track.timeTicks.flatMap((ticks, frame) => {
    const look = lookOf(frame);
    if (look) moved++;
    const at = places[frame];
    if (!look || !at) return [];
    return [{ frame, timeS: ticks / ticksPerSecond, u: at.sigmaPx, ...look(placeOf(at)) }];
  });
  if (moved < LEAST_SEEN * frames) return fail({ code: 'clip/few-still', found: 0, needed: LEAST_STILLS });
  if (seen.length < LEAST_SEEN * frames) return fail({ code: 'clip/pin-lost', seen: seen.length, frames });
  return ok(seen);
}
