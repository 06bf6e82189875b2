/**
 * A tape in the frame from which a clip is followed: the strokes that belong to its marks, and its look.
 *
 * Model    with four marks or more: the blade's edge, the marks' own scale along it, the lean of strokes that lets most of them be found;
 *          with fewer, or where that fails, the lattice between the outermost two (assist-lattice.ts)
 * Fails    null where no lattice is found
 */
import {
  BANDS_MM,
  familyOf,
  isLattice,
  type MeasuredLattice,
  measureLattice,
  onEdge,
  sidesOf,
  strokesIn,
  wholeMm,
} from './assist-lattice.ts';
import { type Frame, placeIn, tapeEdge } from './assist-tape-edge.ts';
import type { Gray } from './gray.ts';
import type { NamedGraduation } from './lattice-search.ts';
import { apart, dot, minus, type Point } from './point.ts';
import { fitScale, placeOf, scaleThrough } from './projective-scale.ts';
import { type Strip, stripOf } from './tape-strip.ts';

export type Anchors = readonly [Point, Point, Point];
export type SeedTape = {
  readonly lattice: MeasuredLattice;
  readonly strip: Strip;
  /** Lowest, middle and highest. */
  readonly valuesMm: readonly [number, number, number];
  /** Where these lie in the seed: on the edge, and in the row that is looked at. */
  readonly edge: Anchors;
  readonly row: Anchors;
  /** null: its stroke was not found. */
  readonly marks: readonly (SeedMark | null)[];
};
type SeedMark = { readonly readingMm: number; readonly fromStrokePx: Point; readonly sigmaPx: number };

const LEANS = [-0.24, -0.16, -0.08, 0, 0.08, 0.16, 0.24];
const ENOUGH_MARKS = 4;
const EDGE_REACH_MM = 14;

export function seedTape(seed: Gray, marks: readonly NamedGraduation[]): SeedTape | null {
  const sorted = marks
    .filter(({ readingMm }) => wholeMm(readingMm) !== null)
    .sort((a, b) => a.readingMm - b.readingMm);
  const [low, high] = [sorted[0], sorted.at(-1)];
  if (!low || !high || low === high) return null;
  const byMarks = sorted.length < ENOUGH_MARKS ? null : latticeOfMarks(seed, sorted, low, high);
  const found = byMarks ?? searched(seed, low, high);
  if (!found) return null;
  const { frame, scale, rough, middlePx, measuring } = found;
  const valuesMm = [low.readingMm, (low.readingMm + high.readingMm) / 2, high.readingMm] as const;
  const anchors = (acrossPx: number) =>
    valuesMm.map((value) => placeIn(frame, placeOf(scale, value), acrossPx)) as unknown as Anchors;
  const edgeScale = { ...scale, a: scale.a - rough.shear * middlePx };
  const blade = { frame, rough: { ...rough, scale: edgeScale }, pxPerMm: measuring.pxPerMm };
  return {
    lattice: found,
    strip: stripOf(seed, blade, low.readingMm, high.readingMm),
    valuesMm,
    edge: anchors(0),
    row: anchors(middlePx),
    marks: marks.map(({ readingMm, placePx }) => {
      const stroke = strokeAt(found, readingMm);
      return stroke
        ? { readingMm, fromStrokePx: minus(placePx, stroke.placePx), sigmaPx: stroke.sigmaPx }
        : null;
    }),
  };
}

export const strokeAt = ({ marks }: MeasuredLattice, readingMm: number) =>
  marks.find((mark) => Math.abs((mark.readingMm as number) - readingMm) < 0.01);

function searched(seed: Gray, low: NamedGraduation, high: NamedGraduation): MeasuredLattice | null {
  const found = measureLattice(seed, [low, high]);
  return found.ok ? found.value : null;
}

function latticeOfMarks(
  seed: Gray,
  sorted: readonly NamedGraduation[],
  low: NamedGraduation,
  high: NamedGraduation,
): MeasuredLattice | null {
  const family = familyOf(sorted.map(({ readingMm }) => readingMm));
  if (!family) return null;
  const marked = frameThrough(low.placePx, high.placePx);
  const lengthPx = apart(high.placePx, low.placePx);
  const pxPerMm = lengthPx / (high.readingMm - low.readingMm);
  const edge = tapeEdge(seed, marked, lengthPx, EDGE_REACH_MM * pxPerMm);
  if (!edge.ok) return null;
  const frames = sidesOf(edge.value).map((inward) => onEdge(marked, edge.value, inward));
  const tried = frames.flatMap((frame) =>
    LEANS.flatMap((shear) => {
      const readings = sorted.map(({ readingMm, placePx }) => {
        const from = minus(placePx, frame.origin);
        return { value: readingMm, s: dot(from, frame.along) - shear * dot(from, frame.across), weight: 1 };
      });
      const [a, b] = [readings[0]?.s ?? 0, readings.at(-1)?.s ?? 0];
      const fit = fitScale(scaleThrough(low.readingMm, high.readingMm, [a, (a + b) / 2, b]), readings);
      if (!fit) return [];
      const rough = { scale: fit.scale, shear };
      return BANDS_MM.flatMap(
        (band) => strokesIn(seed, frame, rough, { low, high, pxPerMm, family }, band) ?? [],
      );
    }),
  );
  return tried.filter(isLattice).sort((a, b) => b.share - a.share || a.rmsPx - b.rmsPx)[0] ?? null;
}

export function frameThrough(from: Point, to: Point): Frame {
  const [dx, dy] = minus(to, from);
  const lengthPx = Math.hypot(dx, dy);
  const along: Point = [dx / lengthPx, dy / lengthPx];
  return { origin: from, along, across: [-along[1], along[0]] };
}
