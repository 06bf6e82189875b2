import type { ReactNode } from 'react';
import type { BrakeState, View } from '../../marks/view.ts';
import { takeFound } from '../assists/take-found.ts';
import { type Assist, useAssists } from '../assists/use-assists.ts';
import { work } from '../stores.ts';
import { ASSISTS } from '../words/assists.ts';
import { nextStep } from '../words/steps.ts';
import { applyToMarks } from '../work/apply-to-marks.ts';
import { askedMarks, missingOf } from '../work/asked-marks.ts';
import { type Current, viewOf } from '../work/current.ts';
import type { Step } from '../work/steps.ts';

const BOTH: readonly BrakeState[] = ['released', 'applied'];

type Props = {
  readonly current: Current;
  readonly state: BrakeState;
  readonly next: Step;
  /** The way on without it, where something was found. */
  readonly beside: ReactNode;
  /** Where nothing was. */
  readonly children: ReactNode;
};

/** One tap for all that was found; where nothing needed is missing then, it goes on as well, and the strip of steps leads past it. Of a clip that
 * is still to be followed it stays: that is begun here, and the next picture comes of it. */
export function TakeFound({ current, state, next, beside, children }: Props) {
  const view = viewOf(current.measurement, state);
  const found = useAssists(current.measurement, state).filter(({ search }) => search?.is === 'found');
  if (!view || found.length === 0) return children;
  const isToFollow =
    view.frame !== null &&
    (BOTH.some((each) => !viewOf(current.measurement, each)) ||
      found.some(({ question }) => question.of === 'arm-turn'));
  const goesOn = !isToFollow && isAllThere(view, found, state, current);
  return (
    <>
      <button
        type="button"
        className="button main wide"
        onClick={() => {
          work.act(takeFound(state, found, () => crypto.randomUUID()));
          if (goesOn) work.goTo(next);
        }}
      >
        {goesOn ? ASSISTS.takeAndGoOn(nextStep(next)) : ASSISTS.take(found.length)}
      </button>
      {goesOn ? null : beside}
    </>
  );
}

function isAllThere(
  view: View,
  found: readonly Assist[],
  state: BrakeState,
  { measurement }: Current,
): boolean {
  let count = 0;
  const marks = applyToMarks(
    view.marks,
    takeFound(state, found, () => `${count++}`),
  );
  return askedMarks({ ...view, marks }, measurement).every((asked) => missingOf(asked) === 0);
}
