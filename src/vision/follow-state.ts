/** What a follower must know to go on with the next frame: plain data, with which another one goes on exactly. */
import type { PatchMap } from './fit-patch.ts';
import type { Point } from './point.ts';

/** Where it was last, or should have been. */
export type SpotState = PatchMap & { readonly seen: boolean };

/** Beyond what all that stands still does, from frame to frame. */
export type ThingState = SpotState & { readonly stepPx: Point; readonly turnRad: number };

export type FollowState = {
  /** Of what stands still, in the seed picture. */
  readonly seedPlaces: readonly Point[];
  readonly stills: readonly SpotState[];
  readonly things: readonly ThingState[];
  /** Of the whole picture from frame to frame. */
  readonly shiftPx: Point;
};
