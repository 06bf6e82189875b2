import type { Mark } from '../../marks/mark.ts';
import type { BrakeState } from '../../marks/view.ts';
import { isMany } from '../assists/assist-asked.ts';
import { broughtClose } from '../assists/brought-close.ts';
import { notGuessed } from '../assists/guess-asked.ts';
import { useArmSightSearch } from '../assists/use-arm-sight.ts';
import { type Assist, useAssistSearch, useAssists } from '../assists/use-assists.ts';
import { useGuess, useGuessSearch } from '../assists/use-guess.ts';
import { pictureKey } from '../media/asked-picture.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { ASSISTS, assistFailureText, foundText } from '../words/assists.ts';
import { ROUGH } from '../words/rough.ts';
import { type Current, viewOf } from '../work/current.ts';
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

const isOfMechanism = ({ kind }: Mark) => kind === 'chamber-face' || kind === 'clevis-pin';

/** What was found near the marks of the hand: said in words. Untaken, it changes nothing. */
export function AssistOffers({ current, state }: Props) {
  const unit = useLengthUnit();
  useAssistSearch(current, state);
  useGuessSearch(current, state);
  useArmSightSearch(current, state);
  const assists = useAssists(current.measurement, state);
  const doubted = assists.filter(({ search }) => search?.is === 'doubted');
  const guess = useGuess(current.measurement, state);
  const byHand = guess ? notGuessed(guess) : [];
  if (assists.length === 0 && !guess?.search) return null;
  const view = viewOf(current.measurement, state);
  const toLookAt = lastToLookAt(assists);
  // With what is marked, so that the brake is seen about it.
  const bringClose = () => {
    const found = assists.flatMap(({ search }) => (search?.is === 'found' ? search.marks : []));
    const places = found.map(({ placePx: [xPx, yPx] }) => ({ xPx, yPx }));
    if (view) broughtClose.bring(pictureKey(view), [...places, ...view.marks.filter(isOfMechanism)]);
    // On a phone the picture is further up.
    scrollTo({ top: 0 });
  };
  return (
    <section aria-label={ASSISTS.heading}>
      {doubted.map((assist) => (
        <TapeDoubt key={assist.key} assist={assist} state={state} />
      ))}
      <div role="status">
        <ul className="ruled">
          {guess?.search?.is === 'under-way' ? <li className="quiet">{ASSISTS.guessing}</li> : null}
          {byHand.length > 0 ? <li className="quiet">{ASSISTS.notGuessed(byHand)}</li> : null}
          {foundFirst(assists.filter((assist) => !doubted.includes(assist))).map(
            ({ key, question, instead, search }) => (
              <li key={key} className={key === toLookAt ? 'beside-button' : undefined}>
                {search?.is === 'found' ? <p>{foundText(question, search, instead, unit)}</p> : null}
                {key === toLookAt ? (
                  <button type="button" className="button" onClick={bringClose}>
                    {ROUGH.close}
                  </button>
                ) : null}
                {search?.is === 'seen' ? <p>{ASSISTS.seen}</p> : null}
                {search?.is === 'failed' ? (
                  <p className="quiet">{assistFailureText(question.of, search.failure, unit)}</p>
                ) : null}
                {search === null || search.is === 'under-way' ? (
                  <p className="quiet">{ASSISTS.underWay(question.of)}</p>
                ) : null}
              </li>
            ),
          )}
        </ul>
      </div>
    </section>
  );
}
