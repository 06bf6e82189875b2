import type { BrakeState } from '../../marks/view.ts';
import { marksProposed } from '../guesses/guess-asked.ts';
import { useGuesses, useGuessSearch } from '../guesses/use-guesses.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { work } from '../stores.ts';
import { GUESSES, proposalText } from '../words/guesses.ts';
import type { Current } from '../work/current.ts';

type Props = { readonly current: Current; readonly state: BrakeState };

/** Each proposal with how sure it is; one tap takes one. All at once: the button that goes on. */
export function GuessOffers({ current, state }: Props) {
  const unit = useLengthUnit();
  useGuessSearch(current, state);
  const { look, open } = useGuesses(current.measurement, state);
  if (look === null) return null;
  if (look.is !== 'done' || look.proposals.length === 0)
    return (
      <p className="quiet" role="status">
        {look.is === 'under-way' ? GUESSES.underWay : look.is === 'failed' ? GUESSES.failed : GUESSES.none}
      </p>
    );
  if (open.length === 0) return null;
  return (
    <section className="guess-offers" aria-label={GUESSES.heading}>
      <ul className="ruled" role="status">
        {open.map((proposal) => (
          <li key={proposal.kind}>
            <p>{proposalText(proposal, unit)}</p>
            <button
              type="button"
              className="button"
              aria-label={GUESSES.takeThis(proposal)}
              onClick={() =>
                work.act({
                  type: 'take-found',
                  state,
                  marks: marksProposed(proposal, () => crypto.randomUUID()),
                  instead: [],
                })
              }
            >
              {GUESSES.take}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
