/**
 * The ends of clevis pin and camshaft, in a picture in which nothing is marked but tape and clamp band are seen.
 *
 * Model    of all pairs of places (end-pairs.ts) one is right; its odds: by how round both are, how clear an edge of the arm between them is, and by
 *          where it lies: the pin by how far from the chamber's axis, the arm by how long it is and how it stands to the rod
 *          an end's place: the mean of the pairs that have it where the best one does, by their shares; its share: of those within the end
 *          likely: a camshaft with by far the most of all shares, itself so round, and the arm seen: the shares tell pairs apart, not whether there
 *          is a brake. Never a pin: part of its clevis, in the light while the pin is not, stands out as far
 * Assumes  what side-map.ts and end-pairs.ts assume
 * Fails    null where no place has most of the shares; no pin without its camshaft: what is round near the axis may be anything
 * Source   the weights: fitted to pictures of both renderers, rounded (docs/assists.md)
 */
import { type EndPair, endPairs } from './end-pairs.ts';
import type { Gray } from './gray.ts';
import { apart, type Point } from './point.ts';
import type { SoughtBand } from './seek-band.ts';
import { type SideMap, sideMap } from './side-map.ts';

/** radiusPx: of the largest such end. */
export type SoughtEnd = {
  readonly likely: boolean;
  readonly placePx: Point;
  readonly radiusPx: number;
};
export type SoughtEnds = { readonly pin: SoughtEnd | null; readonly camshaft: SoughtEnd | null };

/** Of the logarithm of the odds. */
const PIN_ROUND = 32;
const CAMSHAFT_ROUND = 36;
const ARM_SEEN = 10;
const PIN_ASIDE_MM = 8;
const ARM_MM = { usual: 135, sigma: 30 } as const;
const TURN_RAD = { usual: 1.45, sigma: 0.2 } as const;
/** A pin of 5/8 in, a camshaft of 1 5/8 in over its splines: common practice, no source. */
const RADIUS_MM = { pin: 8, camshaft: 20.6 } as const;
/** Places that are one: what is about an end draws its middle aside by so much. */
const ONE_MM = { pin: 12, camshaft: 14 } as const;
const LEAST_SHARE = 0.5;
const LIKELY = { share: 0.8, round: 0.08, arm: 0.5 } as const;

type Shared = EndPair & { readonly share: number };

export function seekEnds(gray: Gray, band: SoughtBand): SoughtEnds {
  const map = sideMap(gray, band);
  const shared = sharesOf(endPairs(map));
  const best = shared.reduce<Shared | null>((a, b) => (a && a.share >= b.share ? a : b), null);
  if (!best) return { pin: null, camshaft: null };
  const camshaft = endOf(map, shared, best, 'camshaft');
  if (camshaft.share < LEAST_SHARE) return { pin: null, camshaft: null };
  const pin = endOf(map, shared, best, 'pin');
  const likely = camshaft.share > LIKELY.share && best.camshaft.round > LIKELY.round && best.arm > LIKELY.arm;
  return {
    pin: pin.share > LEAST_SHARE ? { likely: false, ...pin.end } : null,
    camshaft: { likely, ...camshaft.end },
  };
}

function sharesOf(pairs: readonly EndPair[]): readonly Shared[] {
  const odds = pairs.map(oddsOf);
  const most = Math.max(...odds);
  const parts = odds.map((each) => Math.exp(each - most));
  const all = parts.reduce((sum, part) => sum + part, 0);
  return pairs.map((pair, i) => ({ ...pair, share: (parts[i] as number) / all }));
}

function oddsOf({ pin, camshaft, arm, armMm, turnRad }: EndPair): number {
  const offs = [
    pin.at[1] / PIN_ASIDE_MM,
    (armMm - ARM_MM.usual) / ARM_MM.sigma,
    (turnRad - TURN_RAD.usual) / TURN_RAD.sigma,
  ];
  const where = offs.reduce((sum, off) => sum - (off * off) / 2, 0);
  return PIN_ROUND * pin.round + CAMSHAFT_ROUND * camshaft.round + ARM_SEEN * arm + where;
}

function endOf(map: SideMap, shared: readonly Shared[], best: EndPair, of: keyof typeof RADIUS_MM) {
  const near = shared.filter((pair) => apart(pair[of].at, best[of].at) < ONE_MM[of]);
  const all = near.reduce((sum, { share }) => sum + share, 0);
  const mean = (k: 0 | 1) => near.reduce((sum, pair) => sum + (pair.share * pair[of].at[k]) / all, 0);
  const at: Point = [mean(0), mean(1)];
  const within = shared.filter((pair) => apart(pair[of].at, at) < RADIUS_MM[of]);
  return {
    share: within.reduce((sum, { share }) => sum + share, 0),
    end: { placePx: map.placePx(at), radiusPx: RADIUS_MM[of] * map.pxPerMm },
  };
}
