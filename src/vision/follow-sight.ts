/** What a follower is asked and what it sees. Places in pixels of the pictures it is given, from the corner of the first pixel. */
import type { NamedGraduation } from './lattice-search.ts';
import type { Point } from './point.ts';

/**
 * moves: goes along the rod with the pin. turns: its centre stands still while its surroundings turn about it (the camshaft's end).
 * carried: stands still, but what is seen there moves or is no feature (the face where the rod leaves it): carried along by what
 * stands still about it. roams: goes which way it will, within a reach of its place (the pin, where the rod is not marked). swings:
 * turns about another place that stands still whenever it matters (a wrench's end about its hex).
 */
export type FollowedThing = {
  readonly name: string;
  readonly placePx: Point;
  /** All within this radius about the place belongs to the part. */
  readonly radiusPx: number;
} & (
  | { readonly how: 'moves' | 'turns' | 'carried' }
  | { readonly how: 'roams'; readonly reachPx: number }
  | { readonly how: 'swings'; readonly aboutPx: Point }
);

export type FollowQuestion = {
  readonly things: readonly FollowedThing[];
  /** Graduations of a tape that stays where it is: looked for together, in some frames. */
  readonly tape: readonly NamedGraduation[];
  /** Where to look for what stands still: near this place first. */
  readonly aboutPx: Point;
  /** Outlines in which nothing stands still. */
  readonly leaveOut: readonly (readonly Point[])[];
  /** How far, and which way, a thing that moves may go from its place when the brake is applied, and at most back. */
  readonly reachPx: { readonly out: Point; readonly back: Point };
};

/** hidden: something else is there. blurred: it moves too fast or is out of focus. outside: not in the picture. */
export type Gap = 'hidden' | 'blurred' | 'outside';

export type FollowedSight = { readonly placePx: Point; readonly sigmaPx: number };

export type FrameSight = {
  /** In the order of the question. */
  readonly things: readonly (FollowedSight | Gap)[];
  /** In the order of the follower's own still places. */
  readonly stills: readonly (FollowedSight | null)[];
  /** In the order of the question; empty where it was not looked for. */
  readonly tape: readonly (FollowedSight | null)[];
};

/** too-few-still: the seed picture shows too little that stands still. no-feature: nothing about a thing could be found again. */
export type FollowFailure =
  | { readonly code: 'follow/too-few-still'; readonly found: number; readonly needed: number }
  | { readonly code: 'follow/no-feature'; readonly name: string };
