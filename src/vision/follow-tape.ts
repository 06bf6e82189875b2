/**
 * The graduations of a tape in a further frame of a clip: found together on the blade, not followed one by one. They look alike, and
 * singly one is taken for its neighbour.
 *
 * Model    the seed's edge and scale (seed-tape.ts), carried into the frame by what stands still; there the edge anew, how far the
 *          blade has slid along it by its whole look (tape-strip.ts), each stroke anew, a projective scale through all.
 *          A mark's spot lies from its stroke as it did in the seed, turned with the picture.
 * Assumes  the tape stays where it is; sway shifts it by less than 60 mm against what carries it
 * Fails    null where the frame shows no edge, no blade like the seed's, or too few strokes
 */
import { isLattice, onEdge, strokesIn } from './assist-lattice.ts';
import { tapeEdge } from './assist-tape-edge.ts';
import { type PatchMap, shown } from './fit-patch.ts';
import type { FollowedSight } from './follow-sight.ts';
import type { Gray } from './gray.ts';
import { apart, dot, minus, type Point } from './point.ts';
import { scaleThrough } from './projective-scale.ts';
import { type Anchors, frameThrough, type SeedTape, strokeAt } from './seed-tape.ts';
import { scaleAlike } from './tape-strip.ts';

/** Sway takes the blade so far from its line as what stands still says. */
const EDGE_REACH_MM = 12;
/** Some fifty of these lie on the edge, whose line then goes through all its steps: more cost as much as all else here. */
const EDGE_PAIRS = 1000;

/** In the order of the marks. carry: a place of the seed picture, as what stands still takes it into this one. */
export function tapeIn(
  tape: SeedTape,
  gray: Gray,
  carry: (place: Point) => PatchMap | null,
): readonly (FollowedSight | null)[] | null {
  const { lattice, valuesMm } = tape;
  const { pxPerMm } = lattice.measuring;
  const edge = carriedBy(carry, tape.edge);
  const row = carriedBy(carry, tape.row);
  if (!edge || !row) return null;
  const [first, , end] = edge.map(({ place }) => place) as unknown as Anchors;
  const marked = frameThrough(first, end);
  const seen = tapeEdge(gray, marked, apart(end, first), EDGE_REACH_MM * pxPerMm, EDGE_PAIRS);
  const overBlade = minus(row[1].place, edge[1].place);
  if (!seen.ok) return null;
  const frame = onEdge(marked, seen.value, dot(overBlade, marked.across) < 0 ? -1 : 1);
  const { shear } = lattice.rough;
  // A rough scale is that of the edge, from which strokes lean.
  const lean = shear * lattice.middlePx;
  const along = row.map(({ place }) => dot(minus(place, frame.origin), frame.along) - lean);
  const expected = scaleThrough(valuesMm[0], valuesMm[2], along as [number, number, number]);
  const scale = scaleAlike(gray, { frame, rough: { scale: expected, shear }, pxPerMm }, tape.strip);
  const found = scale && strokesIn(gray, frame, { scale, shear }, lattice.measuring, lattice.bandMm);
  if (!found || !isLattice(found)) return null;
  const { steps } = row[1];
  return tape.marks.map((mark) => {
    const stroke = mark && strokeAt(found, mark.readingMm);
    if (!stroke) return null;
    const [x, y] = shown({ place: [0, 0], steps }, mark.fromStrokePx);
    return {
      placePx: [stroke.placePx[0] + x, stroke.placePx[1] + y],
      sigmaPx: Math.hypot(mark.sigmaPx, stroke.sigmaPx),
    };
  });
}

type Maps = readonly [PatchMap, PatchMap, PatchMap];

function carriedBy(carry: (place: Point) => PatchMap | null, anchors: Anchors): Maps | null {
  const maps = anchors.map(carry);
  return maps.includes(null) ? null : (maps as unknown as Maps);
}
