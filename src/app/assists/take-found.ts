import type { BrakeState } from '../../marks/view.ts';
import type { FoundMark } from '../../vision/assist-sight.ts';
import type { MarkAction } from '../work/actions.ts';
import { marksFound } from './assist-asked.ts';
import type { Assist } from './use-assists.ts';

/** What the person chose, where more than one was found. */
export const chosen = (assist: Assist, marks: readonly FoundMark[]): Assist => ({
  ...assist,
  search: { is: 'found', marks },
});

/** All of them as one step, to be undone as one. */
export function takeFound(
  state: BrakeState,
  assists: readonly Assist[],
  newId: () => string,
): Extract<MarkAction, { readonly type: 'take-found' }> {
  const found = assists.flatMap((assist) =>
    assist.search?.is === 'found' ? [{ assist, marks: assist.search.marks }] : [],
  );
  return {
    type: 'take-found',
    state,
    marks: found.flatMap(({ assist, marks }) => marksFound(assist, marks, newId)),
    instead: found.flatMap(({ assist }) => assist.instead.map(({ id }) => id)),
  };
}
