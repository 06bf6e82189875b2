/**
 * The clamp band's rim towards the rod, about the chamber that face and pin point to.
 *
 * Model    where a band could be (find-bands.ts), the best of them led up the slopes of brightness (climb-band.ts) and to their edges
 *          (lead-band.ts), all rings of one band about one axis; the one whose edges are seen the longest way; marks along its rim
 *          (rim-marks.ts)
 * Assumes  a view from the rod's side, face and pin marked to within a few hundredths of their distance, a camera as phones have
 * Fails    with the reason: no band seen, its edges seen too short a way, two that would do, not where it was pointed to, too loose
 */
import { fail, ok, type Result } from '../basics/result.ts';
import type { AssistQuestion, FailureOf, FoundMark } from './assist-sight.ts';
import { climbBands } from './climb-band.ts';
import { ellipseOf, opennessOf, ringAt } from './coaxial.ts';
import { chamberOf, chamberSlopes, findBands } from './find-bands.ts';
import type { Coaxial } from './fit-coaxial.ts';
import type { Ellipse } from './fit-ellipse.ts';
import type { Gray } from './gray.ts';
import { type Led, leadBand, stretchedBand } from './lead-band.ts';
import { apart, type Point } from './point.ts';
import { rimMarks } from './rim-marks.ts';
import { usualLens } from './usual-lens.ts';

export type BandSight = {
  readonly marks: readonly FoundMark[];
  readonly rim: Ellipse;
  readonly ratio: number;
  readonly uRatio: number;
};
type BandQuestion = Extract<AssistQuestion, { readonly of: 'clamp-band' }>;

const MOST_LED = 40;
const MOST_STRETCHED = 4;
/** Of the longest: what is seen far less far is not worth it. */
const WORTH = 0.5;
const LEAST_MARKS = 12;
/** Over half the diameter; of two rings and the flank's end, all seen all along, 2.25. */
const LEAST_LENGTH = 0.72;
/** Of the rim's own edge: farther scattered, it may be another one that the other rings have drawn along. */
const MOST_SPREAD_PX = 0.48;
/** Of the best one's length: another rim seen so far would do as well. */
const AS_LONG = 0.92;
const MOST_U_RATIO = 0.0105;
/** How far from the rim a finger may point, over half the diameter: anywhere on the band. */
const REACH = 0.35;
/** Over half the diameter: vertices nearer than this lie on one rim. */
const SAME_RIM = 0.03;
const SAME_OPENNESS = 0.01;

export function findBand(
  gray: Gray,
  { facePx, pinPx, nearPx }: Omit<BandQuestion, 'of'>,
): Result<BandSight, FailureOf<'band'>> {
  const [best, next] = bandsOf(gray, facePx, pinPx);
  if (!best) return fail({ code: 'band/none' });
  const rim = best.coaxial.rings[0];
  const isSeen =
    best.lengthPx > LEAST_LENGTH * rim.radius && (best.fit.spreads[0] as number) < MOST_SPREAD_PX;
  if (!isSeen) return fail({ code: 'band/one-rim' });
  if (next && next.lengthPx > AS_LONG * best.lengthPx) return fail({ code: 'band/two-ways' });
  const offPx = nearPx ? offRim(best, nearPx) : 0;
  if (offPx > REACH * rim.radius) return fail({ code: 'band/elsewhere', offPx });
  const [ellipse, seen] = [ellipseOf(best.coaxial.axis, rim), rimMarks(best)];
  if (!ellipse || !seen || seen.marks.length < LEAST_MARKS) return fail({ code: 'band/one-rim' });
  if (!(seen.uRatio < MOST_U_RATIO)) return fail({ code: 'band/loose', uRatio: seen.uRatio });
  return ok({ ...seen, rim: ellipse });
}

/** Those whose rims differ, the one seen the longest way first. */
function bandsOf(gray: Gray, facePx: Point, pinPx: Point): readonly Led[] {
  const chamber = chamberOf(facePx, pinPx);
  const slopes = chamberSlopes(gray, chamber);
  if (!slopes) return [];
  const lens = usualLens(gray);
  const { focalPx } = lens;
  const sought = { gray, slopes, focalPx, lengthPx: chamber.lengthPx };
  const led = climbBands(slopes, chamber, lens, findBands(slopes, chamber))
    .slice(0, MOST_LED)
    .flatMap(({ coaxial }) => leadBand(sought, coaxial) ?? []);
  const all = distinct(led);
  const longest = all
    .slice(0, MOST_STRETCHED)
    .filter(({ lengthPx }) => lengthPx > WORTH * (all[0]?.lengthPx ?? 0));
  return distinct(longest.map((each) => stretchedBand(sought, each)));
}

const vertexOf = ({ axis, rings }: Coaxial) => ringAt(axis, rings[0], 0).at;

function distinct(led: readonly Led[]): readonly Led[] {
  const sorted = [...led].sort((a, b) => b.lengthPx - a.lengthPx);
  return sorted.filter(
    (each, i) => !sorted.slice(0, i).some((better) => isSameRim(better.coaxial, each.coaxial)),
  );
}

const isSameRim = (a: Coaxial, b: Coaxial): boolean =>
  apart(vertexOf(a), vertexOf(b)) < SAME_RIM * a.rings[0].radius &&
  Math.abs(opennessOf(a.axis) - opennessOf(b.axis)) < SAME_OPENNESS;

function offRim({ coaxial: { axis, rings } }: Led, place: Point): number {
  const rim = rings[0];
  const along = Array.from({ length: 41 }, (_, i) => ringAt(axis, rim, (i / 20 - 1) * (Math.PI / 2)).at);
  return Math.min(...along.map((each) => apart(place, each)));
}
