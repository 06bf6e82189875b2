import { expect, test } from 'vitest';
import type { Gray } from '../../src/vision/gray.ts';
import { longEdges } from '../../src/vision/long-edges.ts';
import { roughGuess } from '../../src/vision/rough-guess.ts';
import { shrunk } from '../../src/vision/shrunk.ts';
import { tapePicture } from './tape-picture.ts';

const NOTHING = { tape: null, band: null, axis: null, pin: null, camshaft: null };

test('a tape is seen with nothing marked, told as not likely, a place on each whole inch', () => {
  const { gray, placeOf } = tapePicture();
  const { tape, ...others } = roughGuess(gray);
  expect({ tape: null, ...others, likely: tape?.likely }).toEqual({ ...NOTHING, likely: false });
  expect(tape?.placesPx.length).toBeGreaterThan(8);
  for (const [x, y] of tape?.placesPx ?? []) {
    const offs = Array.from({ length: 13 }, (_, inches) => {
      const [foot, tip] = [placeOf(inches, 0), placeOf(inches, 19)];
      const along = [tip[0] - foot[0], tip[1] - foot[1]] as const;
      const across = (x - foot[0]) * along[1] - (y - foot[1]) * along[0];
      return Math.abs(across) / Math.hypot(...along);
    });
    expect(Math.min(...offs)).toBeLessThan(1);
  }
});

test.each([
  ['a blade without strokes', { strokes: false }],
  ['whole inches no longer than halves', { wholeMm: 7.4 }],
])('%s is no tape', (_what, drawn) => {
  expect(roughGuess(tapePicture(drawn).gray)).toEqual(NOTHING);
});

test('a picture too small for anything shows nothing', () => {
  expect(roughGuess({ widthPx: 12, heightPx: 9, values: new Uint8Array(108) })).toEqual(NOTHING);
});

/** Lighter below the line y = 40 + x / 4, over two pixels. */
const slanting: Gray = {
  widthPx: 300,
  heightPx: 200,
  values: Uint8Array.from({ length: 300 * 200 }, (_, i) => {
    const below = Math.floor(i / 300) + 0.5 - 40 - ((i % 300) + 0.5) / 4;
    return 60 + 100 * Math.min(1, Math.max(0, 0.5 + below / 2));
  }),
};

test('a long edge is found once, its brighter side told', () => {
  const [edge, ...others] = longEdges(slanting, 120);
  expect(others).toEqual([]);
  const { from, to, inward } = edge ?? { from: [0, 0], to: [0, 0], inward: [0, 0] };
  for (const [x, y] of [from, to]) expect(Math.abs(y - 40 - x / 4)).toBeLessThan(1.5);
  expect(Math.hypot(to[0] - from[0], to[1] - from[1])).toBeGreaterThan(250);
  expect(inward[1]).toBeGreaterThan(0.9);
});

test('a shrunk picture has the means of whole squares, and a small one is left as it is', () => {
  const { gray, by } = shrunk(
    { widthPx: 5, heightPx: 4, values: Uint8Array.from({ length: 20 }, (_, i) => 10 * i) },
    3,
  );
  expect({ by, ...gray }).toEqual({
    by: 2,
    widthPx: 2,
    heightPx: 2,
    values: Uint8Array.from([30, 50, 130, 150]),
  });
  expect(shrunk(slanting, 300)).toEqual({ gray: slanting, by: 1 });
});
