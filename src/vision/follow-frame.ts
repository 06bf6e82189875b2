/**
 * One frame of a clip: how the whole picture moved, what stands still, where that carries the rest, the things.
 *
 * Fails    no motion is common (something is before the lens, or all of it is blurred): a frame of gaps
 */
import type { PatchMap } from './fit-patch.ts';
import { type Carried, carried } from './follow-carry.ts';
import { type Motion, type Moved, movedBy, similarity, stepsOf } from './follow-common.ts';
import { type MotionSearch, motionSince } from './follow-motion.ts';
import type { FollowQuestion, FrameSight, Gap } from './follow-sight.ts';
import type { FollowState, ThingState } from './follow-state.ts';
import { type Stills, type StillsSeen, stillsIn } from './follow-stills-frame.ts';
import { tapeIn } from './follow-tape.ts';
import { type Followable, followThing, type ThingSight } from './follow-thing.ts';
import { wayOf } from './follow-way.ts';
import type { Gray } from './gray.ts';
import { type Point, plus } from './point.ts';
import type { SeedTape } from './seed-tape.ts';

export type FollowKit = {
  readonly question: FollowQuestion;
  readonly stills: Stills;
  readonly search: MotionSearch;
  /** Of each thing: how much that stands still is near it in the seed picture. */
  readonly nearness: readonly number[];
  /** null of what is carried. */
  readonly things: readonly (Followable | null)[];
  /** null: none is marked, or the seed shows no lattice. */
  readonly tape: SeedTape | null;
};

/** Of what stands still near a thing, the share that must be seen: farther things alone would carry it elsewhere. */
const LEAST_NEAR = 0.3;

export type FollowedFrame = { readonly state: FollowState; readonly sight: FrameSight };

/** withTape: look for its graduations too, which costs as much as all else. */
export function followFrame(
  kit: FollowKit,
  state: FollowState,
  gray: Gray,
  withTape: boolean,
): FollowedFrame {
  const moved = motionSince(kit.search, state, gray);
  const seen = moved && stillsIn(kit.stills, state.stills, moved, gray);
  if (!seen) return lostFrame(state, gray);
  const things = kit.question.things.map((thing, i): ThingSight => {
    const last = state.things[i] as ThingState;
    const fullNearness = kit.nearness[i] as number;
    const around = { reachPx: kit.stills.nearPx, fullNearness };
    const there = carried(thing.placePx, seen.pairs, seen.whole, around);
    if (!there || there.nearness < LEAST_NEAR * fullNearness) return lostThing(last, gray);
    const one = kit.things[i];
    if (!one) return carriedThing(there, gray);
    const expected = movedMap(moved.motion, last, moved.goesOn ? state.shiftPx : [0, 0]);
    const about = thing.how === 'swings' ? carried(thing.aboutPx, seen.pairs, seen.whole, around) : there;
    if (!about) return lostThing(last, gray);
    // Neighbours at other depths stretch what lies between them; a thing turns and grows as the whole picture does.
    const rigid = { ...there, steps: stepsOf(seen.whole) };
    const way = wayOf(rigid, kit.question.reachPx);
    return followThing(one, gray, last, { expected, carried: rigid, way, about: about.place });
  });
  const sights = things.map(({ sight }) => sight);
  return {
    state: {
      seedPlaces: state.seedPlaces,
      stills: seen.states,
      things: things.map((thing) => thing.state),
      shiftPx: seen.shiftPx,
    },
    sight: {
      things: sights,
      stills: seen.sights,
      tape: (withTape && kit.tape && tapeIn(kit.tape, gray, tapeCarrier(kit, sights, seen))) || [],
    },
  };
}

/**
 * A tape lies about as deep as the face and the camshaft's end: what both do it does. Where one of them is not seen, the other's place
 * and the turn and size of the whole picture: what lies about each place stretches a blade by gravel behind its far end.
 */
function tapeCarrier(
  { question }: FollowKit,
  sights: FrameSight['things'],
  { whole }: StillsSeen,
): (place: Point) => PatchMap | null {
  const ends = question.things.flatMap(({ how, placePx }, i): readonly Moved[] => {
    const sight = sights[i];
    return (how === 'carried' || how === 'turns') && sight && typeof sight !== 'string'
      ? [{ from: placePx, to: sight.placePx }]
      : [];
  });
  const [end] = ends;
  const motion = ends.length === 2 ? similarity(ends) : end && through(whole, end);
  if (!motion) return () => null;
  return (place) => ({ place: movedBy(motion, place), steps: stepsOf(motion) });
}

function through({ a, b }: Motion, { from: [x, y], to }: Moved): Motion {
  return { a, b, c: to[0] - a * x + b * y, d: to[1] - b * x - a * y };
}

function movedMap(motion: Motion, { place, steps: [xx, xy, yx, yy] }: PatchMap, shiftPx: Point): PatchMap {
  const { a, b } = motion;
  return {
    place: movedBy(motion, plus(place, shiftPx)),
    steps: [a * xx - b * yx, a * xy - b * yy, b * xx + a * yx, b * xy + a * yy],
  };
}

function carriedThing({ place, steps, sigmaPx }: Carried, gray: Gray): ThingSight {
  const state = { place, steps, seen: true, stepPx: [0, 0], turnRad: 0 } as const;
  return { state, sight: isIn(gray, place) ? { placePx: place, sigmaPx } : 'outside' };
}

function lostThing(last: ThingState, gray: Gray): { readonly state: ThingState; readonly sight: Gap } {
  const { place } = last;
  const state = { ...last, seen: false, stepPx: [0, 0], turnRad: 0 } as const;
  return { state, sight: isIn(gray, place) ? 'hidden' : 'outside' };
}

const isIn = ({ widthPx, heightPx }: Gray, [x, y]: Point) => x > 0 && y > 0 && x < widthPx && y < heightPx;

function lostFrame(state: FollowState, gray: Gray): FollowedFrame {
  const things = state.things.map((last) => lostThing(last, gray));
  return {
    state: {
      ...state,
      stills: state.stills.map(({ place, lostFor }) => ({ place, lostFor: lostFor + 1 })),
      things: things.map((thing) => thing.state),
      shiftPx: [0, 0],
    },
    sight: { things: things.map(({ sight }) => sight), stills: state.stills.map(() => null), tape: [] },
  };
}
