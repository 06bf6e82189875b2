/**
 * What each possible sight makes of the wrench's directions and lengths, and how much each weighs. A sight is a way the hex can lie, through a
 * lens that is possible.
 *
 * Model    the wrench's length by the sight, in logarithms: chi2 = sum ((l_i - mean)^2 / u_i^2), weighted mean;
 *          share = weights x exp(-(chi2 - least) / (2 s^2)), shares sum to 1; s^2 = least / freedom where that is over 1, freedom what three
 *          unknowns leave: lengths that scatter by more than was stated are of marks, or of a hand, worse than was stated; all u times s.
 *          Where few sights share nearly all, those between them are taken instead, up to FINEST times.
 * Assumes  pictures in the order of the applications: each angle is taken on the near side of the one before
 * Fails    never
 */
import { type HexSight, lnLengthSeen, sightsAbout, turnSeen } from './hex-sight.ts';
import type { Direction } from './wrench-directions.ts';

/** The pictures' directions through one lens, and how likely that lens is before anything was seen. */
export type Lens = { readonly weight: number; readonly directions: readonly Direction[] };

type Possible = { readonly sight: HexSight; readonly lens: Lens };

export type AnglesOfSight = {
  readonly possible: Possible;
  /** Of all sights, 0 to 1. */
  readonly share: number;
  readonly anglesRad: readonly number[];
  readonly uRad: readonly number[];
};

/** Tilt, its direction, and the length. */
const UNKNOWNS = 3;
/** A sight this much less likely than the best one adds nothing. */
const LEAST_SHARE = 1e-6;
/** Of all: what lies about the others adds too little to be looked at more closely. */
const LEAST_TO_SPLIT = 1e-3;

/** So few, counted by their shares, that what lies between them matters. */
const FEW = 40;
const FINEST = 2;

export type Sights = { readonly leastChiSquare: number; readonly all: readonly AnglesOfSight[] };

export function anglesOfSights(lenses: readonly Lens[], possible: readonly HexSight[]): Sights {
  let sights = weighed(lenses.flatMap((lens) => possible.map((sight) => ({ sight, lens }))));
  for (let level = 1; level <= FINEST; level++) {
    const count = 1 / sights.all.reduce((sum, { share }) => sum + share ** 2, 0);
    if (count > FEW) break;
    const finer = sights.all.flatMap(({ share, possible: { sight, lens } }) =>
      share > LEAST_TO_SPLIT ? sightsAbout(sight, level).map((near) => ({ sight: near, lens })) : [],
    );
    sights = weighed(finer);
  }
  return sights;
}

function weighed(all: readonly Possible[]): Sights {
  const seen = all.map((possible) => ({ possible, chiSquare: lengthChiSquare(possible) }));
  const pictures = all[0]?.lens.directions.length ?? 0;
  const leastChiSquare = seen.reduce((least, { chiSquare }) => Math.min(least, chiSquare), Number.MAX_VALUE);
  const worse = Math.sqrt(Math.max(1, leastChiSquare / Math.max(1, pictures - UNKNOWNS)));
  const kept = seen
    .map((each) => ({
      ...each,
      w:
        each.possible.lens.weight *
        each.possible.sight.weight *
        Math.exp((leastChiSquare - each.chiSquare) / (2 * worse ** 2)),
    }))
    .filter(({ w }) => w > LEAST_SHARE);
  const total = kept.reduce((sum, { w }) => sum + w, 0);
  const angles = kept.map(({ possible, w }) => {
    const { sight, lens } = possible;
    const { directions } = lens;
    const turns = directions.map((direction) => turnSeen(direction.seen, sight));
    return {
      possible,
      share: w / total,
      anglesRad: unwound(turns.map(({ angleRad }) => angleRad)),
      uRad: turns.map(({ byDirection, bySway }, i) => {
        const { uRad, swayRad } = directions[i] as Direction;
        return worse * byDirection * Math.hypot(uRad, swayRad * bySway);
      }),
    };
  });
  return { leastChiSquare, all: angles };
}

function lengthChiSquare({ sight, lens }: Possible): number {
  let [sum, weights, squares] = [0, 0, 0];
  for (const { seen, lnScale, uLnLength } of lens.directions) {
    const length = lnLengthSeen(seen, sight) - lnScale;
    const weight = 1 / uLnLength ** 2;
    sum += weight * length;
    weights += weight;
    squares += weight * length ** 2;
  }
  return Math.max(0, squares - sum ** 2 / weights);
}

function unwound(anglesRad: readonly number[]): readonly number[] {
  const whole = 2 * Math.PI;
  let last = anglesRad[0] ?? 0;
  return anglesRad.map((angle) => {
    last = angle - whole * Math.round((angle - last) / whole);
    return last;
  });
}
