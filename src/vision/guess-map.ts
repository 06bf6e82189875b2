/**
 * How what stands still about the brake has moved from one picture to another, taken from nearly the same place.
 *
 * Model    features of both that look alike (feature-pairs.ts) and agree on one epipolar geometry (epipolar.ts), those about the chamber
 *          counting most; the motion they have in common, and where they carry a place that is no feature (follow-carry.ts)
 * Assumes  the second picture shows the brake within an eighth of its longer side from where the first one does, about as large
 * Fails    'guess/few' where too few agree about the chamber
 */
import { drawFrom } from '../basics/random.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import { agreeingPairs } from './epipolar.ts';
import { featurePairs } from './feature-pairs.ts';
import { type Carried, carried } from './follow-carry.ts';
import { closestMotion, type Motion } from './follow-common.ts';
import type { Gray } from './gray.ts';
import { cutGray } from './gray-cut.ts';
import type { GuessFailure } from './guess-sight.ts';
import type { Opencv } from './opencv.ts';
import { pictureFeatures } from './picture-features.ts';
import { apart, type Point } from './point.ts';
import { scaledGray } from './scaled-gray.ts';
import { withOpencv } from './with-opencv.ts';

export type GuessMap = {
  readonly motion: Motion;
  readonly carry: (place: Point) => Carried | null;
};

/** Over the length from face to pin: chamber, arm, and what is about them. */
const AROUND = 2.6;
const SHIFT_SHARE = 0.08;
const SCALED_PX = 1280;
const ROUGH_PX = 2;
/** Over that length: nearer ones count by how near they are. */
const NEAR = 0.5;
const TOLERANCES = [0.02, 0.04, 0.08];
const LEAST_NEAR = 8;

export function guessMap(
  cv: Opencv,
  known: Gray,
  other: Gray,
  { facePx, lengthPx }: { readonly facePx: Point; readonly lengthPx: number },
): Result<GuessMap, GuessFailure> {
  const shiftPx = SHIFT_SHARE * Math.max(other.widthPx, other.heightPx);
  const looked = withOpencv(cv, (keep) => {
    const here = cutGray(known, facePx, AROUND * lengthPx);
    const there = cutGray(other, facePx, AROUND * lengthPx + shiftPx);
    const scale = Math.min(1, SCALED_PX / Math.max(there.gray.widthPx, there.gray.heightPx));
    const [a, b] = [here, there].map(({ gray, cornerPx }) => {
      const scaled = scaledGray(cv, keep, gray, scale * Math.max(gray.widthPx, gray.heightPx));
      const features = pictureFeatures(cv, keep, scaled.gray, []);
      const whole = ([x, y]: Point): Point => [
        x / scaled.scale + cornerPx[0],
        y / scaled.scale + cornerPx[1],
      ];
      return { ...features, places: features.places.map(whole) };
    });
    return a && b ? { alike: featurePairs(cv, keep, a, b), scale } : { alike: [], scale };
  });
  if (!looked.ok) return looked;
  const { alike, scale } = looked.value;
  const agreeing = agreeingPairs(alike, ROUGH_PX / scale, drawFrom(1)) ?? [];
  const moved = agreeing.map(({ first, second }) => ({
    from: first,
    to: second,
    sigmaPx: ROUGH_PX / scale / 4,
    weight: 1 / (1 + (apart(first, facePx) / lengthPx) ** 2) ** 2,
  }));
  const near = moved.filter(({ from }) => apart(from, facePx) < lengthPx).length;
  const motion =
    near < LEAST_NEAR
      ? null
      : closestMotion(
          moved,
          TOLERANCES.map((each) => each * lengthPx),
        );
  if (!motion) return fail({ code: 'guess/few', found: near });
  const around = { reachPx: NEAR * lengthPx, fullNearness: 0 };
  return ok({ motion, carry: (place) => carried(place, moved, motion, around) });
}
