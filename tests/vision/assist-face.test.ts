import { expect, test } from 'vitest';
import { findFace } from '../../src/vision/assist-face.ts';
import { dot, minus, type Point } from '../../src/vision/point.ts';
import { type RodLook, rodPicture } from './rod-picture.ts';

const SIGMA_PX = 2;

/** offPx: of the hand's mark, along the rod; found: how far along it from the face, pixels. */
function shown(look: RodLook = {}) {
  const { gray, asked, axisPx, endPx } = rodPicture({ slantRad: -0.3, ...look });
  const [dx, dy] = minus(axisPx(40), axisPx(0));
  const along: Point = [dx / Math.hypot(dx, dy), dy / Math.hypot(dx, dy)];
  const ask = (offPx = 0, sigmaPx = SIGMA_PX) =>
    findFace(gray, {
      facePx: [endPx[0] + offPx * along[0], endPx[1] + offPx * along[1]],
      sigmaPx,
      rod: [
        { placePx: axisPx(6), sigmaPx: 0.3 },
        { placePx: axisPx(45), sigmaPx: 0.3 },
      ],
      tape: asked.tape,
    });
  const marks = (offPx = 0) => {
    const found = ask(offPx);
    if (!found.ok) throw new Error(found.failure.code);
    return found.value.marks;
  };
  return {
    marks,
    offs: (offPx = 0) => marks(offPx).map(({ placePx }) => dot(minus(placePx, endPx), along)),
    refusal: (...asked: Parameters<typeof ask>) => {
      const found = ask(...asked);
      return found.ok ? 'found' : found.failure.code;
    },
  };
}

test('the edge at which the rod ends is found within a third of a pixel, however slanted it is seen and wherever near it the hand marked', () => {
  for (const slantRad of [-0.5, -0.3, -0.1]) {
    const picture = shown({ slantRad });
    for (const offPx of [-4, 0, 4]) {
      const offs = picture.offs(offPx);
      expect(offs).toHaveLength(1);
      expect(Math.abs(offs[0] ?? 9)).toBeLessThan(0.33);
    }
  }
});

test('it runs round the rod, from side to side, and is surer than the hand', () => {
  const [edge] = shown().marks();
  const points = edge?.edgePx ?? [];
  const [first, middle, last] = [points[0], points[5], points.at(-1)];
  if (!edge || !first || !middle || !last) throw new Error('no edge');
  expect(middle).toEqual(edge.placePx);
  // On the near side the rod begins nearest to the chamber.
  expect(Math.min(first[0], last[0])).toBeGreaterThan(middle[0] + 3);
  expect(Math.abs(last[1] - first[1])).toBeGreaterThan(25);
  expect(edge.sigmaPx).toBeLessThan(0.5);
});

test('where the end of a paint band lies beside it both are told, from the chamber outwards', () => {
  const offs = shown({ paint: (mm) => (mm > 2.5 ? null : 200) }).offs(2);
  expect(offs).toHaveLength(2);
  expect(Math.abs(offs[0] ?? 9)).toBeLessThan(0.4);
  expect(offs[1]).toBeGreaterThan(4);
});

test('a shadow that runs slanting over the rod is none, one out of the hand’s reach neither', () => {
  expect(shown({ paint: (mm, share) => (mm > 1 + 4 * share ? null : 30) }).offs()).toHaveLength(1);
  expect(shown({ paint: (mm) => (mm > 9 ? null : 200) }).offs()).toHaveLength(1);
  expect(shown().refusal(9)).toBe('face/no-edge');
});

test('refused: a face seen from behind, a rod as bright as what is about it, a hand that is as sure', () => {
  expect(shown({ slantRad: 0.35 }).refusal()).toBe('face/no-edge');
  expect(shown({ shades: [120] }).refusal()).toBe('face/no-edge');
  expect(shown().refusal(0, 0.3)).toBe('face/no-surer');
});
