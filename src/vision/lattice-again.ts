/**
 * The graduations of a tape of which one is named here, the others by what another picture of the same tape shows.
 *
 * Model    another graduation lies in about a known direction, nearer or farther than there by up to a quarter: places for it half a
 *          whole one apart, each asked as if it were named (assist-lattice.ts); a wrong one lets whole ones fall beside the longest strokes
 * Assumes  the tape lies along the rod in both pictures
 * Fails    as assist-lattice.ts, with the reason of that place which came farthest
 */
import { fail, type Result } from '../basics/result.ts';
import { findLattice, type Lattice, wholeMm } from './assist-lattice.ts';
import type { AssistQuestion } from './assist-sight.ts';
import type { Gray } from './gray.ts';
import type { LatticeFailure } from './lattice-search.ts';
import type { Point } from './point.ts';

type Again = Extract<AssistQuestion, { readonly of: 'tape-again' }>;

/** Nearer and farther from camera to tape, and seen more or less from the side. */
const NEARER = 0.78;
const FARTHER = 1.28;
/** Of a whole one: what the guessed place may be off, as a standard deviation. */
const GUESS = 0.1;

export function findLatticeAgain(gray: Gray, { named, other }: Again): Result<Lattice, LatticeFailure> {
  const from = named.placePx;
  const to: Point = [other.aboutPx[0] - from[0], other.aboutPx[1] - from[1]];
  const wholes =
    Math.abs(other.readingMm - named.readingMm) / (wholeMm(named.readingMm, other.readingMm) ?? 1);
  const step = 0.45 / wholes;
  const wholePx = Math.hypot(...to) / wholes;
  let failed: Result<Lattice, LatticeFailure> = fail({ code: 'tape/odd-readings' });
  for (const by of fromOne(step)) {
    const placePx: Point = [from[0] + by * to[0], from[1] + by * to[1]];
    const guessed = { placePx, readingMm: other.readingMm, sigmaPx: GUESS * wholePx };
    const found = findLattice(gray, [named, guessed]);
    if (!found.ok) {
      if (rank(found) > rank(failed)) failed = found;
      continue;
    }
    return found;
  }
  return failed;
}

/** As far as in the other picture first, then nearer and farther in turn. */
function fromOne(step: number): readonly number[] {
  const n = Math.ceil((FARTHER - 1) / step);
  const all = Array.from(
    { length: 2 * n + 1 },
    (_, i) => 1 + step * Math.ceil(i / 2) * (i % 2 === 1 ? 1 : -1),
  );
  return all.filter((by) => by >= NEARER && by <= FARTHER);
}

/** What to say of several failures: that which came farthest. */
const ORDER: readonly LatticeFailure['code'][] = [
  'tape/odd-readings',
  'tape/named-near',
  'tape/strokes-small',
  'tape/no-edge',
  'tape/no-lattice',
  'tape/two-ways',
  'tape/few-strokes',
];
const rank = (result: Result<Lattice, LatticeFailure>) =>
  result.ok ? ORDER.length : ORDER.indexOf(result.failure.code);
