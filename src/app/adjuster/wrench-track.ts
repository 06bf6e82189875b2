/** What was seen of a wrench, before, in and after the marked frame, for the measurement. */
import type { Frame } from '../../frames/frame.ts';
import type { Track } from '../../marks/track.ts';
import type { WrenchSight } from '../../measurement/wrench-clip.ts';
import type { MarkedPoint } from '../../measurement/wrench-directions.ts';
import type { FollowedSight, FrameSight } from '../../vision/follow-sight.ts';
import { columns, SEED_SIGMA_PX, type Seen } from '../following/track-of.ts';
import { FOLLOWED, type MarkedWrench } from './wrench-plan.ts';

export type WrenchTrack = {
  /** Of the pin and of what stands still. */
  readonly track: Track;
  readonly sights: readonly WrenchSight[];
};

export function wrenchTrack(captureId: string, seed: Frame, marked: MarkedWrench, seen: Seen): WrenchTrack {
  const at = (placePx: readonly [number, number]): FollowedSight => ({ placePx, sigmaPx: SEED_SIGMA_PX });
  const own: FrameSight = {
    things: FOLLOWED.map((name) => at([marked[name].xPx, marked[name].yPx])),
    stills: seen.stills.map(at),
    tape: [],
  };
  const { forwards, backwards } = seen.sights;
  const frames = [...backwards.toReversed(), own, ...forwards];
  const firstIndex = seed.index - backwards.length;
  const track: Track = {
    id: 'wrench',
    captureId,
    state: 'released',
    seed,
    firstIndex,
    timeTicks: seen.timeTicks.slice(firstIndex, firstIndex + frames.length),
    points: [
      columns(
        'clevis-pin',
        'pin',
        frames.map(({ things }) => things[FOLLOWED.indexOf('pin')]),
      ),
      ...seen.stills.map((_place, i) =>
        columns(
          'still',
          `s${i + 1}`,
          frames.map(({ stills }) => stills[i]),
        ),
      ),
    ],
  };
  return { track, sights: frames.map((frame) => sightOf(frame, marked)) };
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
