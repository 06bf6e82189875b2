/** What was seen of a wrench, before, in and after the marked frame, for the measurement. */
import type { Frame } from '../../frames/frame.ts';
import type { Track } from '../../marks/track.ts';
import type { WrenchSight } from '../../measurement/wrench-clip.ts';
import type { MarkedPoint } from '../../measurement/wrench-directions.ts';
import type { FrameSight } from '../../vision/follow-sight.ts';
import { columns, type Seen, sightsInOrder, trackOfSights } from '../following/track-of.ts';
import { FOLLOWED, type MarkedWrench } from './wrench-plan.ts';

export type WrenchTrack = {
  /** Of the pin and of what stands still. */
  readonly track: Track;
  readonly sights: readonly WrenchSight[];
};

export function wrenchTrack(captureId: string, seed: Frame, marked: MarkedWrench, seen: Seen): WrenchTrack {
  const things = FOLLOWED.map((name) => ({ placePx: [marked[name].xPx, marked[name].yPx] as const }));
  const sights = sightsInOrder(seen, things, []);
  const pin = columns(
    'clevis-pin',
    'pin',
    sights.map((sight) => sight.things[FOLLOWED.indexOf('pin')]),
  );
  const of = { id: 'wrench', captureId, state: 'released', seed } as const;
  return {
    track: trackOfSights(of, seen, sights, [pin]),
    sights: sights.map((sight) => sightOf(sight, marked)),
  };
}

/** The same spots of wrench and arm are followed, whichever they are; only where the middle of the hex is matters as it was marked. */
function sightOf({ things }: FrameSight, marked: MarkedWrench): WrenchSight {
  const [centre, camshaft, pin, tip] = FOLLOWED.map((_name, i): MarkedPoint | null => {
    const sight = things[i];
    if (!sight || typeof sight === 'string') return null;
    const [xPx, yPx] = sight.placePx;
    return { xPx, yPx, sigmaPx: sight.sigmaPx };
  });
  if (!centre || !camshaft || !pin || !tip) return null;
  const sigmaPx = Math.hypot(centre.sigmaPx, marked.centre.sigmaPx);
  return { centre: { ...centre, sigmaPx }, tip, arm: { pin, camshaft } };
}
