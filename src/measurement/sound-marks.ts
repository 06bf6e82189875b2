/**
 * Which followed marks the others contradict: they are left out, in rounds, until none is.
 *
 * Model    standardised residual of each followed mark (residual-test.ts); of those over four, the ones over half the worst go; then
 *          adjusted anew beside the minimum before
 * Assumes  marks by hand are a person's word and stay, whatever the others say; face and pin of the two main views stay as well
 * Fails    never: after the last round what is left is what it is, and the measurement's own test says so
 * Source   data snooping: Baarda 1968 (from memory); going by rounds is common practice
 */
import { adjust, adjustBeside, coreEffort } from '../adjustment/adjust.ts';
import type { Adjustment } from '../adjustment/adjustment.ts';
import { coreOf } from '../adjustment/extend.ts';
import type { Problem } from '../adjustment/problem.ts';
import { residualTest } from '../adjustment/residual-test.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import type { Mark } from '../marks/mark.ts';
import type { View } from '../marks/view.ts';
import type { MeasureInput, MeasurementFailure } from './measurement.ts';
import { problemFromViews } from './problem-from-views.ts';

const CONTRADICTED = 4;
const MOST_ROUNDS = 12;

export type SoundMarks = {
  readonly input: MeasureInput;
  readonly adjustment: Adjustment;
};

export function soundMarks(input: MeasureInput): Result<SoundMarks, MeasurementFailure> {
  let now = input;
  let adjustment: Adjustment | null = null;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const problem = problemFromViews(now);
    if (!problem.ok) return problem;
    const adjusted: ReturnType<typeof adjust> = adjustment
      ? adjustBeside(problem.value, adjustment)
      : adjustedFirst(problem.value);
    if (!adjusted.ok) return fail({ code: 'measurement/no-solution' });
    adjustment = adjusted.value;
    const gone = contradicted(now, adjustment);
    if (gone.size === 0) break;
    now = without(now, gone);
  }
  return adjustment ? ok({ input: now, adjustment }) : fail({ code: 'measurement/no-solution' });
}

/** From the core views alone: those of the others may be far off as yet. */
function adjustedFirst(problem: Problem): ReturnType<typeof adjust> {
  const core = coreOf(problem);
  if (!core) return adjust(problem);
  const ofCore = adjust(core, coreEffort(core));
  return ofCore.ok ? adjustBeside(problem, ofCore.value) : ofCore;
}

/** Their ids. */
function contradicted({ views }: MeasureInput, adjustment: Adjustment): ReadonlySet<string> {
  const all = residualTest(adjustment).marks;
  const seedOf = new Set(views.flatMap(({ marks }) => marks.filter(isOfHand).map(({ id }) => id)));
  const needed = new Set(views.flatMap(({ marks }) => marks.filter(isNeeded).map(({ id }) => id)));
  const judged = all.filter(
    ({ rows: { mark } }) => !needed.has(mark.id) && (!isOfHand(mark) || mark.followedFrom),
  );
  const bound = Math.max(CONTRADICTED, (judged[0]?.standardised ?? 0) / 2);
  const gone = new Set<string>();
  for (const { rows, standardised } of judged) {
    if (standardised <= bound) break;
    // A seed's own spot that all others contradict: what was followed from it is no one spot.
    if (seedOf.has(rows.mark.id))
      for (const { mark } of adjustment.markRows)
        if (mark.followedFrom === rows.mark.id && !needed.has(mark.id)) gone.add(mark.id);
    gone.add(rows.mark.id);
  }
  for (const id of seedOf) gone.delete(id);
  return gone;
}

const isOfHand = ({ placedBy }: Mark) => placedBy !== 'tracker';
const isNeeded = ({ kind, placedBy }: Mark) =>
  placedBy === 'tracker' && (kind === 'chamber-face' || kind === 'clevis-pin');

function without(input: MeasureInput, gone: ReadonlySet<string>): MeasureInput {
  const left = (view: View): View => ({ ...view, marks: view.marks.filter(({ id }) => !gone.has(id)) });
  return { ...input, views: input.views.map(left), sideViews: input.sideViews.map(left) };
}
