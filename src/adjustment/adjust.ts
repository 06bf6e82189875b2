/**
 * The adjustment: all marks together, from several starts, to the geometry with its covariance.
 *
 * Model    least squares from several starts (search); the lowest chi-square is the answer. Another minimum nearly as low, at
 *          another place, is kept as a rival. Pictures taken for near each other and found far apart are adjusted once more, each
 *          for itself.
 * Assumes  every view has its face and pin marks and some view a scale (checked before).
 * Fails    adjustment/no-minimum: no start, or no run came to an end; adjustment/singular: an unknown that nothing holds.
 */
import { fail, ok, type Result } from '../basics/result.ts';
import { sparseFactor } from '../basics/sparse-symmetric.ts';
import type { Adjustment } from './adjustment.ts';
import { apartRad } from './apart.ts';
import { isBelievable } from './believable.ts';
import { type Effort, MIRRORED, QUICK, THOROUGH } from './effort.ts';
import { coreOf, extended } from './extend.ts';
import { type Layout, layoutOf } from './layout.ts';
import { markRowsOf } from './linearise.ts';
import { NOT_NEAR_RAD } from './priors.ts';
import type { Problem } from './problem.ts';
import type { Solution } from './run.ts';
import { minima, together } from './search.ts';

export type AdjustmentFailure = {
  readonly code: 'adjustment/no-minimum' | 'adjustment/singular';
};

/** Minima farther apart than this in chi-square do not rival each other: exp(-20 / 2) is a chance of 1 in 20,000. */
const RIVAL_EXCESS = 20;

/** first: the effort of the search whose minimum is taken where it can be believed. */
export function adjust(
  problem: Problem,
  first: Effort = coreOf(problem) ? coreEffort(problem) : QUICK,
): Result<Adjustment, AdjustmentFailure> {
  const adjusted = searched(problem, first);
  const refuted = problem.places === 'near' && adjusted.ok && apartRad(adjusted.value) > NOT_NEAR_RAD;
  return refuted ? searched({ ...problem, places: 'own' }, first) : adjusted;
}

function searched(problem: Problem, first: Effort): Result<Adjustment, AdjustmentFailure> {
  const layout = layoutOf(problem);
  const quick = isHeldByShape(problem) ? found(problem, layout, first) : [];
  const adjusted = adjustmentAt(problem, layout, quick);
  if (adjusted.ok && isBelievable(adjusted.value)) return adjusted;
  return adjustmentAt(problem, layout, together(layout, [...quick, ...found(problem, layout, THOROUGH)]));
}

/** A rim or a target shows its tilt by its shape. */
export function coreEffort({ references: { tape, clampBand, target } }: Problem): Effort {
  return tape && !clampBand && !target ? MIRRORED : QUICK;
}

/** Nearly to the minimum, of a problem that lies beside one adjusted already: some marks fewer, or side views more. */
export function adjustBeside(
  problem: Problem,
  { problem: before, best, rivals }: Adjustment,
): Result<Adjustment, AdjustmentFailure> {
  const layout = layoutOf(problem);
  const from = [best, ...rivals.map(({ solution }) => solution)];
  return adjustmentAt(problem, layout, together(layout, extended(problem, layout, before, from, false)));
}

/** Side views take part once the core views have found their minima. */
function found(problem: Problem, layout: Layout, effort: Effort): readonly Solution[] {
  const core = coreOf(problem);
  if (!core) return minima(problem, layout, effort);
  const ofCore = minima(core, layoutOf(core), effort);
  return together(layout, extended(problem, layout, core, ofCore));
}

/**
 * A row of graduations, a rim or a target shows its own tilt in the picture. An arm or one distance does not: there several
 * directions of view explain the marks nearly as well, and all of them are to be found.
 */
function isHeldByShape({ references: { tape, clampBand, target } }: Problem): boolean {
  return tape !== null || clampBand !== null || target !== null;
}

function adjustmentAt(
  problem: Problem,
  layout: Layout,
  found: readonly Solution[],
): Result<Adjustment, AdjustmentFailure> {
  const best = found[0];
  if (!best) return fail({ code: 'adjustment/no-minimum' });
  const factor = sparseFactor(best.fitted.equations.normal().matrix, layout.size);
  if (!factor) return fail({ code: 'adjustment/singular' });
  const rivals = found
    .slice(1)
    .map((solution) => ({ solution, excess: solution.fitted.chiSquare - best.fitted.chiSquare }))
    .filter(({ excess }) => excess < RIVAL_EXCESS);
  const markRows = markRowsOf(best.fitted.equations, best.x, problem, layout);
  return ok({ problem, layout, best, rivals, markRows, factor });
}
