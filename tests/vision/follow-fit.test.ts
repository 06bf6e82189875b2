import { expect, test } from 'vitest';
import { drawFrom } from '../../src/basics/random.ts';
import { carried } from '../../src/vision/follow-carry.ts';
import { commonMotion, type Motion, movedBy } from '../../src/vision/follow-common.ts';
import { fitFollowed } from '../../src/vision/follow-fit.ts';
import { lookOf, mostAlike, roomForLook } from '../../src/vision/follow-look.ts';
import { type Patch, patchOf } from '../../src/vision/follow-patch.ts';
import { roomFor } from '../../src/vision/follow-residuals.ts';
import { soughtAlong } from '../../src/vision/follow-way.ts';
import type { Point } from '../../src/vision/point.ts';
import { AT_REST, type Doing, scenePicture, stillAt } from './follow-scene.ts';

const NEAR: Point = [640.3, 300.8];
const seed = scenePicture([AT_REST], 0, 1);

function patchAt(radiusPx: number, stepPx: number): Patch {
  const patch = patchOf(seed, NEAR, radiusPx, stepPx);
  if (!patch) throw new Error('no patch');
  return patch;
}

function offPx(patch: Patch, doing: Doing, steps: readonly [number, number, number, number]) {
  const truth = stillAt(doing, NEAR);
  const start = { place: [truth[0] + 1.5, truth[1] - 1.2] as const, steps };
  const fit = fitFollowed(patch, scenePicture([doing], 0, 1), start, roomFor(patch));
  if (!fit) throw new Error('no fit');
  return { px: Math.hypot(fit.place[0] - truth[0], fit.place[1] - truth[1]), fit };
}

test.each([
  [11, 1],
  [24, 2],
])('any part of a pixel is found again: radius %d, samples of %d', (radiusPx, stepPx) => {
  const patch = patchAt(radiusPx, stepPx);
  for (const part of [0.1, 0.25, 0.5, 0.8]) {
    const shake = { ...AT_REST.shake, x: 3 + part, y: -2 - 0.6 * part };
    expect(offPx(patch, { ...AT_REST, shake }, [1, 0, 0, 1]).px).toBeLessThan(0.03 * stepPx);
  }
});

test('nearer by a tenth and turned by a tenth, the shape is found as well', () => {
  const shake = { x: 4.3, y: 1.7, rollRad: 0.1, zoom: 1.1 };
  const { px, fit } = offPx(patchAt(18, 1), { ...AT_REST, shake }, [1, 0, 0, 1]);
  expect(px).toBeLessThan(0.04);
  const [c, s] = [1.1 * Math.cos(0.1), 1.1 * Math.sin(0.1)];
  [c, -s, s, c].forEach((step, i) => {
    expect(fit.steps[i]).toBeCloseTo(step, 2);
  });
});

test('another light, and a hand before a third of the circle, do not pull', () => {
  const hand = { at: [NEAR[0] - 45, NEAR[1]] as Point, radiusPx: 36 };
  const lit: Doing = { ...AT_REST, gain: 0.6, offset: 50, hand };
  const { px, fit } = offPx(patchAt(18, 1), lit, [1, 0, 0, 1]);
  expect(px).toBeLessThan(0.1);
  expect(fit.share).toBeLessThan(0.98);
});

test('where something else is, nothing is fitted, or it is not like the seed', () => {
  const hidden = scenePicture([{ ...AT_REST, hand: { at: NEAR, radiusPx: 90 } }], 2, 3);
  const patch = patchAt(18, 1);
  for (const dx of [-40, -20, 0, 20, 40]) {
    const start = { place: [NEAR[0] + dx, NEAR[1] + dx / 2] as const, steps: [1, 0, 0, 1] as const };
    expect(fitFollowed(patch, hidden, start, roomFor(patch))?.likeness ?? 0).toBeLessThan(0.75);
  }
});

test('coarse samples find a place far off, to a part of a sample', () => {
  const shake = { ...AT_REST.shake, x: 37, y: -22 };
  const look = lookOf(seed, NEAR, 4);
  if (!look) throw new Error('no look');
  const found = mostAlike(look, scenePicture([{ ...AT_REST, shake }], 2, 3), NEAR, roomForLook(look, 12, 12));
  expect(found?.likeness).toBeGreaterThan(0.9);
  expect(found?.rival).toBeLessThan(0.8);
  expect(
    Math.hypot((found?.place[0] ?? 0) - NEAR[0] - 37, (found?.place[1] ?? 0) - NEAR[1] + 22),
  ).toBeLessThan(1.2);
});

test('a pin that was lost is found again beside its straight way, where its arc has taken it', () => {
  const look = lookOf(seed, NEAR, 4);
  if (!look) throw new Error('no look');
  const [x, y] = NEAR;
  const found = soughtAlong(look, seed, { back: [x - 140, y + 22], out: [x + 20, y + 22] }, 18);
  expect(Math.hypot((found?.[0] ?? 0) - x, (found?.[1] ?? 0) - y)).toBeLessThan(1.2);
});

const TRUE_MOTION: Motion = { a: 1.02, b: 0.03, c: 12, d: -7 };

function pairs(count: number, astray: number, spreadPx: number) {
  const draw = drawFrom(5);
  return Array.from({ length: count }, (_, i) => {
    const from: Point = [draw.uniform(0, 1900), draw.uniform(0, 1000)];
    const [x, y] = movedBy(TRUE_MOTION, from);
    const off = i < astray ? 60 : 0;
    const to: Point = [x + off + draw.normal(0, spreadPx), y - off + draw.normal(0, spreadPx)];
    return { from, to, sigmaPx: 0.1, weight: 1 };
  });
}

test('a third of the places go with a hand: the common motion stays with the others', () => {
  const motion = commonMotion(pairs(30, 10, 0.1), 3);
  expect(motion?.a).toBeCloseTo(TRUE_MOTION.a, 3);
  expect(motion?.b).toBeCloseTo(TRUE_MOTION.b, 3);
  expect(commonMotion(pairs(30, 0, 60), 3)).toBeNull();
});

test('what is carried goes with its neighbours, not with one of them that strays', () => {
  const place: Point = [900, 500];
  const moved = pairs(40, 0, 0.05);
  const strayed = moved.map((pair, i) =>
    i % 8 === 0 ? { ...pair, to: [pair.to[0] + 6, pair.to[1]] as Point } : pair,
  );
  const truth = movedBy(TRUE_MOTION, place);
  for (const stills of [moved, strayed]) {
    const there = carried(place, stills, TRUE_MOTION, { reachPx: 150, fullNearness: 1 });
    if (!there) throw new Error('not carried');
    const px = Math.hypot(there.place[0] - truth[0], there.place[1] - truth[1]);
    expect(px).toBeLessThan(0.15);
    expect(px / there.sigmaPx).toBeLessThan(3);
    expect(there.sigmaPx).toBeLessThan(0.3);
  }
});
