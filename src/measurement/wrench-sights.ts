/**
 * What each possible sight makes of the wrench's directions and lengths, and how much each weighs.
 *
 * Model    the wrench's length by the sight, in logarithms: chi2 = sum ((l_i - mean)^2 / u_i^2), weighted mean;
 *          share = weight x exp(-(chi2 - least) / (2 s^2)), shares sum to 1; s^2 = least / freedom where that is over 1, freedom what three
 *          unknowns leave: lengths that scatter by more than was stated are of marks, or of a hand, worse than was stated; all u times s
 * Assumes  pictures in the order of the applications: each angle is taken on the near side of the one before
 * Fails    never
 */
import { type HexSight, type SeenTurn, turnSeen } from './hex-sight.ts';
import type { Direction } from './wrench-directions.ts';

export type AnglesOfSight = {
  /** Of all sights, 0 to 1. */
  readonly share: number;
  readonly anglesRad: readonly number[];
  readonly uRad: readonly number[];
};

/** Tilt, its direction, and the length. */
const UNKNOWNS = 3;
/** A sight this much less likely than the best one adds nothing. */
const LEAST_SHARE = 1e-6;

export function anglesOfSights(
  directions: readonly Direction[],
  possible: readonly HexSight[],
): { readonly leastChiSquare: number; readonly all: readonly AnglesOfSight[] } {
  const seen = possible.map((sight) => {
    const turns = directions.map(({ directionRad, lengthOverFocal }) =>
      turnSeen(directionRad, lengthOverFocal, sight),
    );
    return { sight, turns, chiSquare: lengthChiSquare(directions, turns) };
  });
  const leastChiSquare = seen.reduce((least, { chiSquare }) => Math.min(least, chiSquare), Number.MAX_VALUE);
  const worse = Math.sqrt(Math.max(1, leastChiSquare / Math.max(1, directions.length - UNKNOWNS)));
  const weighed = seen
    .map((each) => ({
      ...each,
      w: each.sight.weight * Math.exp((leastChiSquare - each.chiSquare) / (2 * worse ** 2)),
    }))
    .filter(({ w }) => w > LEAST_SHARE);
  const total = weighed.reduce((sum, { w }) => sum + w, 0);
  const all = weighed.map(({ turns, w }) => ({
    share: w / total,
    anglesRad: unwound(turns.map(({ angleRad }) => angleRad)),
    uRad: turns.map(({ byDirection, bySway }, i) => {
      const { uRad, swayRad } = directions[i] as Direction;
      return worse * byDirection * Math.hypot(uRad, swayRad * bySway);
    }),
  }));
  return { leastChiSquare, all };
}

function lengthChiSquare(directions: readonly Direction[], turns: readonly SeenTurn[]): number {
  let [sum, weights, squares] = [0, 0, 0];
  for (const [i, { lnScale, uLnLength }] of directions.entries()) {
    const length = (turns[i] as SeenTurn).lnLength - lnScale;
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
