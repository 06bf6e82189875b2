/** Follows the marks of one frame through a clip that another worker decodes, and says what it saw as it goes. One task, then it is ended. */
import { type Follower, startFollower } from '../../vision/follow.ts';
import type { FollowedSight, FollowQuestion, FrameSight } from '../../vision/follow-sight.ts';
import { warmUp } from '../../vision/follow-warm-up.ts';
import { type DecodedGrays, decodedGrays } from './decoded-grays.ts';
import { tapeEvery } from './follow-plan.ts';
import {
  brokeOff,
  DIRECTIONS,
  type Direction,
  type FollowerFailure,
  type FollowSaid,
  type FollowTask,
} from './follow-task.ts';
import { type LumaPlaces, lumaPlaces } from './luma-places.ts';

/** So often what was seen is handed on: a page that is closed loses no more than this. */
const HAND_ON_MS = 300;

let isAsked = false;

addEventListener('message', async (event: MessageEvent<FollowTask>) => {
  isAsked = true;
  const failure = await follow(event.data).catch((thrown: unknown): FollowerFailure => {
    return brokeOff(String(thrown));
  });
  say(failure ? { is: 'failed', failure } : { is: 'done' });
});

/** Most of what is to be compiled is by then; more frames bring little. */
const MOST_WARM_FRAMES = 24;

/** Only where the worker was started before there was anything to follow (follow-clip.ts). */
async function warmedUp(): Promise<void> {
  const frames = warmUp();
  for (let i = 0; i < MOST_WARM_FRAMES; i++) {
    await new Promise((resolve) => setTimeout(resolve));
    if (isAsked) return;
    frames.next();
  }
}

void warmedUp();

async function follow(task: FollowTask): Promise<FollowerFailure | null> {
  const { seedIndex, within, from } = task;
  const grays = decodedGrays({
    file: task.file,
    seedIndex,
    before: { from: within?.from ?? 0, to: seedIndex - from.backwards.count },
    after: { from: seedIndex + 1 + from.forwards.count, to: within?.to ?? null },
  });
  try {
    const begun = await grays.next();
    if (begun.is === 'failed') return begun.failure;
    if (begun.is !== 'begun') throw new Error(`Decoding begins with ${begun.is}`);
    const { seed, timeTicks } = begun;
    const places = lumaPlaces(task.capture, seed);
    const first = startFollower(seed, questionIn(places, task.question), from.forwards.state);
    if (!first.ok) return first.failure;
    say({ is: 'begun', stills: first.value.stills.map(places.toUpright), timeTicks });
    const followers = { forwards: first.value, backwards: first.value.another(from.backwards.state) };
    return await lookThrough(followers, grays, { seedIndex, places, tapeEvery: tapeEvery(timeTicks.length) });
  } finally {
    grays.close();
  }
}

type Looking = { readonly seedIndex: number; readonly places: LumaPlaces; readonly tapeEvery: number };

async function lookThrough(
  followers: Readonly<Record<Direction, Follower>>,
  grays: DecodedGrays,
  { seedIndex, places, tapeEvery }: Looking,
): Promise<FollowerFailure | null> {
  const sights: Record<Direction, FrameSight[]> = { forwards: [], backwards: [] };
  let handedOnMs = performance.now();
  const handOn = () => {
    for (const direction of DIRECTIONS) {
      const seen = sights[direction].splice(0);
      if (seen.length > 0) say({ is: 'seen', direction, sights: seen, state: followers[direction].state() });
    }
    handedOnMs = performance.now();
  };
  for (;;) {
    const said = await grays.next();
    if (said.is !== 'frame') {
      handOn();
      return said.is === 'failed' ? said.failure : null;
    }
    const { index, gray } = said.frame;
    const direction = index > seedIndex ? 'forwards' : 'backwards';
    sights[direction].push(upright(followers[direction].next(gray, index % tapeEvery === 0), places));
    if (performance.now() - handedOnMs > HAND_ON_MS) handOn();
  }
}

function questionIn({ fromUpright }: LumaPlaces, question: FollowQuestion): FollowQuestion {
  const [ox, oy] = fromUpright([0, 0]);
  const step = (way: readonly [number, number]) => {
    const [x, y] = fromUpright(way);
    return [x - ox, y - oy] as const;
  };
  return {
    things: question.things.map((thing) => {
      const placePx = fromUpright(thing.placePx);
      return thing.how === 'swings'
        ? { ...thing, placePx, aboutPx: fromUpright(thing.aboutPx) }
        : { ...thing, placePx };
    }),
    tape: question.tape.map((graduation) => ({ ...graduation, placePx: fromUpright(graduation.placePx) })),
    aboutPx: fromUpright(question.aboutPx),
    leaveOut: question.leaveOut.map((outline) => outline.map(fromUpright)),
    reachPx: { out: step(question.reachPx.out), back: step(question.reachPx.back) },
  };
}

function upright({ things, stills, tape }: FrameSight, { toUpright }: LumaPlaces): FrameSight {
  const turned = (sight: FollowedSight): FollowedSight => ({ ...sight, placePx: toUpright(sight.placePx) });
  return {
    things: things.map((sight) => (typeof sight === 'string' ? sight : turned(sight))),
    stills: stills.map((sight) => sight && turned(sight)),
    tape: tape.map((sight) => sight && turned(sight)),
  };
}

function say(said: FollowSaid): void {
  postMessage(said);
}
