import type { View } from '../../marks/view.ts';
import { broughtClose } from '../assists/brought-close.ts';
import { closeTo, ROUGH_THINGS } from '../assists/rough-asked.ts';
import { useRough, useRoughSearch } from '../assists/use-rough.ts';
import { pictureKey } from '../media/asked-picture.ts';
import { ROUGH } from '../words/rough.ts';
import type { Current } from '../work/current.ts';

/** What is seen before anything is marked, and what is not. It brings the brake close; it never makes a mark. */
export function RoughSight({ current, view }: { readonly current: Current; readonly view: View }) {
  useRoughSearch(current, view);
  const search = useRough(view);
  if (search === null || search.is === 'failed') return null;
  if (search.is === 'under-way')
    return (
      <p role="status" className="quiet">
        {ROUGH.underWay}
      </p>
    );
  const { guess } = search;
  const seen = ROUGH_THINGS.flatMap((thing) => {
    const found = guess[thing];
    return found ? [[thing, found.likely] as const] : [];
  });
  const notSeen = ROUGH_THINGS.filter((thing) => !guess[thing]);
  const isSeen = seen.length > 0;
  return (
    <section aria-label={ROUGH.heading} className="rough-sight">
      <div role="status">
        {isSeen ? <p>{ROUGH.seen(seen)}</p> : null}
        <p className="quiet">
          {notSeen.length > 0 ? `${ROUGH.notSeen(notSeen)} ` : null}
          {isSeen ? ROUGH.noMarks : ROUGH.byHand}
        </p>
      </div>
      {isSeen ? (
        <button
          type="button"
          className="button"
          onClick={() => broughtClose.bring(pictureKey(view), closeTo(guess))}
        >
          {ROUGH.close}
        </button>
      ) : null}
    </section>
  );
}
