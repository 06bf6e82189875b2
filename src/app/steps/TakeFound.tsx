import type { ReactNode } from 'react';
import type { BrakeState, View } from '../../marks/view.ts';
import { takeFound } from '../assists/take-found.ts';
import { type Assist, useAssists } from '../assists/use-assists.ts';
import { followsNext } from '../following/follows-next.ts';
import { work } from '../stores.ts';
import { ASSISTS } from '../words/assists.ts';
import { nextStep } from '../words/steps.ts';
import { applyToMarks } from '../work/apply-to-marks.ts';
import { askedMarks, missingOf } from '../work/asked-marks.ts';
import { type Current, viewOf } from '../work/current.ts';
import type { Step } from '../work/steps.ts';

type Props = {
  readonly current: Current;
  readonly state: BrakeState;
  readonly next: Step;
  /** The way on without it, where something was found. */
  readonly beside: ReactNode;
  /** Where nothing was. */
  readonly children: ReactNode;
};

/** One tap for all that was found; where nothing needed is missing then, it goes on as well, and the strip of steps leads past it. While more is
 * looked for it stays, for that makes the stroke surer; and of a clip that is still to be followed: that is begun here, and the next picture comes of it. */
export function TakeFound({ current, state, next, beside, children }: Props) {
  const view = viewOf(current.measurement, state);
  const assists = useAssists(current.measurement, state);
  const found = assists.filter(({ search }) => search?.is === 'found');
  const isLooking = assists.some(({ search }) => search === null || search.is === 'under-way');
  if (!view || found.length === 0) return children;
  const isToFollow = followsNext(current, view) || found.some(({ question }) => question.of === 'arm-turn');
  const goesOn = !isToFollow && !isLooking && isAllThere(view, found, state, current);
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
