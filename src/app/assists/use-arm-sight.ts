import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { BrakeState } from '../../marks/view.ts';
import type { ArmSight } from '../../measurement/arm-sight.ts';
import type { ClipQuestion } from '../following/clip-curve-client.ts';
import { askOnce } from '../measuring/ask-apart.browser.ts';
import { useMeasureInput } from '../measuring/use-measure-input.ts';
import type { Current } from '../work/current.ts';
import { armSights } from './arm-sight-store.ts';
import { armTrack } from './arm-turn-asked.ts';

/** Has the poses of a followed clip computed, once for each track. */
export function useArmSightSearch(current: Current, state: BrakeState): void {
  const input = useMeasureInput(current);
  const track = armTrack(current.measurement, state);
  const key = track?.id ?? null;
  const search = useStore(armSights, ({ searches }) => (key === null ? undefined : searches[key]));
  const wanted = key !== null && search?.is !== 'ended';

  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each track.
  useEffect(() => {
    if (!wanted || !track) return;
    return armSights.begin(track.id, async (signal) => ({
      is: 'ended',
      sight: await askOnce<ClipQuestion, ArmSight | null>(
        () => new Worker(new URL('./arm-sight.worker.ts', import.meta.url), { type: 'module' }),
        { input, track },
        signal,
      ),
    }));
  }, [key, wanted]);
}
