import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import type { BrakeState } from '../../marks/view.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';
import type { Proposal } from '../../vision/guess-sight.ts';
import { pictureOf } from '../media/picture-of.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import { guesses } from '../media/vision.ts';
import { media } from '../stores.ts';
import { type Current, viewOf } from '../work/current.ts';
import { guessAsked, openProposals } from './guess-asked.ts';
import { type GuessLook, guessKey, guessLooks } from './guess-store.ts';

export type Guesses = {
  readonly look: GuessLook | null;
  /** Of what was found, what is asked for and not marked. */
  readonly open: readonly Proposal[];
};

export function useGuesses(measurement: MeasurementInput, state: BrakeState): Guesses {
  const looks = useStore(guessLooks, (store) => store.looks);
  return useMemo(() => {
    const view = measurement.views.find((each) => each.state === state);
    if (!view) return { look: null, open: [] };
    const look = looks[guessKey(view, guessAsked(measurement, state))] ?? null;
    return { look, open: look?.is === 'done' ? openProposals(view, measurement, look.proposals) : [] };
  }, [measurement, state, looks]);
}

/** Looks at the picture once it is gone to, while nothing is marked on it. */
export function useGuessSearch({ record, measurement }: Current, state: BrakeState): void {
  const view = viewOf(measurement, state);
  const files = useStore(media, (store) => store.files);
  const question = guessAsked(measurement, state);
  const { look } = useGuesses(measurement, state);
  const wanted = view && (look === null ? view.marks.length === 0 : look.is === 'under-way');
  const key = wanted ? guessKey(view, question) : null;
  const capture = record.captures.find(({ id }) => id === view?.captureId) ?? null;
  const file = (capture && files[capture.sha256]) ?? null;

  // biome-ignore lint/correctness/useExhaustiveDependencies: the key names picture and question; other properties of theirs are no reason to begin anew.
  useEffect(() => {
    if (!view || !key || !capture || !file) return;
    const control = new AbortController();
    guessLooks.set(key, { is: 'under-way' });
    const search = async (): Promise<GuessLook> => {
      const picture = await pictureOf(capture, file, view.frame, control.signal);
      if (!picture.ok) return { is: 'failed' };
      const sight = await (await guesses()).guess(picture.value, question, control.signal);
      return sight.ok ? { is: 'done', proposals: sight.value.proposals } : { is: 'failed' };
    };
    search().then((done) => {
      if (!control.signal.aborted) guessLooks.set(key, done);
    }, reportUnlessAbort);
    return () => {
      control.abort();
      if (guessLooks.getState().looks[key]?.is === 'under-way') guessLooks.forget(key);
    };
  }, [key, capture, file]);
}
