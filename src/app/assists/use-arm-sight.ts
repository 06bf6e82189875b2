import { useStore } from 'zustand';
import type { BrakeState } from '../../marks/view.ts';
import type { ArmSight } from '../../measurement/arm-sight.ts';
import type { ClipQuestion } from '../following/clip-curve-client.ts';
import { askOnce } from '../measuring/ask-apart.browser.ts';
import { useMeasureInput } from '../measuring/use-measure-input.ts';
import type { UnderWay } from '../media/searches.ts';
import { useSearch } from '../media/use-search.ts';
import type { Current } from '../work/current.ts';
import { type ArmSightSearch, armSights } from './arm-sight-store.ts';
import { armTrack } from './arm-turn-asked.ts';

/** Has the poses of a followed clip computed, once for each track. */
export function useArmSightSearch(current: Current, state: BrakeState): void {
  const input = useMeasureInput(current);
  const track = armTrack(current.measurement, state);
  const search = useStore(armSights, ({ searches }) => track && searches[track.id]);
  const wanted = search?.is !== 'ended';
  useSearch(
    armSights,
    wanted && track ? { key: track.id, seek: (signal) => seek({ input, track }, signal) } : null,
  );
}

const seek = async (
  question: ClipQuestion,
  signal: AbortSignal,
): Promise<Exclude<ArmSightSearch, UnderWay>> => ({
  is: 'ended',
  sight: await askOnce<ClipQuestion, ArmSight | null>(
    () => new Worker(new URL('./arm-sight.worker.ts', import.meta.url), { type: 'module' }),
    question,
    signal,
  ),
});
