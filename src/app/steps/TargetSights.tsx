import { useStore } from 'zustand';
import { BRAKE_STATES, type BrakeState } from '../../marks/view.ts';
import { TARGET_MARKERS } from '../../references/target-markers.ts';
import { pictureKey } from '../media/asked-picture.ts';
import { work } from '../stores.ts';
import { type Search, targetSearches } from '../target/target-store.ts';
import { TARGET, targetSightText } from '../words/target.ts';
import { type Current, viewOf } from '../work/current.ts';

/** For each picture, how much of the printed target is marked in it, or why none is. */
export function TargetSights({ current }: { readonly current: Current }) {
  const searches = useStore(targetSearches, (state) => state.searches);
  const { views } = current.measurement;
  const states = BRAKE_STATES.filter((state) => state !== 'pulled' || viewOf(current.measurement, state));
  const sights = states.map((state) => ({ state, ...sightOf(current, state, searches) }));
  const searchAgain = () => {
    targetSearches.forget(views.map(pictureKey));
    for (const { state } of views) work.act({ type: 'place-target', state, marks: [] });
  };
  const underWay = sights.some(({ is }) => is === 'under-way');
  const complete = sights.every(({ is }) => is === 'complete');
  return (
    <>
      <ul className="target-sights" aria-label={TARGET.sights} aria-live="polite">
        {sights.map(({ state, is, text }) => (
          <li key={state} className={is === 'none' || is === 'failed' ? 'look' : undefined}>
            {text}
          </li>
        ))}
      </ul>
      {sights.some(({ is }) => is === 'none') ? <p>{TARGET.whatToDo}</p> : null}
      {views.length > 0 && !underWay && !complete ? (
        <button type="button" className="button" onClick={searchAgain}>
          {TARGET.again}
        </button>
      ) : null}
    </>
  );
}

type Sight = {
  readonly is: 'complete' | 'in-part' | 'none' | 'failed' | 'under-way' | 'not-searched';
  readonly text: string;
};

function sightOf(
  { measurement }: Current,
  state: BrakeState,
  searches: Readonly<Record<string, Search>>,
): Sight {
  const view = viewOf(measurement, state);
  if (!view) return { is: 'not-searched', text: targetSightText.noPicture(state) };
  const marked = new Set(view.marks.flatMap((mark) => (mark.kind === 'target-corner' ? [mark.marker] : [])));
  const missing = TARGET_MARKERS.map(({ marker }) => marker).filter((marker) => !marked.has(marker));
  if (marked.size > 0)
    return {
      is: missing.length === 0 ? 'complete' : 'in-part',
      text: targetSightText.found(state, marked.size, missing),
    };
  const search = searches[pictureKey(view)];
  if (!search) return { is: 'not-searched', text: targetSightText.waiting(state) };
  if (search.is === 'under-way') return { is: 'under-way', text: targetSightText.underWay(state) };
  if (search.is === 'failed') return { is: 'failed', text: targetSightText.failed(state, search.failure) };
  return search.missing.length === TARGET_MARKERS.length
    ? { is: 'none', text: targetSightText.none(state) }
    : { is: 'not-searched', text: targetSightText.notMarked(state) };
}
