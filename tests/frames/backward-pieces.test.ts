import fc from 'fast-check';
import { expect, test } from 'vitest';
import { backwardPieces } from '../../src/frames/backward-pieces.ts';

test('pieces begin at key frames, latest first', () => {
  expect(backwardPieces(0, 70, [0, 30, 60], 100)).toEqual([
    { from: 60, to: 70 },
    { from: 30, to: 60 },
    { from: 0, to: 30 },
  ]);
});

test('a piece holds no more than can be kept', () => {
  expect(backwardPieces(5, 30, [0], 10)).toEqual([
    { from: 20, to: 30 },
    { from: 10, to: 20 },
    { from: 5, to: 10 },
  ]);
});

test('any clip is covered once, without a hole', () => {
  const clip = fc.record({
    to: fc.nat(500),
    from: fc.nat(500),
    keys: fc.uniqueArray(fc.nat(500), { maxLength: 20 }),
    kept: fc.integer({ min: -1, max: 60 }),
  });
  fc.assert(
    fc.property(clip, ({ from, to, keys, kept }) => {
      const pieces = backwardPieces(
        from,
        to,
        keys.sort((a, b) => a - b),
        kept,
      );
      const frames = pieces.flatMap((piece) =>
        Array.from({ length: piece.to - piece.from }, (_, i) => piece.to - 1 - i),
      );
      expect(frames).toEqual(Array.from({ length: Math.max(0, to - from) }, (_, i) => to - 1 - i));
    }),
  );
});
