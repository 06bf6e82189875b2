import type { ReactNode } from 'react';
import type { BrakeState, View } from '../../marks/view.ts';
import { takeFound } from '../assists/take-found.ts';
import { useAssists } from '../assists/use-assists.ts';
import { marksProposed } from '../guesses/guess-asked.ts';
import { useGuesses } from '../guesses/use-guesses.ts';
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
  /** The way on without it. */
  readonly children: ReactNode;
};

/** One tap for all that was found; where nothing needed is missing then, it goes on as well, and the strip of steps leads past it. */
export function TakeFound({ current, state, next, children }: Props) {
  const view = viewOf(current.measurement, state);
  const found = useAssists(current.measurement, state).filter(({ search }) => search?.is === 'found');
  const { open } = useGuesses(current.measurement, state);
  const count = found.length + open.length;
  if (!view || count === 0) return children;
  const taking = (newId: () => string): TakeFoundAction => {
    const action = takeFound(state, found, newId);
    return { ...action, marks: [...action.marks, ...open.flatMap((each) => marksProposed(each, newId))] };
  };
  // What is there is not held up by what could be added.
  const enough = found.length === 0 && isAllThere(view, view.marks, current);
  const goesOn = !enough && isAllThere(view, applyToMarks(view.marks, taking(counted())), current);
  return (
    <>
      <button
        type="button"
        className="button main wide"
        onClick={() => {
          work.act(taking(() => crypto.randomUUID()));
          if (goesOn) work.goTo(next);
        }}
      >
        {goesOn ? ASSISTS.takeAndGoOn(nextStep(next)) : ASSISTS.take(count)}
      </button>
      {goesOn ? null : children}
    </>
  );
}

type TakeFoundAction = ReturnType<typeof takeFound>;

function counted(): () => string {
  let count = 0;
  return () => `${count++}`;
}

function isAllThere(view: View, marks: View['marks'], { measurement }: Current): boolean {
  return askedMarks({ ...view, marks }, measurement).every((asked) => missingOf(asked) === 0);
}
