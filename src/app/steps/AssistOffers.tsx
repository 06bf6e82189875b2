import { useState } from 'react';
import type { Mark } from '../../marks/mark.ts';
import type { BrakeState } from '../../marks/view.ts';
import type { FoundMark } from '../../vision/assist-sight.ts';
import { isMany } from '../assists/assist-asked.ts';
import { broughtClose } from '../assists/brought-close.ts';
import { notGuessed } from '../assists/guess-asked.ts';
import { useArmSightSearch } from '../assists/use-arm-sight.ts';
import { type Assist, useAssistSearch, useAssists } from '../assists/use-assists.ts';
import { useGuess, useGuessSearch } from '../assists/use-guess.ts';
import { pictureKey } from '../media/asked-picture.ts';
import type { FramePoint } from '../viewer/view-transform.ts';
import { ASSISTS } from '../words/assists.ts';
import { ROUGH } from '../words/rough.ts';
import { type Current, viewOf } from '../work/current.ts';
import { EdgeChoice } from './EdgeChoice.tsx';
import { OfferLine } from './OfferLine.tsx';
import { TapeDoubt } from './TapeDoubt.tsx';

type Props = { readonly current: Current; readonly state: BrakeState };

/** What asks for a mark stands first, then what there is to look at before it is taken. */
function foundFirst(assists: readonly Assist[]): readonly Assist[] {
  const first = ['seen', 'found'].flatMap((is) => assists.filter(({ search }) => search?.is === is));
  return [...first, ...assists.filter((assist) => !first.includes(assist))];
}

/** The last line, mostly a short one, of what reaches beyond the mark that it was found by. */
const lastToLookAt = (assists: readonly Assist[]) =>
  assists
    .filter(({ question: { of }, search }) => search?.is === 'found' && (isMany(of) || of === 'arm-turn'))
    .at(-1)?.key;

const edgePoints = (marks: readonly FoundMark[]) =>
  marks.flatMap(({ edgePx = [] }) => edgePx.map(([xPx, yPx]) => ({ xPx, yPx })));

const button = (text: string, onClick: () => void) => (
  <button type="button" className="button" onClick={onClick}>
    {text}
  </button>
);

const isOfMechanism = ({ kind }: Mark) => kind === 'chamber-face' || kind === 'clevis-pin';

/** What was found near the marks of the hand: said in words. Untaken, it changes nothing. */
export function AssistOffers({ current, state }: Props) {
  useAssistSearch(current, state);
  useGuessSearch(current, state);
  useArmSightSearch(current, state);
  const assists = useAssists(current.measurement, state);
  const doubted = assists.filter(({ search }) => search?.is === 'doubted');
  // By its key.
  const [lookedAt, setLookedAt] = useState<string | null>(null);
  const guess = useGuess(current.measurement, state);
  const byHand = guess ? notGuessed(guess) : [];
  if (assists.length === 0 && !guess?.search) return null;
  const view = viewOf(current.measurement, state);
  const toLookAt = lastToLookAt(assists);
  const bringClose = (places: readonly FramePoint[]) => {
    if (view) broughtClose.bring(pictureKey(view), places);
    // On a phone the picture is further up.
    scrollTo({ top: 0 });
  };
  // With what is marked, so that the brake is seen about it.
  const bringAllClose = () => {
    const found = assists.flatMap(({ search }) => (search?.is === 'found' ? search.marks : []));
    const places = found.map(({ placePx: [xPx, yPx] }) => ({ xPx, yPx }));
    bringClose([...places, ...(view?.marks.filter(isOfMechanism) ?? [])]);
  };
  const closerLook = ({ key, search }: Assist) => {
    if (key === toLookAt) return button(ROUGH.close, bringAllClose);
    if (search?.is !== 'several') return null;
    return button(ASSISTS.lookAtEdges(search.marks.length), () => {
      setLookedAt(key);
      bringClose(edgePoints(search.marks));
    });
  };
  return (
    <section aria-label={ASSISTS.heading}>
      {doubted.map((assist) => (
        <TapeDoubt key={assist.key} assist={assist} state={state} />
      ))}
      {assists.map((assist) =>
        assist.search?.is === 'several' && assist.key === lookedAt ? (
          <EdgeChoice
            key={assist.key}
            assist={assist}
            marks={assist.search.marks}
            state={state}
            onLeave={() => setLookedAt(null)}
          />
        ) : null,
      )}
      <div role="status">
        <ul className="ruled">
          {guess?.search?.is === 'under-way' ? <li className="quiet">{ASSISTS.guessing}</li> : null}
          {byHand.length > 0 ? <li className="quiet">{ASSISTS.notGuessed(byHand)}</li> : null}
          {foundFirst(assists.filter((assist) => !doubted.includes(assist) && assist.key !== lookedAt)).map(
            (assist) => (
              <OfferLine key={assist.key} assist={assist}>
                {closerLook(assist)}
              </OfferLine>
            ),
          )}
        </ul>
      </div>
    </section>
  );
}
