/** What a follower must know to go on with the next frame: plain data, with which another one goes on exactly. */
import type { PatchMap } from './fit-patch.ts';
import type { Look } from './follow-look.ts';
import type { Point } from './point.ts';

/** Where it was last, or should have been; for how many frames it has not been seen; how far it went from frame to frame, near things
 * farther than far ones where a hand sways: missing where it was not seen twice. */
export type StillState = { readonly place: Point; readonly lostFor: number; readonly stepPx?: Point };

/** stepPx, turnRad: from frame to frame, beyond what all that stands still does. */
export type ThingState = PatchMap & {
  readonly seen: boolean;
  readonly stepPx: Point;
  readonly turnRad: number;
  /** Of what roams or swings: as it was seen last, in coarse samples. */
  readonly look?: Look;
};

export type FollowState = {
  /** Of what stands still, in the seed picture. */
  readonly seedPlaces: readonly Point[];
  readonly stills: readonly StillState[];
  readonly things: readonly ThingState[];
  /** Of what stands still about the chamber, from frame to frame. */
  readonly shiftPx: Point;
};
