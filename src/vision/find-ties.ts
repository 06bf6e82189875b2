/**
 * The same fixed things in two pictures of one brake, taken from two places near each other.
 *
 * Model    features alike (feature-pairs.ts) -> one epipolar geometry (epipolar.ts) -> where the cameras stood (two-poses.ts) and how
 *          far off each thing is -> fits to a small part of a pixel (fit-tie.ts) -> the poses once more, of the sharp places -> those
 *          that agree, spread over the pictures
 * Assumes  most of both pictures stands still. What moves along the line on which the other camera sees it is not told apart by
 *          geometry: the outlines to leave out are for that, and how far off it would have to be.
 * Fails    'ties/few' where fewer than six are left
 */
import { drawFrom } from '../basics/random.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import { agreeingPairs, type Pair } from './epipolar.ts';
import { featurePairs } from './feature-pairs.ts';
import { fitTie, type Picture } from './fit-tie.ts';
import type { Gray } from './gray.ts';
import { inside } from './inside.ts';
import type { Opencv } from './opencv.ts';
import { pictureFeatures } from './picture-features.ts';
import type { Point } from './point.ts';
import { scaledGray } from './scaled-gray.ts';
import { spread } from './spread.ts';
import type { FoundTie, TieCounts, TieFailure, TieQuestion, TieSide, TieSight } from './tie-sight.ts';
import {
  inverseDistance,
  inverseDistancePerPx,
  misfitPx,
  type TwoLenses,
  type TwoPoses,
  twoPoses,
} from './two-poses.ts';
import { withOpencv } from './with-opencv.ts';

/** Five tie two pictures together in every direction; the sixth is the first that can contradict. */
export const LEAST_TIES = 6;
const MOST_TIES = 24;
const MOST_FITTED = 200;
/** Longer side while features are matched: their surroundings are then some millimetres of a brake, and it takes seconds. */
const SCALED_PX = 1600;
/** In pixels of that size: features sit within one or two of their place, and a lens bends straight lines by as much. */
const ROUGH_PX = 2;
/** Share of the longer side by which a sharp place may contradict: what a lens leaves beside its first radial term. */
const SHARP_SHARE = 4e-4;
const MOST_SIGMA_PX = 0.7;
/** Off the cameras, over the distance of the brake: the engine's bounds for tie points hold them near it. */
const NEAREST = 0.65;
const FARTHEST = 1.45;
/** How well the place that tells the brake's distance is marked, and how rough a feature's is, in pixels of the scaled pictures. */
const MARK_PX = 3;

export function findTies(
  cv: Opencv,
  first: Gray,
  second: Gray,
  question: TieQuestion,
): Result<TieSight, TieFailure> {
  const looked = withOpencv(cv, (keep) => {
    const one = { gray: first, scaled: scaledGray(cv, keep, first, SCALED_PX) };
    const other = { gray: second, scaled: scaledGray(cv, keep, second, SCALED_PX) };
    const sides = [scaledSide(question.first, one), scaledSide(question.second, other)] as const;
    const [a, b] = [
      pictureFeatures(cv, keep, one.scaled.gray, sides[0].leaveOut),
      pictureFeatures(cv, keep, other.scaled.gray, sides[1].leaveOut),
    ];
    const features: TieCounts['features'] = [a.places.length, b.places.length];
    return { one, other, sides, features, alike: featurePairs(cv, keep, a, b) };
  });
  if (!looked.ok) return looked;
  const { one, other, sides, features, alike } = looked.value;
  const few = (found: number, agreeing: number, fitted: number) =>
    fail({ code: 'ties/few', found, counts: { features, alike: alike.length, agreeing, fitted } } as const);

  const lined = agreeingPairs(alike, ROUGH_PX, drawFrom(1));
  if (!lined) return few(0, 0, 0);
  const about: Pair = { first: sides[0].aboutPx, second: sides[1].aboutPx };
  const turnRad = middle(lined.map((pair) => pair.turnRad));
  const rough = twoPoses(lined, lensesOf(sides, one, other), turnRad, ROUGH_PX / 2);
  if (!rough.ok) return few(0, 0, 0);
  const near = nearBrake(rough.value, about);
  const agreeing = alike.filter((pair) => Math.abs(misfitPx(rough.value, pair)) < ROUGH_PX && near(pair));
  const tried = spread(
    agreeing,
    (pair) => pair.first,
    (pair) => pair.ratio * farness(pair.first, about.first, one.scaled.gray),
    { most: MOST_FITTED, reachPx: SCALED_PX / 16 },
  );
  const fitted = tried
    .flatMap((pair) => fitTie(one, other, { ...pair, turnRad }) ?? [])
    .filter(isSharp(question));
  const sharp = sharpAgreeing(fitted, question, one, other, turnRad);
  const ties = spread(
    sharp,
    (tie) => tie.firstPx,
    (tie) => (0.2 + tie.sigmaPx) * farness(tie.firstPx, question.first.aboutPx, one.gray),
    { most: MOST_TIES, reachPx: Math.max(first.widthPx, first.heightPx) / 8 },
  );
  const counts = { features, alike: alike.length, agreeing: agreeing.length, fitted: fitted.length };
  return ties.length < LEAST_TIES ? few(ties.length, counts.agreeing, counts.fitted) : ok({ ties, counts });
}

function scaledSide({ focalPx, aboutPx, leaveOut }: TieSide, { scaled: { scale } }: Picture): TieSide {
  const smaller = ([x, y]: Point): Point => [scale * x, scale * y];
  return {
    focalPx: scale * focalPx,
    aboutPx: smaller(aboutPx),
    leaveOut: leaveOut.map((outline) => outline.map(smaller)),
  };
}

const middleOf = ({ widthPx, heightPx }: Gray): Point => [widthPx / 2, heightPx / 2];

function lensesOf([a, b]: readonly [TieSide, TieSide], one: Picture, other: Picture): TwoLenses {
  return {
    first: { focalPx: a.focalPx, middlePx: middleOf(one.scaled.gray) },
    second: { focalPx: b.focalPx, middlePx: middleOf(other.scaled.gray) },
  };
}

/** Where the cameras hardly moved, distances are not known and none is too far. */
function nearBrake(poses: TwoPoses, about: Pair): (pair: Pair) => boolean {
  const brake = inverseDistance(poses, about);
  const uBrake = MARK_PX * inverseDistancePerPx(poses, about);
  return (pair) => {
    const there = inverseDistance(poses, pair);
    const slack = uBrake + MARK_PX * inverseDistancePerPx(poses, pair);
    return there > brake / FARTHEST - slack && there < brake / NEAREST + slack;
  };
}

/** 1 at the brake, 2 an eighth of the picture's longer side away. */
function farness([x, y]: Point, about: Point, { widthPx, heightPx }: Gray): number {
  return 1 + (8 * Math.hypot(x - about[0], y - about[1])) / Math.max(widthPx, heightPx);
}

const isSharp =
  ({ first, second }: TieQuestion) =>
  ({ firstPx, secondPx, sigmaPx }: FoundTie) =>
    sigmaPx < MOST_SIGMA_PX &&
    !first.leaveOut.some((outline) => inside(firstPx, outline)) &&
    !second.leaveOut.some((outline) => inside(secondPx, outline));

function sharpAgreeing(
  fitted: readonly FoundTie[],
  question: TieQuestion,
  one: Picture,
  other: Picture,
  turnRad: number,
): readonly FoundTie[] {
  const lenses = {
    first: { focalPx: question.first.focalPx, middlePx: middleOf(one.gray) },
    second: { focalPx: question.second.focalPx, middlePx: middleOf(other.gray) },
  };
  const pairOf = ({ firstPx, secondPx }: FoundTie): Pair => ({ first: firstPx, second: secondPx });
  const mostPx = SHARP_SHARE * Math.max(one.gray.widthPx, one.gray.heightPx);
  const poses = twoPoses(fitted.map(pairOf), lenses, turnRad, mostPx / 3);
  if (!poses.ok) return [];
  const near = nearBrake(poses.value, { first: question.first.aboutPx, second: question.second.aboutPx });
  return fitted.filter((tie) => Math.abs(misfitPx(poses.value, pairOf(tie))) < mostPx && near(pairOf(tie)));
}

function middle(values: readonly number[]): number {
  // Turns near half a circle differ by whole ones: added as directions, they do not.
  const [x, y] = values.reduce(([c, s], turn) => [c + Math.cos(turn), s + Math.sin(turn)], [0, 0]);
  return Math.atan2(y, x);
}
