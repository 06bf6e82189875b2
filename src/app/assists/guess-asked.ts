/** Which ends are sought in a picture in which nobody marked them, and what is offered of what was found. */
import type { Mark, MarkKind } from '../../marks/mark.ts';
import type { View } from '../../marks/view.ts';
import type { FoundEnd, GuessQuestion } from '../../vision/guess-sight.ts';
import { pictureKey } from '../media/asked-picture.ts';
import { marksFound, type Offered, onlyOf } from './assist-asked.ts';
import type { AssistSearch } from './assists-store.ts';
import type { GuessSearch } from './guess-store.ts';

/** wanted: the released picture's marks of which this one has none. */
export type GuessAsked = {
  readonly key: string;
  readonly question: GuessQuestion;
  readonly wanted: readonly Mark[];
};
export type Guess = GuessAsked & { readonly search: GuessSearch | null };

const ENDS = ['clevis-pin', 'camshaft-end'] as const;

/** Null where nothing is wanted, and in another frame of the clip: there the clip is followed. */
export function guessAsked(view: View, released: View): GuessAsked | null {
  if (view.captureId === released.captureId) return null;
  const face = released.marks.find(({ kind }) => kind === 'chamber-face');
  const [pin, camshaft] = ENDS.map((kind) => onlyOf(released.marks, kind));
  if (!face || !pin) return null;
  const ends = camshaft ? [pin, camshaft] : [pin];
  const wanted = ends.filter((end) => !view.marks.some(({ kind }) => kind === end.kind));
  if (wanted.length === 0) return null;
  const known = ({ xPx, yPx, sigmaPx }: Mark) => ({ placePx: [xPx, yPx] as const, sigmaPx });
  const question = {
    facePx: known(face).placePx,
    pin: known(pin),
    camshaft: camshaft ? known(camshaft) : null,
  };
  return {
    key: `${pictureKey(released)} ${pictureKey(view)} ${JSON.stringify(question)}`,
    question,
    wanted,
  };
}

/** As what assists found is offered. */
export function guessedEnds({ key, wanted, search }: Guess) {
  const found = search?.is === 'found' ? search.sight.found : [];
  return found.flatMap(({ of, placePx, sigmaPx }: FoundEnd) => {
    const again = wanted.find(({ kind }) => kind === of);
    if (!again) return [];
    const offered: Offered = { question: { of, guessed: true }, instead: [], again };
    const marks = [{ placePx, sigmaPx, readingMm: null }];
    return [{ ...offered, key: `${key} ${of}`, search: { is: 'found', marks } satisfies AssistSearch }];
  });
}

/** As if they had been taken. */
export const guessedMarks = (guess: Guess): readonly Mark[] =>
  guessedEnds(guess).flatMap(({ key, search, ...offered }) => marksFound(offered, search.marks, () => key));

/** Those that a hand has to mark, once the search is over. */
export function notGuessed({ wanted, search }: Guess): readonly MarkKind[] {
  if (search === null || search.is === 'under-way') return [];
  const found = search.is === 'found' ? search.sight.found.map(({ of }): MarkKind => of) : [];
  return wanted.map(({ kind }) => kind).filter((kind) => !found.includes(kind));
}
