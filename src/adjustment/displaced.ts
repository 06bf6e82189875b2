/**
 * The adjustment solved anew, from the solution found, for observations displaced from their values.
 *
 * Model    minimise |r(x) - d|^2, d the displacements in units of each observation's standard uncertainty. Marks and priors are
 *          displaced as values, the other equations (arc, contact, direction of view) as if their right side were.
 *          First Gauss-Newton's steps, the first one with J of the solution found, until one promises a fall of the sum of less than
 *          NEAR_FALL. They are taken whole, though the sum rises at first: a step along a curved valley leaves it, and
 *          the next one comes back to it farther down; halved ones creep. Where they do not come there, Levenberg-Marquardt's do.
 *          Then steps by slopes alone (secant-steps.ts), each a fraction of the work. Steps shrink by a like factor each: the fall F of
 *          the sum that a step promises leaves about F^2 / (fall before) after it, and where that is little enough the
 *          step is taken as the last one. Where they do not end, Levenberg-Marquardt's again.
 * Assumes  displacements of some standard uncertainties: the minimum near the solution found is meant, other minima are not
 *          searched for. A rim mark's bound to the near half is no observation and stays where it is.
 * Fails    null: the fit did not come to rest.
 */
import { roomForFactor, type SparseFactor, sparseFactor, sparseSolve } from '../basics/sparse-symmetric.ts';
import type { Adjustment } from './adjustment.ts';
import { type DisplacedProblem, displacedProblem, type Slope } from './displaced-problem.ts';
import { type Equations, type Normal, roomForNormal } from './equations.ts';
import { type Fitted, FULL_FIT, levenbergMarquardt } from './levenberg-marquardt.ts';
import { product, SecantSteps } from './secant-steps.ts';

export type DisplacedFit = Pick<DisplacedProblem, 'observations'> & {
  readonly solve: (displacements: Float64Array) => Float64Array | null;
};

/** Some hundredths of a standard uncertainty, new with every trial: they drown in the spread. */
const FALL_LEFT = 1e-3;
/** From here on the normal matrix hardly changes any more. */
const NEAR_FALL = 1;
/** A last step that promises more, in falls left, is not believed to leave so little. */
const MOST_LAST = 3;
/** Where so many steps do not come near, more of them seldom do. */
const MOST_WHOLE_STEPS = 5;
const MOST_SECANT_STEPS = 20;
const MOST_SHORTENED = 4;

/** A place with the next step from it, to be taken off, and the fall of the sum that it promises; before: what the step to here did. */
type Reached = Slope & {
  readonly x: Float64Array;
  readonly step: Float64Array;
  readonly fall: number;
  readonly before: number;
};

export function displacedFit(adjustment: Adjustment, fallLeft = FALL_LEFT): DisplacedFit {
  const displaced = displacedProblem(adjustment);
  const { best, factor, layout } = adjustment;
  const room: Room = { factor: roomForFactor(layout.size), normal: roomForNormal(layout.size) };
  const nearBy = wholeSteps(displaced, room);
  const damped = (from: Float64Array, tolerance: number): Fitted | null => {
    const fitted = levenbergMarquardt(displaced.equationsAt, from.slice(), { ...FULL_FIT, tolerance });
    return fitted.converged ? fitted : null;
  };
  const near = (step: Float64Array): Reached | null => {
    const whole = nearBy(best.x, step);
    if (whole) return whole;
    const fitted = damped(best.x, NEAR_FALL);
    return fitted && reachedBy(fitted.x, fitted.equations, room);
  };
  return {
    observations: displaced.observations,
    solve: (displacements) => {
      displaced.displace(displacements);
      const { chiSquare: most, gradient } = displaced.slopeFound();
      const from = near(sparseSolve(factor, gradient));
      if (!from) return null;
      const followed = secantSteps(displaced, room.factor, from, { most, fallLeft });
      return followed ?? damped(from.x, fallLeft)?.x ?? null;
    },
  };
}

/** Overwritten at every step: holds the normal matrix of the last one, and its factor. */
type Room = { readonly factor: SparseFactor; readonly normal: Normal };

/** Gauss-Newton's, from a place and the first step. */
function wholeSteps(displaced: DisplacedProblem, room: Room) {
  let spare: Equations | undefined;
  return (from: Float64Array, firstStep: Float64Array): Reached | null => {
    let [x, step] = [from, firstStep];
    // That of a linear step: its square in standard uncertainties, one for each unknown in the mean.
    let before = room.factor.n;
    for (let steps = 0; steps < MOST_WHOLE_STEPS; steps++) {
      x = less(x, step);
      spare = displaced.equationsAt(x, spare);
      const at = reachedBy(x, spare, room, before);
      if (!at || at.fall <= NEAR_FALL) return at;
      ({ step, fall: before } = at);
    }
    return null;
  };
}

function reachedBy(
  x: Float64Array,
  equations: Equations,
  { factor, normal }: Room,
  before?: number,
): Reached | null {
  equations.normal(normal);
  if (!sparseFactor(normal.matrix, factor.n, factor)) return null;
  const gradient = normal.gradient.slice();
  const step = sparseSolve(factor, gradient);
  const fall = product(step, gradient);
  return { x, chiSquare: equations.chiSquare, gradient, step, fall, before: before ?? fall };
}

function secantSteps(
  displaced: DisplacedProblem,
  factor: SparseFactor,
  from: Reached,
  { most, fallLeft }: { readonly most: number; readonly fallLeft: number },
): Float64Array | null {
  const secant = new SecantSteps(factor);
  let at = from;
  for (let steps = 0; steps < MOST_SECANT_STEPS; steps++) {
    const left = at.fall * Math.min(1, at.fall / at.before);
    if (at.chiSquare <= most && left <= fallLeft && at.fall <= MOST_LAST * fallLeft)
      return less(at.x, at.step);
    const to = moved(displaced, at);
    secant.learn(at, to);
    const step = secant.step(to.gradient);
    at = { ...to, step, fall: product(step, to.gradient), before: at.fall };
  }
  return null;
}

/** Shortened where the sum rises. */
function moved(
  displaced: DisplacedProblem,
  { x: from, chiSquare, step, fall }: Reached,
): Slope & { readonly x: Float64Array } {
  let share = 1;
  for (let shortened = 0; ; shortened++) {
    const x = less(from, step, share);
    const slope = displaced.slopeAt(x);
    const rise = slope.chiSquare - chiSquare;
    if (!(rise > 0) || shortened === MOST_SHORTENED) return { x, ...slope };
    // Where the parabola through both sums, with the slope at the first, is lowest.
    const lowest = (fall * share * share) / (rise + 2 * fall * share);
    share = Math.max(0.1 * share, Math.min(0.5 * share, lowest));
  }
}

function less(x: Float64Array, step: Float64Array, share = 1): Float64Array {
  const next = x.slice();
  for (let i = 0; i < next.length; i++) next[i] = (next[i] as number) - share * (step[i] as number);
  return next;
}
