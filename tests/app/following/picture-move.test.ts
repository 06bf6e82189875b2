import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pictureMove } from '../../../src/app/following/picture-move.ts';

const place = ([xPx, yPx]: readonly [number, number]) => ({ xPx, yPx, sigmaPx: 0.1 });
const SEEN = [
  [100, 100],
  [900, 150],
  [500, 700],
  [300, 420],
  [820, 610],
] as const;

const turned =
  (rad: number, scale: number, dx: number, dy: number) =>
  ([x, y]: readonly [number, number]) =>
    [
      scale * (Math.cos(rad) * x - Math.sin(rad) * y) + dx,
      scale * (Math.sin(rad) * x + Math.cos(rad) * y) + dy,
    ] as const;

test('shift, turn and scale are found again', () => {
  const small = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
  fc.assert(
    fc.property(small(-0.2, 0.2), small(0.9, 1.1), small(-80, 80), (rad, scale, shift) => {
      const truth = turned(rad, scale, shift, -shift);
      const move = pictureMove(SEEN.map((at) => ({ from: place(at), to: place(truth(at)) })));
      const [x, y] = move?.([450, 333]) ?? [0, 0];
      const [wx, wy] = truth([450, 333]);
      expect(Math.hypot(x - wx, y - wy)).toBeLessThan(1e-6);
    }),
  );
});

test('of many places one that moved is left out', () => {
  const truth = turned(0.05, 1.02, 12, -7);
  const many = Array.from({ length: 20 }, (_, i) => [40 + 47 * i, (i * 311) % 800] as const);
  const pairs = many.map((at, i) => {
    const [x, y] = truth(at);
    const jitter = 0.05 * (i % 3) - 0.05;
    return { from: place(at), to: place(i === 7 ? [x + 60, y] : [x + jitter, y - jitter]) };
  });
  const [x, y] = pictureMove(pairs)?.([450, 333]) ?? [0, 0];
  const [wx, wy] = truth([450, 333]);
  expect(Math.hypot(x - wx, y - wy)).toBeLessThan(0.1);
});

test('two places, or several on one spot, tell no move', () => {
  const pairs = SEEN.map((at) => ({ from: place(at), to: place(at) }));
  expect(pictureMove(pairs.slice(0, 2))).toBeNull();
  expect(pictureMove([1, 2, 3].map(() => ({ from: place([5, 5]), to: place([5, 5]) })))).toBeNull();
});
