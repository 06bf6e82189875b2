import type { View } from '../../marks/view.ts';
import { broughtClose } from '../assists/brought-close.ts';
import { closeTo, ROUGH_THINGS, type RoughThing } from '../assists/rough-asked.ts';
import { useAssists } from '../assists/use-assists.ts';
import { useRough, useRoughGuess, useRoughSearch } from '../assists/use-rough.ts';
import { pictureKey } from '../media/asked-picture.ts';
import { ROUGH } from '../words/rough.ts';
import type { Current } from '../work/current.ts';

/** What is seen before anything is marked, and what is not. It brings the brake close; it never makes a mark. */
type Props = { readonly current: Current; readonly view: View };

export function RoughSight({ current, view }: Props) {
  useRoughSearch(current, view);
  const search = useRough(view);
  const left = useRoughGuess(view, useAssists(current.measurement, view.state));
  if (search === null || search.is === 'failed') return null;
  if (search.is === 'under-way')
    return (
      <p role="status" className="quiet">
        {ROUGH.underWay}
      </p>
    );
  const { guess } = search;
  const [likely, perhaps] = [true, false].map((is) =>
    ROUGH_THINGS.filter((thing) => left?.[thing]?.likely === is),
  ) as [RoughThing[], RoughThing[]];
  const notSeen = ROUGH_THINGS.filter((thing) => !guess[thing]);
  const isSeen = likely.length + perhaps.length > 0;
  return (
    <section aria-label={ROUGH.heading} className="beside-button">
      <div role="status">
        {isSeen ? <p>{ROUGH.likely(likely) + ROUGH.perhaps(perhaps)}</p> : null}
        <p className="quiet">
          {ROUGH.notSeen(notSeen)}
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
