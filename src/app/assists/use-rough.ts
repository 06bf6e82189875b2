import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { View } from '../../marks/view.ts';
import type { RoughGuess } from '../../vision/rough-sight.ts';
import { pictureOf } from '../media/picture-of.ts';
import { roughGuesses } from '../media/vision.ts';
import { media } from '../stores.ts';
import { pictureKey } from '../target/target-store.ts';
import type { Current } from '../work/current.ts';
import { isRoughWanted } from './rough-asked.ts';
import { type RoughSearch, roughSearches } from './rough-store.ts';

/** Null where it is of no use any more, or nobody looked yet. */
export function useRough(view: View | null): RoughSearch | null {
  const searches = useStore(roughSearches, (store) => store.searches);
  return view && isRoughWanted(view) ? (searches[pictureKey(view)] ?? null) : null;
}

export function useRoughGuess(view: View | null): RoughGuess | null {
  const search = useRough(view);
  return search?.is === 'done' ? search.guess : null;
}

/** Looks as the picture is opened to be marked, once. */
export function useRoughSearch({ record }: Current, view: View | null): void {
  const files = useStore(media, (store) => store.files);
  const search = useRough(view);
  const wanted = view !== null && isRoughWanted(view) && (search === null || search.is === 'under-way');
  const key = wanted ? pictureKey(view) : null;
  const capture = record.captures.find(({ id }) => id === view?.captureId) ?? null;
  const file = (capture && files[capture.sha256]) ?? null;

  // biome-ignore lint/correctness/useExhaustiveDependencies: the key names the picture; marks that come to it are no reason to begin anew.
  useEffect(() => {
    if (!view || !key || !capture || !file) return;
    return roughSearches.begin(key, async (signal) => {
      const picture = await pictureOf(capture, file, view.frame, signal);
      if (!picture.ok) return { is: 'failed' };
      const guess = await (await roughGuesses()).roughGuess(picture.value, signal);
      return guess.ok ? { is: 'done', guess: guess.value } : { is: 'failed' };
    });
  }, [key, capture, file]);
}
