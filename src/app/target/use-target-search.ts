import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { View } from '../../marks/view.ts';
import { targetMarks } from '../../references/target-marks.ts';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import { media, work } from '../stores.ts';
import { type Current, currentOf } from '../work/current.ts';
import { searchPicture } from './search-picture.ts';
import { pictureKey, targetSearches } from './target-store.ts';

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
  const key = next ? pictureKey(next) : null;
  const capture = record.captures.find(({ id }) => id === next?.captureId) ?? null;
  const file = (capture && files[capture.sha256]) ?? null;

  // biome-ignore lint/correctness/useExhaustiveDependencies: the key names the picture; its other properties are no reason to begin anew.
  useEffect(() => {
    if (!next || !key || !capture || !file) return;
    const control = new AbortController();
    targetSearches.set(key, { is: 'under-way' });
    searchPicture(capture, file, next.frame, control.signal).then((result) => {
      if (control.signal.aborted) return;
      if (result.ok)
        placeCorners(
          key,
          targetMarks(result.value.corners, () => crypto.randomUUID()),
        );
      targetSearches.set(
        key,
        result.ok ? { is: 'done', missing: result.value.missing } : { is: 'failed', failure: result.failure },
      );
    }, reportUnlessAbort);
    return () => {
      control.abort();
      if (targetSearches.getState().searches[key]?.is === 'under-way') targetSearches.forget([key]);
    };
  }, [key, capture, file]);
}

const hasCorners = ({ marks }: View) => marks.some(({ kind }) => kind === 'target-corner');

/** On the picture by that name, wherever it is taken by now. */
function placeCorners(key: string, marks: ReturnType<typeof targetMarks>): void {
  const { open } = work.getState();
  const views = (open && currentOf(open)?.measurement.views) ?? [];
  for (const { state } of views.filter((view) => pictureKey(view) === key))
    if (marks.length > 0) work.act({ type: 'place-target', state, marks });
}
