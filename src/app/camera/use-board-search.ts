import { useEffect } from 'react';
import { useStore } from 'zustand';
import { reportUnlessAbort } from '../media/report-unless-abort.ts';
import { camera } from './camera-store.ts';
import { searchBoard } from './search-board.ts';

/** Looks for the board in one photo after the other; what is under way when the screen is left begins anew on the next visit. */
export function useBoardSearch(): void {
  const photos = useStore(camera, (state) => state.photos);
  const next = photos.find(({ search }) => search.is === 'waiting' || search.is === 'under-way');
  const id = next?.id ?? null;

  // biome-ignore lint/correctness/useExhaustiveDependencies: the id names the photo; what is found in others is no reason to begin anew.
  useEffect(() => {
    if (!next || id === null) return;
    const control = new AbortController();
    camera.set(id, { is: 'under-way' });
    searchBoard(next.file, control.signal).then((result) => {
      const still = camera.getState().photos.some((photo) => photo.id === id);
      if (control.signal.aborted || !still) {
        if (result.ok) result.value.small.close();
        return;
      }
      camera.set(
        id,
        result.ok ? { is: 'done', sighting: result.value } : { is: 'failed', failure: result.failure },
      );
    }, reportUnlessAbort);
    return () => control.abort();
  }, [id]);
}
