/**
 * A track: where marked things lie in every frame of a clip, as followed from one frame or several, with gaps where they could not be seen.
 *
 * Frame  pixels of the upright picture (see mark.ts), kept in whole hundredths; standard uncertainties in whole thousandths:
 *        finer than any of them is known, and a clip of 600 frames stays small.
 */
import { z } from 'zod';
import { frameSchema } from '../frames/frame.ts';
import { markSchema } from './mark.ts';
import { BRAKE_STATES } from './view.ts';

export const MOST_FRAMES = 20_000;
export const MOST_CORRECTIONS = 40;

/** A value of each frame; null in a gap. */
const column = (least: number, most: number) =>
  z.array(z.int().min(least).max(most).nullable()).max(MOST_FRAMES).readonly();

/** still: something that stands still, as the chamber or the axle; the others as the kinds of mark. */
export const FOLLOWED_KINDS = [
  'chamber-face',
  'clevis-pin',
  'camshaft-end',
  'tape-graduation',
  'still',
] as const;

const trackPointSchema = z
  .strictObject({
    kind: z.enum(FOLLOWED_KINDS),
    /** The mark that was followed; of what stands still, a name of its own. */
    markId: z.string().min(1).max(64),
    xCentiPx: column(-1e7, 1e7),
    yCentiPx: column(-1e7, 1e7),
    sigmaMilliPx: column(1, 5e5),
  })
  .readonly();

/** A further frame where a person showed where things are, and from which they were followed as well. */
const correctionSchema = z
  .strictObject({ frame: frameSchema, marks: z.array(markSchema).min(1).max(10).readonly() })
  .readonly();

export const trackSchema = z
  .strictObject({
    id: z.string().min(1).max(64),
    captureId: z.string().min(1).max(64),
    /** The view whose marks were followed, and its frame. */
    state: z.enum(BRAKE_STATES),
    seed: frameSchema,
    /** At most one of a frame. */
    corrections: z.array(correctionSchema).max(MOST_CORRECTIONS).readonly(),
    /** Of the first frame here; the frames after it follow without a hole. */
    firstIndex: z.int().min(0),
    /** Presentation time of each frame, in the clip's ticks. */
    timeTicks: z.array(z.int()).min(1).max(MOST_FRAMES).readonly(),
    /** Of one kind there may be several, each followed from a mark of its own: those of the seed come first. */
    points: z.array(trackPointSchema).min(1).max(200).readonly(),
  })
  .readonly();

export type Track = z.infer<typeof trackSchema>;
export type Correction = z.infer<typeof correctionSchema>;
export type TrackPoint = z.infer<typeof trackPointSchema>;
export type FollowedKind = TrackPoint['kind'];

export type FollowedPlace = { readonly xPx: number; readonly yPx: number; readonly sigmaPx: number };

/** i counts from the track's first frame; null in a gap. */
export function placeAt({ xCentiPx, yCentiPx, sigmaMilliPx }: TrackPoint, i: number): FollowedPlace | null {
  const [x, y, sigma] = [xCentiPx[i], yCentiPx[i], sigmaMilliPx[i]];
  if (x == null || y == null || sigma == null) return null;
  return { xPx: x / 100, yPx: y / 100, sigmaPx: sigma / 1000 };
}

/** Of all that were followed of a kind. i counts from the track's first frame; null in a gap. */
export function sharpestPlace({ points }: Track, kind: FollowedKind, i: number): FollowedPlace | null {
  let best: FollowedPlace | null = null;
  for (const point of points) {
    const place = point.kind === kind ? placeAt(point, i) : null;
    if (place && !(best && best.sigmaPx <= place.sigmaPx)) best = place;
  }
  return best;
}
