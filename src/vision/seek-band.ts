/**
 * The clamp band of the chamber that a tape runs from, in a picture in which nothing else is known.
 *
 * Model    a chamber behind either end of the tape, its axis along the tape and up to MOST_ASIDE_MM beside it: where bands could be
 *          (find-bands.ts), coarsely, of a size that the tape's scale allows; the best places are each asked as if face and pin were
 *          marked there (assist-band.ts), which takes no band but with both its rims
 *          axis: from the rim's middle along the shorter axis of its ellipse, towards the rod
 * Assumes  tape and chamber about as far from the camera; from the side, as assist-band.ts
 * Fails    null where no place shows a band, or its axis is turned against the tape
 */
import { findBand } from './assist-band.ts';
import type { FoundMark } from './assist-sight.ts';
import { type BandPlace, type Chamber, findBands } from './find-bands.ts';
import type { Gray } from './gray.ts';
import { apart, dot, minus, type Point } from './point.ts';
import { slopesIn } from './slopes.ts';

/**
 * rim: along its near half. axisPx: from the rim's middle to where pins are at most. pxPerMm: along the tape. ratio: of the axes of the rim's
 * ellipse, the shorter over the longer.
 */
export type SoughtBand = {
  readonly rim: readonly FoundMark[];
  readonly axisPx: readonly [Point, Point];
  readonly pxPerMm: number;
  readonly ratio: number;
};

const FACE_TO_PIN_MM = 150;
const AXIS_MM = 260;
const ASIDES_MM = [-56, -28, 0, 28, 56];
/** Half of a clamp band's diameter is 57 to 115 mm (49 CFR 393.47(e)(1)); it lies some way behind the tape or before it. */
const RADIUS_MM = [50, 128] as const;
const REACH = { middle: 0.5, most: 1.45 } as const;
/** Coarser than where face and pin are known. */
const GRAINS = 70;
const FAINT = 2.5;
const MOST_ASKED = 2;
/** Of the length from face to pin, beside it. */
const SAME_ASIDE = 0.1;
/** About as far as a tape is sought beside a rod, and what the near rim's look is turned by. */
const LEAST_ALIKE = Math.cos((15 * Math.PI) / 180);

type Place = { readonly chamber: Chamber; readonly band: BandPlace; readonly way: number };

export function seekBand(gray: Gray, strokes: readonly FoundMark[]): SoughtBand | null {
  const tape = tapeEnds(strokes);
  if (!tape) return null;
  const lengthPx = FACE_TO_PIN_MM * tape.pxPerMm;
  const places = [-1, 1].flatMap((way) => {
    const end = tape.ends[way < 0 ? 0 : 1];
    const back: Point = [way * tape.along[0], way * tape.along[1]];
    return placesBehind(gray, end, back, lengthPx).map((place) => ({ ...place, way }));
  });
  for (const { chamber, band } of distinct(places)) {
    const { facePx, backRad } = chamber;
    const [c, s] = [Math.cos(backRad), Math.sin(backRad)];
    const aside = band.aside * lengthPx;
    const onAxis: Point = [facePx[0] - s * aside, facePx[1] + c * aside];
    const pinPx: Point = [onAxis[0] - c * lengthPx, onAxis[1] - s * lengthPx];
    const found = findBand(gray, { facePx: onAxis, pinPx, nearPx: null });
    if (!found.ok) continue;
    const { centre, angleRad, longPx, shortPx } = found.value.rim;
    const radiusMm = longPx / tape.pxPerMm;
    const square: Point = [-Math.sin(angleRad), Math.cos(angleRad)];
    const out = dot(square, [-c, -s]);
    if (Math.abs(out) < LEAST_ALIKE || radiusMm < RADIUS_MM[0] || radiusMm > RADIUS_MM[1]) continue;
    const axisPx = Math.sign(out) * AXIS_MM * tape.pxPerMm;
    return {
      rim: found.value.marks,
      axisPx: [centre, [centre[0] + axisPx * square[0], centre[1] + axisPx * square[1]]],
      pxPerMm: tape.pxPerMm,
      ratio: shortPx / longPx,
    };
  }
  return null;
}

function placesBehind(gray: Gray, end: Point, back: Point, lengthPx: number): readonly Omit<Place, 'way'>[] {
  const reach = REACH.most * lengthPx;
  const [x, y] = [0, 1].map((k) => (end[k] as number) + REACH.middle * lengthPx * (back[k] as number)) as [
    number,
    number,
  ];
  const grain = Math.max(1, Math.round(lengthPx / GRAINS));
  const slopes = slopesIn(gray, [x - reach, y - reach], [x + reach, y + reach], grain, FAINT);
  if (!slopes) return [];
  return ASIDES_MM.flatMap((asideMm) => {
    const aside = (asideMm * lengthPx) / FACE_TO_PIN_MM;
    const facePx: Point = [end[0] - back[1] * aside, end[1] + back[0] * aside];
    const chamber = { facePx, backRad: Math.atan2(back[1], back[0]), lengthPx };
    const isUsual = ({ long }: BandPlace) => {
      const radiusMm = long * FACE_TO_PIN_MM;
      return radiusMm > RADIUS_MM[0] && radiusMm < RADIUS_MM[1];
    };
    const band = findBands(slopes, chamber).find(isUsual);
    return band ? [{ chamber, band }] : [];
  });
}

/** The best, one for each line along the tape. */
function distinct(places: readonly Place[]): readonly Place[] {
  const sorted = [...places].sort((a, b) => b.band.score - a.band.score);
  const isSame = (a: Place, b: Place) =>
    a.way === b.way && Math.abs(asideOf(a) - asideOf(b)) < SAME_ASIDE * a.chamber.lengthPx;
  return sorted
    .filter((place, i) => !sorted.slice(0, i).some((better) => isSame(better, place)))
    .slice(0, MOST_ASKED);
}

function asideOf({ chamber: { facePx, backRad, lengthPx }, band }: Place): number {
  return dot(facePx, [-Math.sin(backRad), Math.cos(backRad)]) + band.aside * lengthPx;
}

/** Where the outermost strokes are, the way from the one to the other, and how large a millimetre is along it. */
function tapeEnds(strokes: readonly FoundMark[]) {
  const sorted = [...strokes].sort((a, b) => (a.readingMm ?? 0) - (b.readingMm ?? 0));
  const [low, high] = [sorted[0], sorted.at(-1)];
  if (!low || !high) return null;
  const lengthPx = apart(low.placePx, high.placePx);
  const [dx, dy] = minus(high.placePx, low.placePx);
  return {
    ends: [low.placePx, high.placePx] as const,
    along: [dx / lengthPx, dy / lengthPx] as Point,
    pxPerMm: lengthPx / ((high.readingMm ?? 0) - (low.readingMm ?? 0)),
  };
}
