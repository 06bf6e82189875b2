import { useStore } from 'zustand';
import type { View } from '../../marks/view.ts';
import type { RoughGuess } from '../../vision/rough-sight.ts';
import { type AskedPicture, askedPicture, pictureKey } from '../media/asked-picture.ts';
import { pictureOf } from '../media/picture-of.ts';
import type { UnderWay } from '../media/searches.ts';
import { useSearch } from '../media/use-search.ts';
import { roughGuesses } from '../media/vision.ts';
import { media } from '../stores.ts';
import type { Current } from '../work/current.ts';
import { kindOf } from './assist-asked.ts';
import { isRoughWanted, withoutEnds } from './rough-asked.ts';
import { type RoughSearch, roughSearches } from './rough-store.ts';
import type { Assist } from './use-assists.ts';

/** Null where it is of no use any more, or nobody looked yet. */
export function useRough(view: View | null): RoughSearch | null {
  const searches = useStore(roughSearches, (store) => store.searches);
  return view && isRoughWanted(view) ? (searches[pictureKey(view)] ?? null) : null;
}

/** Of what is neither marked nor found. */
export function useRoughGuess(view: View | null, assists: readonly Assist[]): RoughGuess | null {
  const search = useRough(view);
  if (!view || search?.is !== 'done') return null;
  const found = assists.filter((assist) => assist.search?.is === 'found');
  return withoutEnds(search.guess, [
    ...view.marks.map(({ kind }) => kind),
    ...found.map(({ question }) => kindOf(question.of)),
  ]);
}

/** Looks as the picture is opened to be marked, once. */
export function useRoughSearch({ record }: Current, view: View | null): void {
  const files = useStore(media, (store) => store.files);
  const search = useRough(view);
  const wanted = view !== null && isRoughWanted(view) && (search === null || search.is === 'under-way');
  const picture = askedPicture(record, files, view);
  useSearch(
    roughSearches,
    wanted && picture ? { key: pictureKey(view), seek: (signal) => look(picture, signal) } : null,
  );
}

async function look(asked: AskedPicture, signal: AbortSignal): Promise<Exclude<RoughSearch, UnderWay>> {
  const picture = await pictureOf(asked, signal);
  if (!picture.ok) return { is: 'failed' };
  const guess = await (await roughGuesses()).roughGuess(picture.value, signal);
  return guess.ok ? { is: 'done', guess: guess.value } : { is: 'failed' };
}
