/** The camera's place and the pin's in every frame of a track, each from that of the frame beside it. */
import type { Adjustment } from '../adjustment/adjustment.ts';
import { rotationsOf } from '../adjustment/run.ts';
import { besideBy, worldPoint } from '../adjustment/world-points.ts';
import { assert } from '../basics/result.ts';
import type { Vec3 } from '../basics/rotation.ts';
import { placeAt, type Track, type TrackPoint } from '../marks/track.ts';
import { type FixedPose, type FramePose, type FrameSights, framePose } from './frame-pose.ts';
import { seedFrame } from './still-motion.ts';

/** null where too little was seen. In the order of the track's frames. */
export type Poses = readonly (FramePose | null)[];

export function framePoses(adjustment: Adjustment, track: Track): Poses {
  const { problem, layout, best } = adjustment;
  const viewIndex = problem.views.findIndex(({ state }) => state === track.state);
  const view = problem.views[viewIndex];
  const pinAt = layout.pins[track.state];
  assert(view && pinAt !== undefined, 'the seed of a track is a view of the problem');
  const sights = sightsOf(adjustment, track, viewIndex);
  const at = layout.poses[view.pose] as number;
  const begin = {
    pose: {
      rotation: rotationsOf(layout, best)[view.pose] as FixedPose['rotation'],
      translation: [...best.x.subarray(at + 3, at + 6)] as unknown as Vec3,
    },
    pin: [best.x[pinAt] as number, best.x[pinAt + 1] as number] as const,
  };
  const seed = seedFrame(track);
  const poses: (FramePose | null)[] = track.timeTicks.map(() => null);
  for (const direction of [1, -1]) {
    let { pose, pin } = begin;
    for (
      let frame = direction > 0 ? seed : seed - 1;
      frame >= 0 && frame < poses.length;
      frame += direction
    ) {
      const found = framePose(adjustment, view.camera, pose, pin, sights(frame));
      poses[frame] = found;
      pose = found?.pose ?? pose;
      if (found?.pin) pin = [found.pin.xMm, found.pin.yMm];
    }
  }
  return poses;
}

function sightsOf(adjustment: Adjustment, track: Track, viewIndex: number): (frame: number) => FrameSights {
  const { problem, layout, best } = adjustment;
  const { hand } = problem;
  const marks = problem.views[viewIndex]?.marks ?? [];
  const worldOf = ({ kind, markId }: TrackPoint): Vec3 | null => {
    const tie = kind === 'still' ? layout.ties.get(markId) : undefined;
    if (tie !== undefined) return [best.x[tie], best.x[tie + 1], hand * (best.x[tie + 2] as number)] as Vec3;
    if (kind !== 'tape-graduation') return null;
    const mark = marks.find(({ id }) => id === markId);
    const offset = layout.offsets.get(markId);
    const state = track.state;
    const thing = mark && worldPoint(mark, { state, index: viewIndex }, best.x, layout, hand);
    return thing && offset !== undefined ? besideBy(thing, offset, best.x).at : null;
  };
  const fixed = track.points.flatMap((point) => {
    const world = worldOf(point);
    return world ? [{ point, world }] : [];
  });
  const pins = track.points
    .filter(({ kind }) => kind === 'clevis-pin')
    .map((point) => ({ point, ...spotOf(adjustment, track, point) }));
  return (frame) => ({
    stills: fixed.flatMap(({ point, world }) => {
      const place = placeAt(point, frame);
      return place ? [{ world, place }] : [];
    }),
    pins: pins.flatMap(({ point, offset, sigmaPx }) => {
      const place = placeAt(point, frame);
      return place ? [{ place: { ...place, sigmaPx: Math.hypot(place.sigmaPx, sigmaPx) }, offset }] : [];
    }),
    pinZMm: hand * (best.x[layout.pinDepth] as number),
  });
}

/** Where a followed spot lies from the pin's centre; of one that no view shows, that is as uncertain as the hand that set it. */
function spotOf({ layout, best }: Adjustment, { corrections }: Track, { markId }: TrackPoint) {
  const at = layout.offsets.get(markId);
  if (at !== undefined)
    return { offset: [best.x[at] as number, best.x[at + 1] as number] as const, sigmaPx: 0 };
  const mark = corrections.flatMap(({ marks }) => marks).find(({ id }) => id === markId);
  return { offset: [0, 0] as const, sigmaPx: mark?.sigmaPx ?? 0 };
}
