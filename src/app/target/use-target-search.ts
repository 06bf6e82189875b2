import { useStore } from 'zustand';
import type { View } from '../../marks/view.ts';
import { TARGET_MARKERS } from '../../references/target-markers.ts';
import { targetMarks } from '../../references/target-marks.ts';
import { type AskedPicture, askedPicture, pictureKey } from '../media/asked-picture.ts';
import { pictureOf } from '../media/picture-of.ts';
import type { UnderWay } from '../media/searches.ts';
import { useSearch } from '../media/use-search.ts';
import { vision } from '../media/vision.ts';
import { media, work } from '../stores.ts';
import { type Current, currentOf } from '../work/current.ts';
import { type Search, targetSearches } from './target-store.ts';

/** While the printed target is chosen: looks for it in every picture that has no corner of it yet, one after the other. */
export function useTargetSearch({ record, measurement }: Current): void {
  const files = useStore(media, (state) => state.files);
  const searches = useStore(targetSearches, (state) => state.searches);
  const chosen = measurement.references.target !== null;
  const next = chosen
    ? measurement.views.find((view) => {
        const search = searches[pictureKey(view)];
        return !hasCorners(view) && (search === undefined || search.is === 'under-way');
      })
    : undefined;
  const asked = askedPicture(record, files, next);
  const key = next && pictureKey(next);
  useSearch(targetSearches, key && asked ? { key, seek: (signal) => seek(key, asked, signal) } : null);
}

async function seek(
  key: string,
  asked: AskedPicture,
  signal: AbortSignal,
): Promise<Exclude<Search, UnderWay>> {
  const picture = await pictureOf(asked, signal);
  if (!picture.ok) return { is: 'failed', failure: picture.failure };
  const sight = await (await vision()).findTarget(picture.value, TARGET_MARKERS, signal);
  if (!sight.ok) return { is: 'failed', failure: sight.failure };
  const marks = targetMarks(sight.value.corners, () => crypto.randomUUID());
  if (!signal.aborted) placeCorners(key, marks);
  return { is: 'done', missing: sight.value.missing };
}

const hasCorners = ({ marks }: View) => marks.some(({ kind }) => kind === 'target-corner');

/** On the picture by that name, wherever it is taken by now. */
function placeCorners(key: string, marks: ReturnType<typeof targetMarks>): void {
  const { open } = work.getState();
  const views = (open && currentOf(open)?.measurement.views) ?? [];
  for (const { state } of views.filter((view) => pictureKey(view) === key))
    if (marks.length > 0) work.act({ type: 'place-target', state, marks });
}
