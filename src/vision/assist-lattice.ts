/**
 * The graduations of a tape between two that were named, and a little beyond: a projective lattice along the blade's edge.
 *
 * Model    edge of the blade (assist-tape-edge.ts), rough places by search (lattice-search.ts); then each stroke for itself
 *          (assist-strokes.ts) in a row beside the edge, and a projective scale through all of them (projective-scale.ts), which says
 *          whose stroke it is; what is handed on are the strokes' own places, not the scale's: their errors are their own
 * Assumes  dark strokes on a lighter blade, whole inches or centimetres the longest; a straight blade
 * Fails    with the reason: readings that are no multiples of a quarter inch or of five millimetres, named too near to each other,
 *          strokes too close to each other, no edge, no lattice, two that fit alike, too few strokes on it
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { MM_PER_INCH } from '../basics/units.ts';
import type { FoundMark } from './assist-sight.ts';
import { strokeNear } from './assist-strokes.ts';
import { type Frame, levelIn, placeIn, type TapeEdge, tapeEdge } from './assist-tape-edge.ts';
import type { Gray } from './gray.ts';
import {
  type Family,
  type LatticeFailure,
  type NamedGraduation,
  type Rough,
  searchLattice,
} from './lattice-search.ts';
import { isInPicture } from './level-at.ts';
import type { Point } from './point.ts';
import { fitScale, type ProjectiveScale, placeOf, type Reading, stepAt } from './projective-scale.ts';

const FAMILIES: readonly Family[] = [
  { majorMm: MM_PER_INCH, outMm: MM_PER_INCH / 4, endMm: [7.6, 9.4] },
  { majorMm: 10, outMm: 5, endMm: [6, 8] },
];
const LEAST_MAJORS = 2;
/** Of whole ones, beyond the named on both sides: handed on as well. */
const BEYOND = 2;
const LEAST_SPACING_PX = 7;
/** Rows beside the edge: where shorter strokes between them end depends on the tape. */
export const BANDS_MM = [
  [0.6, 2],
  [1.2, 3.2],
  [2.6, 4.4],
  [3.4, 5.4],
] as const;
/** A graduation is marked no farther from its edge: beside a guessed one the blade's other edge may seem the nearer. */
const FROM_EDGE_MM = 10;
const LEAST_SHARE = 0.7;
const MOST_RMS_PX = 0.6;
/** Of a search by readings that may be wrong: then quarters fall beside shorter strokes, by up to half of what these are apart. */
const SEARCHED_RMS_PX = 0.3;
const SEARCHED_RMS_MM = 0.1;
/** Of what a stroke's own fit leaves over, over its depth. */
const MOST_MISFIT = 0.35;
/** What strokes' edges, dirt and pixels do to one stroke beside its own noise. Measured: docs/assists.md. */
const FLOOR_PX = 0.1;
const PER_RMS = 0.5;

export type Lattice = { readonly marks: readonly FoundMark[] };
/** With how it was found: it can be found so again in a picture beside this one (seed-tape.ts). scale: in the middle row of the band. */
export type MeasuredLattice = Lattice & {
  readonly rmsPx: number;
  readonly share: number;
  readonly frame: Frame;
  readonly rough: Rough;
  readonly scale: ProjectiveScale;
  readonly middlePx: number;
  readonly bandMm: readonly [number, number];
  readonly measuring: Measuring;
};

export function findLattice(
  gray: Gray,
  named: readonly [NamedGraduation, NamedGraduation],
): Result<Lattice, LatticeFailure> {
  const found = measureLattice(gray, named);
  return found.ok ? ok({ marks: found.value.marks }) : found;
}

export function measureLattice(
  gray: Gray,
  named: readonly [NamedGraduation, NamedGraduation],
): Result<MeasuredLattice, LatticeFailure> {
  const [low, high] = [...named].sort((a, b) => a.readingMm - b.readingMm) as [
    NamedGraduation,
    NamedGraduation,
  ];
  const family = familyOf(named.map(({ readingMm }) => readingMm));
  if (!family) return fail({ code: 'tape/odd-readings' });
  const rangeMm = high.readingMm - low.readingMm;
  if (rangeMm < LEAST_MAJORS * family.majorMm - 0.01)
    return fail({ code: 'tape/named-near', leastMm: LEAST_MAJORS * family.majorMm });
  const [dx, dy] = [high.placePx[0] - low.placePx[0], high.placePx[1] - low.placePx[1]];
  const lengthPx = Math.hypot(dx, dy);
  const pxPerMm = lengthPx / rangeMm;
  const spacingPx = family.outMm * pxPerMm;
  if (spacingPx < LEAST_SPACING_PX)
    return fail({ code: 'tape/strokes-small', spacingPx, leastPx: LEAST_SPACING_PX });
  const along: Point = [dx / lengthPx, dy / lengthPx];
  const marked: Frame = { origin: low.placePx, along, across: [-along[1], along[0]] };
  const edge = tapeEdge(gray, marked, lengthPx, Math.max(6, 14 * pxPerMm));
  if (!edge.ok) return edge;
  const { at, slope } = edge.value;
  const isBeside = ({ sigmaPx }: NamedGraduation, acrossPx: number) =>
    Math.abs(acrossPx) < FROM_EDGE_MM * pxPerMm + 3.5 * sigmaPx;
  if (!isBeside(low, at) || !isBeside(high, at + slope * lengthPx))
    return fail({ code: 'tape/no-edge', share: 0 });
  const onSide = (inward: 1 | -1): Result<MeasuredLattice, LatticeFailure> => {
    const frame = onEdge(marked, edge.value, inward);
    const search = searchLattice(gray, frame, { low, high, lengthPx, pxPerMm, family });
    if (!search.ok) return search;
    return measureStrokes(gray, frame, search.value, { low, high, pxPerMm, family });
  };
  const [likely, other] = sidesOf(edge.value);
  const found = onSide(likely);
  if (found.ok) return found;
  const second = onSide(other);
  return second.ok ? second : found;
}

/** On which side of its edge the blade is, the likely one first: before a bright sky its strokes are darker than what lies beyond. */
export const sidesOf = ({ lighter }: TapeEdge): readonly [1 | -1, 1 | -1] => [
  lighter,
  lighter === 1 ? -1 : 1,
];

export const familyOf = (readingsMm: readonly number[]): Family | null =>
  FAMILIES.find(({ outMm }) => readingsMm.every((mm) => isMultiple(mm, outMm))) ?? null;

/** An inch or a centimetre; null where the readings are neither's. */
export const wholeMm = (...readingsMm: readonly number[]): number | null =>
  familyOf(readingsMm)?.majorMm ?? null;

const isMultiple = (valueMm: number, stepMm: number) =>
  Math.abs(valueMm / stepMm - Math.round(valueMm / stepMm)) * stepMm < 0.02;

/** inward: the way from the edge over the blade, along or against t. */
export function onEdge(
  { origin, along, across }: Frame,
  { at, slope }: Pick<TapeEdge, 'at' | 'slope'>,
  inward: 1 | -1,
): Frame {
  const length = Math.hypot(1, slope);
  const turned: Point = [(along[0] + slope * across[0]) / length, (along[1] + slope * across[1]) / length];
  return {
    origin: placeIn({ origin, along, across }, 0, at),
    along: turned,
    across: [-turned[1] * inward, turned[0] * inward],
  };
}

export type Measuring = {
  readonly low: NamedGraduation;
  readonly high: NamedGraduation;
  readonly pxPerMm: number;
  readonly family: Family;
};
type Seen = { readonly value: number; readonly s: number; readonly sigmaPx: number };

function measureStrokes(
  gray: Gray,
  frame: Frame,
  rough: Rough,
  measuring: Measuring,
): Result<MeasuredLattice, LatticeFailure> {
  const { family, low, high, pxPerMm } = measuring;
  // Whole ones alone would not do: of a wrong scale, too, each may fall on some stroke.
  const beyondMm = BEYOND * family.majorMm;
  const tried = BANDS_MM.flatMap((band) => strokesIn(gray, frame, rough, measuring, band, beyondMm) ?? []);
  const best = tried.sort((a, b) => b.share - a.share - (b.rmsPx - a.rmsPx))[0];
  const mostRmsPx = Math.hypot(SEARCHED_RMS_PX, SEARCHED_RMS_MM * pxPerMm);
  if (best && isLattice(best) && best.rmsPx < mostRmsPx) return ok(best);
  const sought = Math.round((high.readingMm - low.readingMm) / family.outMm) + 1;
  return fail({ code: 'tape/few-strokes', found: Math.round((best?.share ?? 0) * sought), sought });
}

export const isLattice = ({ share, rmsPx }: MeasuredLattice) => share >= LEAST_SHARE && rmsPx < MOST_RMS_PX;

/** beyondMm: how far beyond both named ones strokes are handed on; they do not count in the fit. */
export function strokesIn(
  gray: Gray,
  frame: Frame,
  rough: Rough,
  measuring: Measuring,
  bandMm: readonly [number, number],
  beyondMm = 0,
): MeasuredLattice | null {
  const { low, high, pxPerMm, family } = measuring;
  const { outMm } = family;
  const values: number[] = [];
  for (
    let k = Math.ceil((low.readingMm - beyondMm) / outMm - 1e-6);
    k * outMm <= high.readingMm + beyondMm + 1e-6;
    k++
  )
    if (k > 0) values.push(k * outMm);
  const isBetween = (mm: number) => mm > low.readingMm - 1e-6 && mm < high.readingMm + 1e-6;
  const between = values.filter(isBetween);
  const [from, to] = [Math.max(1.2, bandMm[0] * pxPerMm), Math.max(3, bandMm[1] * pxPerMm)];
  const rows = Math.max(3, Math.min(10, Math.round(to - from)));
  const middle = (from + to) / 2;
  const width = Math.max(0.9, Math.hypot(0.8, 0.13 * pxPerMm));
  const profile = (s: number) => {
    let sum = 0;
    for (let row = 0; row < rows; row++) {
      const t = from + ((to - from) * (row + 0.5)) / rows;
      sum += levelIn(gray, frame, s + rough.shear * (t - middle), t);
    }
    return sum / rows;
  };
  const seenFrom = (sought: readonly number[], scale: ProjectiveScale, shift: number): readonly Seen[] => {
    const seen: Seen[] = [];
    for (const value of sought) {
      const s0 = placeOf(scale, value) + shift;
      const place = placeIn(frame, s0, middle);
      if (!isInPicture(gray, place[0], place[1], 8)) continue;
      const spacing = Math.abs(stepAt(scale, value)) * outMm;
      const stroke = strokeNear(profile, s0, Math.min(0.42 * spacing, 3.5 * width), width);
      if (stroke && stroke.misfit < MOST_MISFIT)
        seen.push({ value, s: stroke.atPx, sigmaPx: stroke.sigmaPx });
    }
    return seen;
  };
  let scale = rough.scale;
  let seen: readonly Seen[] = [];
  let fit: ReturnType<typeof fitScale> = null;
  for (let round = 0; round < 2; round++) {
    seen = round === 0 ? seenFrom(between, scale, rough.shear * middle) : seenFrom(values, scale, 0);
    const inner = seen.filter(({ value }) => isBetween(value));
    fit = fitScale(
      scale,
      inner.map(({ value, s, sigmaPx }): Reading => ({ value, s, weight: 1 / (0.02 + sigmaPx ** 2) })),
    );
    if (!fit) return null;
    scale = fit.scale;
  }
  if (!fit) return null;
  const kept = fit.kept.filter(Boolean).length;
  const { rmsPx } = fit;
  const limit = Math.max(0.4, 3.5 * rmsPx);
  const marks = seen
    .filter(({ value, s }) => Math.abs(s - placeOf(scale, value)) < limit)
    .map(
      ({ value, s, sigmaPx }): FoundMark => ({
        placePx: placeIn(frame, s, middle),
        readingMm: value,
        sigmaPx: Math.hypot(sigmaPx, PER_RMS * rmsPx, FLOOR_PX),
      }),
    );
  return {
    marks,
    rmsPx,
    share: kept / between.length,
    frame,
    rough,
    scale,
    middlePx: middle,
    bandMm,
    measuring,
  };
}
