/**
 * Places of a picture that can be known again in another one, spread over it, with what they look like.
 *
 * Model    ORB: corners on several scales, each with a direction and 256 comparisons of brightness about it; of each cell of the
 *          picture the strongest corners only, so that gravel does not take the places of a bracket.
 * Source   Rublee et al., ORB: an efficient alternative to SIFT or SURF, ICCV 2011 (from memory)
 */
import type { Gray } from './gray.ts';
import { inside } from './inside.ts';
import type { FeatureFinder, KeyPoint, KeyPointVector, Mat, Opencv } from './opencv.ts';
import type { Point } from './point.ts';
import type { Keep } from './with-opencv.ts';

export type Features = {
  readonly places: readonly Point[];
  readonly directionsDeg: readonly number[];
  /** A row for each place. */
  readonly looks: Mat;
};

/** So faint a corner is still one: dark steel in shade has no stronger ones. */
const LEAST_STEP = 7;
const MOST_DETECTED = 20_000;
const CELLS_ALONG = 20;
const MOST_IN_CELL = 24;

export function pictureFeatures(
  cv: Opencv,
  keep: Keep,
  gray: Gray,
  leaveOut: readonly (readonly Point[])[],
): Features {
  const picture = keep(new cv.Mat(gray.heightPx, gray.widthPx, cv.CV_8UC1));
  picture.data.set(gray.values);
  const finder: FeatureFinder = keep(new cv.ORB(MOST_DETECTED));
  finder.setFastThreshold(LEAST_STEP);
  const detected = keep(new cv.KeyPointVector());
  finder.detect(picture, detected, keep(new cv.Mat()));
  const outside = listed(detected).filter(
    (point) => !leaveOut.some((outline) => inside(placeOf(point), outline)),
  );
  const chosen = keep(new cv.KeyPointVector());
  for (const point of strongestOfCells(outside, Math.max(gray.widthPx, gray.heightPx) / CELLS_ALONG))
    chosen.push_back(point);
  const looks = keep(new cv.Mat());
  finder.compute(picture, chosen, looks);
  // Those whose surroundings leave the picture have been dropped from the list.
  const described = listed(chosen);
  return { places: described.map(placeOf), directionsDeg: described.map(({ angle }) => angle), looks };
}

const placeOf = ({ pt }: KeyPoint): Point => [pt.x + 0.5, pt.y + 0.5];

function listed(points: KeyPointVector): readonly KeyPoint[] {
  return Array.from({ length: points.size() }, (_, i) => points.get(i));
}

function strongestOfCells(points: readonly KeyPoint[], cellPx: number): readonly KeyPoint[] {
  const cells = new Map<string, KeyPoint[]>();
  for (const point of points) {
    const key = `${Math.floor(point.pt.x / cellPx)} ${Math.floor(point.pt.y / cellPx)}`;
    cells.set(key, [...(cells.get(key) ?? []), point]);
  }
  return [...cells.values()].flatMap((cell) =>
    cell.sort((a, b) => b.response - a.response).slice(0, MOST_IN_CELL),
  );
}
