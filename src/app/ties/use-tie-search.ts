import { useStore } from 'zustand';
import { tiePlaces } from '../../marks/tie-marks.ts';
import type { BrakeState, View } from '../../marks/view.ts';
import { askedPicture } from '../media/asked-picture.ts';
import type { MediaState } from '../media/media-store.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import { media, work } from '../stores.ts';
import { type Current, currentOf, viewOf } from '../work/current.ts';
import { type PairSide, searchPair } from './search-pair.ts';
import { pairKey, type TieSearch, tieSearches } from './ties-store.ts';

export type TieSearching = {
  readonly search: TieSearch | null;
  /** Null: a picture, its file or a mark that it needs is not there. */
  readonly begin: (() => void) | null;
  readonly stop: () => void;
};

/** Tie points between the released picture and the one of this state. */
export function useTieSearch(current: Current, state: BrakeState): TieSearching {
  const searches = useStore(tieSearches, (store) => store.searches);
  const files = useStore(media, (store) => store.files);
  const sides = (['released', state] as const).map((each) => sideOf(current, each, files));
  const [first, second] = sides;
  if (!first || !second) return { search: null, begin: null, stop: () => {} };
  const key = pairKey(first.view, second.view);
  const search = searches[key] ?? null;
  return {
    search,
    begin: () => void run(current, [first, second], key),
    stop: () => {
      if (search?.is === 'under-way') search.control.abort();
    },
  };
}

/** A picture with both marks: what moves is left out by them, and ties are sought about them. */
function sideOf(
  { record, measurement }: Current,
  state: BrakeState,
  files: MediaState['files'],
): PairSide | null {
  const view = viewOf(measurement, state);
  const marked = (kind: string) => view?.marks.some((mark) => mark.kind === kind) ?? false;
  if (!view || !marked('chamber-face') || !marked('clevis-pin')) return null;
  const picture = askedPicture(record, files, view);
  return picture && { ...picture, view };
}

async function run(current: Current, sides: readonly [PairSide, PairSide], key: string): Promise<void> {
  const control = new AbortController();
  tieSearches.set(key, { is: 'under-way', control });
  try {
    const result = await searchPair(current, sides, control.signal);
    if (!result.ok) {
      tieSearches.set(key, { is: 'failed', failure: result.failure });
      return;
    }
    const [first, second] = sides;
    const ties = tiePlaces(result.value.ties, first.capture, second.capture).map((tie) => ({
      first: { id: crypto.randomUUID(), ...tie.first },
      second: { id: crypto.randomUUID(), ...tie.second },
    }));
    tieSearches.forget(key);
    if (stillThere(first.view, second.view))
      work.act({ type: 'place-ties', first: first.view.state, second: second.view.state, ties });
  } catch (thrown) {
    tieSearches.forget(key);
    reportUnlessAbort(thrown);
  }
}

/** Meanwhile a view may have been taken from another picture. */
function stillThere(first: View, second: View): boolean {
  const { open } = work.getState();
  const measurement = open && currentOf(open)?.measurement;
  const [one, other] = [first, second].map(({ state }) => measurement && viewOf(measurement, state));
  return one != null && other != null && pairKey(one, other) === pairKey(first, second);
}
