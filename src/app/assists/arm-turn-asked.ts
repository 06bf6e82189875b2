/** The camshaft's end of a followed clip that nobody marked: how the arm turns tells where it is. */
import type { Track } from '../../marks/track.ts';
import type { BrakeState } from '../../marks/view.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';
import { gaveViews } from '../work/followed-from.ts';
import type { ArmSightSearch } from './arm-sight-store.ts';
import type { Asked } from './assist-asked.ts';

/** Null where it is marked, or nothing was followed from this picture. */
export function armTrack(measurement: MeasurementInput, state: BrakeState): Track | null {
  const track = measurement.followed?.track ?? null;
  const isMarked = measurement.views.some(({ marks }) => marks.some(({ kind }) => kind === 'camshaft-end'));
  return track?.state === state && gaveViews(measurement) && !isMarked ? track : null;
}

export function armTurnAsked(search: ArmSightSearch | undefined): readonly Asked[] {
  if (search?.is !== 'ended' || !search.sight) return [];
  const { here, there, other } = search.sight;
  return [{ question: { of: 'arm-turn', here, there }, instead: [], again: null, other }];
}
