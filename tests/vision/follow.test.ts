import { expect, test } from 'vitest';
import { drawFrom } from '../../src/basics/random.ts';
import { type Follower, startFollower } from '../../src/vision/follow.ts';
import type { FollowQuestion, FrameSight } from '../../src/vision/follow-sight.ts';
import type { FollowState } from '../../src/vision/follow-state.ts';
import type { Gray } from '../../src/vision/gray.ts';
import type { Point } from '../../src/vision/point.ts';
import {
  AT_REST,
  type Doing,
  eased,
  QUESTION,
  scenePicture,
  shaken,
  spotAt,
  stillAt,
  truePlaces,
  WIDTH_PX,
} from './follow-scene.ts';

const NOISE = 2;
const [PIN, CAMSHAFT, FACE] = [0, 1, 2] as const;

function started(seed: Gray, question: FollowQuestion, state: FollowState | null = null): Follower {
  const follower = startFollower(seed, question, state);
  if (!follower.ok) throw new Error(JSON.stringify(follower.failure));
  return follower.value;
}

/** Applied and held while the light drops, and a hand passes before the pin from the fifteenth frame to the twentieth. */
function applied(t: number): Doing {
  const hand: Point = [60 + 45 * (t - 14), 330];
  return {
    ...AT_REST,
    shake: shaken(t, 6),
    travelPx: 100 * eased((t - 2) / 9),
    turnRad: 0.7 * eased((t - 2) / 9),
    gain: t > 12 ? 0.7 : 1,
    hand: t > 14 && t < 21 ? { at: hand, radiusPx: 70 } : null,
  };
}

const SEED = scenePicture([applied(0)], NOISE, 1);
const TIMES = Array.from({ length: 24 }, (_, i) => i + 1);
const FRAMES = TIMES.map((t) => scenePicture([applied(t)], NOISE, 1 + t));
const follower = started(SEED, QUESTION);
const SIGHTS = FRAMES.map((frame) => follower.next(frame, false));

function errorsOf(sights: readonly FrameSight[], doings: readonly Doing[], thing: 0 | 1 | 2) {
  return sights.flatMap(({ things }, i) => {
    const sight = things[thing];
    const truth = truePlaces(doings[i] as Doing)[thing];
    if (!sight || typeof sight === 'string') return [];
    const { placePx, sigmaPx } = sight;
    return [{ px: Math.hypot(placePx[0] - truth[0], placePx[1] - truth[1]), sigmaPx }];
  });
}

test.each([
  ['pin', PIN, 0.12],
  ['camshaft end', CAMSHAFT, 0.12],
  ['face', FACE, 0.2],
] as const)('the %s is followed to a small part of a pixel, as well as is stated', (_, thing, mostPx) => {
  const errors = errorsOf(SIGHTS, TIMES.map(applied), thing);
  expect(errors.length).toBeGreaterThanOrEqual(18);
  expect(Math.max(...errors.map(({ px }) => px))).toBeLessThan(mostPx);
  expect(Math.max(...errors.map(({ px, sigmaPx }) => px / sigmaPx))).toBeLessThan(3.5);
});

/** As a phone that is moved to and fro for its parallax: the ground goes by behind the brake, and the rod runs out meanwhile. */
function swayed(t: number): Doing {
  const x = 130 * Math.sin((2 * Math.PI * t) / 34);
  const out = eased((t - 3) / 6);
  const shake = { ...AT_REST.shake, x, rollRad: 0.0002 * x };
  return { ...AT_REST, depth: 3, shake, travelPx: 100 * out, turnRad: 0.7 * out };
}

test('a hand sways by far more than near and far things agree about: all things are seen all the way, none is off', () => {
  const times = Array.from({ length: 12 }, (_, i) => i + 1);
  const swaying = started(scenePicture([swayed(0)], NOISE, 40), QUESTION);
  const sights = times.map((t) => swaying.next(scenePicture([swayed(t)], NOISE, 40 + t), false));
  for (const [thing, most] of [
    [PIN, 0.15],
    [CAMSHAFT, 0.15],
  ] as const) {
    const errors = errorsOf(sights, times.map(swayed), thing);
    expect(errors).toHaveLength(times.length);
    expect(Math.max(...errors.map(({ px }) => px))).toBeLessThan(most);
  }
  const last = sights.at(-1)?.stills ?? [];
  expect(last.filter((sight) => sight === null).length).toBeLessThan(0.3 * last.length);
});

/**
 * Of little contrast but for a bright blade with strokes, which stands still; the rod's end comes to lie close above it. As wide as a
 * clip's picture, so that coarse samples are as coarse.
 */
function besideBlade(doing: Doing, seed: number): Gray {
  const widthPx = 1920;
  const { values, heightPx } = scenePicture([doing], 0, 1);
  const draw = drawFrom(seed);
  const { x: shakeX, y: shakeY } = doing.shake;
  const levelAt = (x: number, y: number) => {
    const [bladeX, bladeY] = [x - shakeX, y - shakeY];
    if (bladeX > 120 && bladeX < 270 && bladeY >= 324 && bladeY < 360) return bladeX % 8 < 2 ? 60 : 235;
    return x < WIDTH_PX ? 100 + 0.3 * ((values[y * WIDTH_PX + x] as number) - 100) : 100;
  };
  const levels = Uint8Array.from({ length: widthPx * heightPx }, (_, i) =>
    Math.round(levelAt(i % widthPx, Math.floor(i / widthPx)) + draw.normal(0, NOISE)),
  );
  return { widthPx, heightPx, values: levels };
}

test('a plain pin that comes to lie close to a tape and stops there at once is not lost', () => {
  const small = { ...QUESTION, things: QUESTION.things.map((thing) => ({ ...thing, radiusPx: 12 })) };
  const doing = (t: number): Doing => ({
    ...AT_REST,
    shake: { ...AT_REST.shake, x: 9 * Math.sin(t), y: 6 * Math.sin(1.7 * t) },
    travelPx: Math.min(96, 8 * t),
  });
  const times = TIMES.slice(0, 16);
  const one = started(besideBlade(doing(0), 80), small);
  const sights = times.map((t) => one.next(besideBlade(doing(t), 80 + t), false));
  const errors = errorsOf(sights, times.map(doing), PIN);
  expect(errors).toHaveLength(times.length);
  expect(Math.max(...errors.map(({ px }) => px))).toBeLessThan(0.3);
});

test('what roams or swings is followed as well, and taken up again after a hand', () => {
  const far: Point = [24, 14];
  const [pin, camshaft] = [QUESTION.things[PIN]?.placePx, QUESTION.things[CAMSHAFT]?.placePx];
  if (!pin || !camshaft) throw new Error('no such things');
  const spot: Point = [camshaft[0] + far[0], camshaft[1] + far[1]];
  const free = started(SEED, {
    ...QUESTION,
    things: [
      { name: 'pin', placePx: pin, radiusPx: 18, how: 'roams', reachPx: 130 },
      { name: 'spot', placePx: spot, radiusPx: 13, how: 'swings', aboutPx: camshaft },
    ],
  });
  const sights = FRAMES.map((frame) => free.next(frame, false));
  const offPx = (thing: 0 | 1, truth: (doing: Doing) => Point) =>
    sights.map(({ things }, i) => {
      const sight = things[thing];
      const [x, y] = truth(applied(TIMES[i] as number));
      return !sight || typeof sight === 'string'
        ? null
        : Math.hypot(sight.placePx[0] - x, sight.placePx[1] - y);
    });
  for (const off of [offPx(0, (doing) => truePlaces(doing)[PIN]), offPx(1, (doing) => spotAt(doing, far))]) {
    expect(off.filter((each) => each !== null).length).toBeGreaterThanOrEqual(18);
    expect(Math.max(...off.map((each) => each ?? 0))).toBeLessThan(0.3);
    expect(off.at(-1)).not.toBeNull();
  }
});

test('while a hand is before the pin there is a gap, before and after it there is none', () => {
  const gaps = SIGHTS.map(({ things }) => things[PIN]);
  const hidden = TIMES.filter((_, i) => typeof gaps[i] === 'string');
  expect(gaps).toContain('hidden');
  expect(hidden.length).toBeGreaterThanOrEqual(2);
  expect(Math.min(...hidden)).toBeGreaterThan(14);
  expect(Math.max(...hidden)).toBeLessThan(21);
});

test('what stands still is found near the face, outside of what moves, and followed as well as is stated', () => {
  const { stills } = follower;
  expect(stills.length).toBeGreaterThanOrEqual(30);
  expect(stills.filter(([x, y]) => x > 120 && x < 600 && y > 270 && y < 350)).toEqual([]);
  expect(stills.filter(([x, y]) => Math.hypot(x - 590, y - 310) < 150).length).toBeGreaterThanOrEqual(8);
  const pulls = SIGHTS.flatMap((sight, i) =>
    sight.stills.flatMap((still, k) => {
      if (!still) return [];
      const truth = stillAt(applied(TIMES[i] as number), stills[k] as Point);
      return [0, 1].map((axis) => ((still.placePx[axis] ?? 0) - (truth[axis] ?? 0)) / still.sigmaPx);
    }),
  );
  const rms = Math.sqrt(pulls.reduce((sum, pull) => sum + pull ** 2, 0) / pulls.length);
  expect(pulls.length).toBeGreaterThan(2 * 20 * TIMES.length);
  expect(rms).toBeLessThan(1);
  expect(Math.max(...pulls.map(Math.abs))).toBeLessThan(5);
});

test('half the frames, then a follower from the kept state for the others: the same numbers', () => {
  const first = started(SEED, QUESTION);
  const half = FRAMES.slice(0, 12).map((frame) => first.next(frame, false));
  const kept = JSON.parse(JSON.stringify(first.state())) as FollowState;
  const second = started(SEED, QUESTION, kept);
  expect(second.stills).toEqual(follower.stills);
  expect([...half, ...FRAMES.slice(12).map((frame) => second.next(frame, false))]).toEqual(SIGHTS);
});

test('two from one seed, by turns: each sees what it would see alone', () => {
  const first = started(SEED, QUESTION);
  const second = first.another(null);
  const pairs = FRAMES.slice(0, 8).map((frame, i) => [
    first.next(frame, false),
    second.next(FRAMES[8 + i] as Gray, false),
  ]);
  const alone = started(SEED, QUESTION);
  expect(pairs.map(([sight]) => sight)).toEqual(SIGHTS.slice(0, 8));
  expect(pairs.map(([, sight]) => sight)).toEqual(
    FRAMES.slice(8, 16).map((frame) => alone.next(frame, false)),
  );
});

test('a quick rod in blurred frames: gaps, never a wrong place, and found again at rest', () => {
  const quick = (t: number): Doing => ({
    ...AT_REST,
    shake: shaken(t, 4),
    travelPx: 100 * eased((t - 2) / 4),
  });
  const shutter = (t: number) => [-0.25, 0, 0.25].map((part) => quick(t + part));
  const times = TIMES.slice(0, 8);
  const one = started(SEED, QUESTION);
  const sights = times.map((t) => one.next(scenePicture(shutter(t), NOISE, 50 + t), false));
  const errors = errorsOf(sights, times.map(quick), PIN);
  expect(Math.max(...errors.map(({ px }) => px))).toBeLessThan(0.7);
  expect(sights.slice(6).map(({ things }) => typeof things[PIN])).toEqual(['object', 'object']);
});

const by = (dx: number, [x, y]: Point): Point => [x + dx, y];

test('what leaves the picture is outside, and found when it comes back', () => {
  const panned = (dx: number): Doing => ({ ...AT_REST, shake: { ...AT_REST.shake, x: dx } });
  const question = {
    ...QUESTION,
    things: QUESTION.things.map((thing) => ({ ...thing, placePx: by(-240, thing.placePx) })),
    aboutPx: by(-240, QUESTION.aboutPx),
    leaveOut: QUESTION.leaveOut.map((outline) => outline.map((place) => by(-240, place))),
  };
  const one = started(scenePicture([panned(-240)], NOISE, 1), question);
  const shifts = [-248, -256, -264, -272, -280, -288, -296, -286, -276, -266, -256, -246];
  const sights = shifts.map((dx, i) => one.next(scenePicture([panned(dx)], NOISE, 70 + i), false));
  expect(sights[6]?.things[PIN]).toBe('outside');
  expect(typeof sights.at(-1)?.things[PIN]).toBe('object');
  expect(Math.max(...errorsOf(sights, shifts.map(panned), PIN).map(({ px }) => px))).toBeLessThan(0.3);
  expect(Math.max(...errorsOf(sights, shifts.map(panned), FACE).map(({ px }) => px))).toBeLessThan(0.3);
});

const blank = (gray: Gray, isBlank: (x: number, y: number) => boolean): Gray => ({
  ...gray,
  values: gray.values.map((level, i) => (isBlank(i % WIDTH_PX, Math.floor(i / WIDTH_PX)) ? 90 : level)),
});

test('frames of something else altogether are gaps, and the clip is taken up again after them', () => {
  const one = started(SEED, QUESTION);
  const away = one.next(
    blank(SEED, () => true),
    false,
  );
  expect(away.things.map((sight) => typeof sight)).toEqual(['string', 'string', 'string']);
  expect(away.stills.every((still) => still === null)).toBe(true);
  const back = [1, 2].map((t) => one.next(FRAMES[t - 1] as Gray, false));
  expect(Math.max(...errorsOf(back, [1, 2].map(applied), PIN).map(({ px }) => px))).toBeLessThan(0.12);
  expect(typeof back[1]?.things[PIN]).toBe('object');
});

test('a seed picture without what stands still, and one without a feature at the pin, are told apart', () => {
  const empty = startFollower(
    blank(SEED, () => true),
    QUESTION,
    null,
  );
  expect(empty).toMatchObject({ ok: false, failure: { code: 'follow/too-few-still', found: 0 } });
  const bare = blank(SEED, (x, y) => Math.hypot(x - 300, y - 310) < 30);
  expect(startFollower(bare, QUESTION, null)).toEqual({
    ok: false,
    failure: { code: 'follow/no-feature', name: 'pin' },
  });
});
