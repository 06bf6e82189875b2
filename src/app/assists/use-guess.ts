import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import type { Result } from '../../basics/result.ts';
import type { BrakeState } from '../../marks/view.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';
import type { GuessFailure, GuessQuestion, GuessSight } from '../../vision/guess-sight.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import { vision } from '../media/vision.ts';
import { media } from '../stores.ts';
import { targetSearches } from '../target/target-store.ts';
import { type Current, viewOf } from '../work/current.ts';
import { useOpenWork } from '../work/use-work.ts';
import { type AskedPicture, opened } from './ask-assist.ts';
import { type Guess, guessAsked } from './guess-asked.ts';
import { guessSearches } from './guess-store.ts';

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
  const moving = useOpenWork()?.history.held != null;
  const others = useStore(targetSearches, ({ searches }) =>
    Object.values(searches).some(({ is }) => is === 'under-way'),
  );
  const wanted = guess !== null && (guess.search === null || guess.search.is === 'under-way');
  const key = (wanted && !moving && !others && guess?.key) || null;
  const pictures = (['released', state] as const).map((each): AskedPicture | null => {
    const view = viewOf(measurement, each);
    const capture = record.captures.find(({ id }) => id === view?.captureId);
    const file = capture && files[capture.sha256];
    return view && file ? { capture, file, frame: view.frame } : null;
  });
  const areThere = pictures.every((each) => each !== null);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the key names both pictures and the question; other properties of theirs are no reason to begin anew.
  useEffect(() => {
    const [known, picture] = pictures;
    if (!key || !guess || !known || !picture) return;
    return guessSearches.begin(key, async (signal) => {
      try {
        const result = await search(picture, known, guess.question, signal);
        return result?.ok ? { is: 'found', sight: result.value } : { is: 'failed' };
      } catch (thrown) {
        reportUnlessAbort(thrown);
        // Ended by another search of the worker: by hand then.
        return { is: 'failed' };
      }
    });
  }, [key, areThere]);
}

/** Null where a picture cannot be read. */
async function search(
  asked: AskedPicture,
  beside: AskedPicture,
  question: GuessQuestion,
  signal: AbortSignal,
): Promise<Result<GuessSight, GuessFailure> | null> {
  const picture = await opened(asked, signal);
  if (!picture.ok) return null;
  const known = await opened(beside, signal);
  if (!known.ok) {
    picture.value.close();
    return null;
  }
  return await (await vision()).guess(picture.value, known.value, question, signal);
}
