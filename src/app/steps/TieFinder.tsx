import type { BrakeState, View } from '../../marks/view.ts';
import { useTieSearch } from '../ties/use-tie-search.ts';
import { TIES, tieFailureText } from '../words/ties.ts';
import type { Current } from '../work/current.ts';
import { automaticTies } from '../work/place-ties.ts';

type Props = { readonly current: Current; readonly state: BrakeState; readonly view: View };

/** Where the camera moved between the pictures: fixed things that both show, found by themselves. */
export function TieFinder({ current, state, view }: Props) {
  const { search, begin, stop } = useTieSearch(current, state);
  const found = automaticTies(view);
  if (search?.is === 'under-way')
    return (
      <section className="trials" aria-label={TIES.heading}>
        <p className="trials-running" role="status">
          <progress aria-label={TIES.heading} />
          <span>{TIES.underWay}</span>
        </p>
        <button type="button" className="button wide" onClick={stop}>
          {TIES.stop}
        </button>
      </section>
    );
  return (
    <section className="trials" aria-label={TIES.heading}>
      <button type="button" className="button wide" disabled={!begin} onClick={() => begin?.()}>
        {found > 0 ? TIES.again : TIES.begin}
      </button>
      {search?.is === 'failed' ? (
        <p className="look" role="status">
          {tieFailureText(search.failure)}
        </p>
      ) : (
        <p className="quiet" role="status">
          {found > 0 ? TIES.found(found) : begin ? TIES.why : TIES.needs}
        </p>
      )}
    </section>
  );
}
