/**
 * Which frames of a followed clip see the brake from other places than those already chosen.
 *
 * Model    p_k = A q_k + b + r_k, q_k where still thing k is in the seed, p_k where it is in the frame; A, b by least squares: turns of
 *          the camera and a picture of another size go into these, and r is what is left: parallax, which only another place of the
 *          camera makes. Frames are taken one by one, each the one whose r is farthest from those of all taken before.
 * Assumes  what stands still lies at different depths; lens distortion is alike in all frames
 * Fails    none are taken where the farthest lies within what noise makes: a tripod tells no depth
 */
import { middleOf } from '../basics/middle.ts';
import { placeAt, type Track, type TrackPoint } from '../marks/track.ts';
import { affineFit } from './affine-fit.ts';
import { placeOf, seedFrame } from './still-motion.ts';

/** Parallax of neighbours in noise alone: sqrt(2) of it for the difference of two, twice that to be told from it. */
const TOLD = 2 * Math.SQRT2;
/** Of the still things, those that nearly all candidates show. */
const SEEN_SHARE = 0.8;
const LEAST_STILLS = 8;

/** candidates, taken: counted from the track's first frame. */
export function sideFrames(
  track: Track,
  candidates: readonly number[],
  taken: readonly number[],
  most: number,
): readonly number[] {
  const stills = commonStills(track, candidates);
  if (stills.length < LEAST_STILLS) return [];
  const seen = (frame: number) => {
    const parallax = parallaxOf(track, stills, frame);
    return parallax ? [{ frame, parallax }] : [];
  };
  const chosen = taken.flatMap(seen);
  const pool = candidates.filter((frame) => !taken.includes(frame)).flatMap(seen);
  const noise = TOLD * Math.sqrt(stills.reduce((sum, still) => sum + 2 * middleSigma(still) ** 2, 0));
  const found: number[] = [];
  while (found.length < most) {
    let [best, bestApart]: [(typeof pool)[number] | null, number] = [null, noise];
    for (const one of pool) {
      const apart = Math.min(...chosen.map((other) => distance(one.parallax, other.parallax)));
      if (apart > bestApart) [best, bestApart] = [one, apart];
    }
    if (!best) break;
    found.push(best.frame);
    chosen.push(best);
  }
  return found;
}

function commonStills(track: Track, frames: readonly number[]): readonly TrackPoint[] {
  return track.points.filter(
    (point) =>
      point.kind === 'still' &&
      frames.filter((frame) => placeAt(point, frame)).length >= SEEN_SHARE * frames.length,
  );
}

/** Null where the frame does not show them all. */
function parallaxOf(track: Track, stills: readonly TrackPoint[], frame: number): Float64Array | null {
  const pairs = stills.flatMap((still) => {
    const [from, to] = [placeAt(still, seedFrame(track)), placeAt(still, frame)];
    return from && to ? [{ from: placeOf(from), to: placeOf(to) }] : [];
  });
  if (pairs.length < stills.length) return null;
  const [from, to] = [pairs.map((pair) => pair.from), pairs.map((pair) => pair.to)];
  const map = affineFit(
    from,
    to,
    pairs.map(() => 1),
  );
  if (!map) return null;
  return Float64Array.from(
    pairs.flatMap((pair) => map(pair.from).map((value, axis) => (pair.to[axis] as number) - value)),
  );
}

function distance(a: Float64Array, b: Float64Array): number {
  return Math.sqrt(a.reduce((sum, value, i) => sum + (value - (b[i] as number)) ** 2, 0));
}

function middleSigma({ sigmaMilliPx }: TrackPoint): number {
  return (middleOf(sigmaMilliPx.filter((sigma) => sigma !== null)) ?? 0) / 1000;
}
