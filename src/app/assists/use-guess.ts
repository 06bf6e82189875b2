import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { BrakeState } from '../../marks/view.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';
import type { GuessQuestion } from '../../vision/guess-sight.ts';
import { type AskedPicture, askedPicture } from '../media/asked-picture.ts';
import { bothPictures } from '../media/picture-of.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import type { UnderWay } from '../media/searches.ts';
import { useSearch } from '../media/use-search.ts';
import { vision } from '../media/vision.ts';
import { media } from '../stores.ts';
import { targetSearches } from '../target/target-store.ts';
import { type Current, viewOf } from '../work/current.ts';
import { useMoving } from '../work/use-work.ts';
import { type Guess, guessAsked } from './guess-asked.ts';
import { type GuessSearch, guessSearches } from './guess-store.ts';

/** What of the released picture's ends is wanted in this one, and what was found of them. */
export function useGuess(measurement: MeasurementInput, state: BrakeState): Guess | null {
  const searches = useStore(guessSearches, (store) => store.searches);
  return useMemo(() => {
    const [view, released] = [viewOf(measurement, state), viewOf(measurement, 'released')];
    const asked = view && released && view !== released ? guessAsked(view, released) : null;
    return asked && { ...asked, search: searches[asked.key] ?? null };
  }, [measurement, state, searches]);
}

/** Looks for them. OpenCV's worker does one thing at a time: the printed target comes first. */
export function useGuessSearch({ record, measurement }: Current, state: BrakeState): void {
  const guess = useGuess(measurement, state);
  const files = useStore(media, (store) => store.files);
  const moving = useMoving();
  const others = useStore(targetSearches, ({ searches }) =>
    Object.values(searches).some(({ is }) => is === 'under-way'),
  );
  const wanted = guess !== null && (guess.search === null || guess.search.is === 'under-way');
  const pictureOf = (each: BrakeState) => askedPicture(record, files, viewOf(measurement, each));
  const [known, picture] = [pictureOf('released'), pictureOf(state)];
  useSearch(
    guessSearches,
    wanted && !moving && !others && known && picture
      ? { key: guess.key, seek: (signal) => seek(picture, known, guess.question, signal) }
      : null,
  );
}

async function seek(
  asked: AskedPicture,
  known: AskedPicture,
  question: GuessQuestion,
  signal: AbortSignal,
): Promise<Exclude<GuessSearch, UnderWay>> {
  try {
    const pictures = await bothPictures(asked, known, signal);
    if (!pictures.ok) return { is: 'failed' };
    const sight = await (await vision()).guess(...pictures.value, question, signal);
    return sight.ok ? { is: 'found', sight: sight.value } : { is: 'failed' };
  } catch (thrown) {
    reportUnlessAbort(thrown);
    // Ended by another search of the worker: by hand then.
    return { is: 'failed' };
  }
}
