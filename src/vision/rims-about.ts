/**
 * Rims about a chamber: circles about one axis whose edges are seen well, seen alike.
 *
 * Model    arcs by search (find-arcs.ts), each led to its edge (rim-edge.ts); about the axis of the clearest of them all other circles are
 *          tried too, since a faint one is found so that is missed alone; of all, the set with the clearest edges whose circles could have
 *          one axis (choose-rim.ts)
 * Fails    an empty list where nothing is seen well
 */
import type { Arc } from './arc.ts';
import { beside, PER_BEHIND } from './choose-rim.ts';
import { arcScore, chamberSlopes, findArcs } from './find-arcs.ts';
import type { Gray } from './gray.ts';
import type { Point } from './point.ts';
import { type Rim, rimAlong } from './rim-edge.ts';
import type { Slopes } from './slopes.ts';

const LEAST_SHARE = 0.66;
const MOST_RMS_PX = 0.62;
/** Of one about whose axis others are tried. */
const BASE = { share: 0.8, rmsPx: 0.4, most: 4 } as const;
const SAME_PX = 2.5;
const SAME_SIZE = 0.02;
/** Nearer than this to a clearer one of the same axis it is that one's shadow. */
const BESIDE_PX = 4;
/** Tried about an axis: steps of size and of place over half the diameter. */
const SIZE_STEP = 0.02;
const PLACE_STEP = 0.012;
const MOST_OF_ROOM = 4;
/** Where a band has an edge if the one that is known is its rim, its other rim, or where its flank ends. */
const ROOMS = [
  { behind: [0.09, 0.36], size: [0.92, 1.04] },
  { behind: [-0.36, -0.09], size: [0.96, 1.08] },
  { behind: [-0.01, 0.16], size: [1.02, 1.18] },
  { behind: [-0.16, 0.01], size: [0.84, 0.98] },
] as const;
const WORTH = 0.45;

export function rimsAbout(gray: Gray, facePx: Point, pinPx: Point): readonly Rim[] {
  const slopes = chamberSlopes(gray, facePx, pinPx);
  if (!slopes) return [];
  const found = distinct(findArcs(slopes, facePx, pinPx).flatMap((arc) => rimAlong(gray, arc) ?? []));
  const bases = found.filter(({ share, fit }) => share > BASE.share && fit.rmsPx < BASE.rmsPx);
  const more = bases.slice(0, BASE.most).flatMap(({ arc: base }) =>
    arcsLike(slopes, base).flatMap((arc) => {
      const rim = rimAlong(gray, arc, true);
      return rim && beside(base, rim.arc) ? [rim] : [];
    }),
  );
  const all = distinct([...found, ...more]);
  const weight = (rims: readonly Rim[]) => rims.reduce((sum, rim) => sum + quality(rim) - WORTH, 0);
  const sets = all.map((base) => aboutAxisOf(base, all));
  return sets.sort((a, b) => weight(b) - weight(a))[0] ?? [];
}

const quality = ({ share, fit }: Rim) => share - 0.4 * fit.rmsPx;
const vertexOf = ({ centre, shortPx, turnRad }: Arc): Point => [
  centre[0] + shortPx * Math.cos(turnRad),
  centre[1] + shortPx * Math.sin(turnRad),
];
const apart = (a: Arc, b: Arc) => {
  const [[ax, ay], [bx, by]] = [vertexOf(a), vertexOf(b)];
  return Math.hypot(ax - bx, ay - by);
};

/** The clearest first. */
function distinct(rims: readonly Rim[]): readonly Rim[] {
  const good = rims
    .filter(({ share, fit }) => share > LEAST_SHARE && fit.rmsPx < MOST_RMS_PX)
    .sort((a, b) => quality(b) - quality(a));
  const isSame = (a: Arc, b: Arc) => apart(a, b) < SAME_PX && Math.abs(a.longPx / b.longPx - 1) < SAME_SIZE;
  return good.filter((rim, i) => !good.slice(0, i).some((better) => isSame(rim.arc, better.arc)));
}

function aboutAxisOf(base: Rim, all: readonly Rim[]): readonly Rim[] {
  const alike = [base, ...all.filter((rim) => rim !== base && beside(base.arc, rim.arc))];
  return alike.filter(
    (rim, i) => !alike.slice(0, i).some((better) => apart(rim.arc, better.arc) < BESIDE_PX),
  );
}

function arcsLike(slopes: Slopes, base: Arc): readonly Arc[] {
  const ratio = base.shortPx / base.longPx;
  const along = base.longPx * Math.sqrt(1 - ratio * ratio);
  const [c, s] = [Math.cos(base.turnRad), Math.sin(base.turnRad)];
  return ROOMS.flatMap(({ behind: [least, most], size: [small, large] }) => {
    const tried: Tried[] = [];
    for (let behind = least; behind < most; behind += PLACE_STEP)
      for (let size = small; size < large; size += SIZE_STEP) {
        const longPx = base.longPx * size;
        const shortPx = longPx * (ratio + PER_BEHIND * behind);
        const centre: Point = [base.centre[0] + c * behind * along, base.centre[1] + s * behind * along];
        const arc = { centre, longPx, shortPx, turnRad: base.turnRad };
        if (shortPx > 2) tried.push({ behind, size, arc, score: arcScore(slopes, arc) });
      }
    return peaks(tried).slice(0, MOST_OF_ROOM);
  });
}

type Tried = { readonly behind: number; readonly size: number; readonly arc: Arc; readonly score: number };

function peaks(tried: readonly Tried[]): readonly Arc[] {
  const isNear = (a: Tried, b: Tried) =>
    Math.abs(a.behind - b.behind) < 2.5 * PLACE_STEP && Math.abs(a.size - b.size) < 2.5 * SIZE_STEP;
  return tried
    .filter((one) => tried.every((other) => other.score <= one.score || !isNear(one, other)))
    .sort((a, b) => b.score - a.score)
    .map(({ arc }) => arc);
}
