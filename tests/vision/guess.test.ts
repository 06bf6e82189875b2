/** First guesses on drawn pictures: a tape with numerals of seven bars, which are not those the reader knows. */
import { expect, test } from 'vitest';
import type { Gray } from '../../src/vision/gray.ts';
import { guess } from '../../src/vision/guess.ts';
import { longEdges } from '../../src/vision/guess-lines.ts';
import { ringPlaces } from '../../src/vision/guess-rings.ts';
import { tapePicture } from './tape-picture.ts';

const nothing = { tape: [], other: null };

/** The same picture held upside down. */
function turned({ widthPx, heightPx, values }: Gray): Gray {
  return { widthPx, heightPx, values: values.slice().reverse() };
}

test('a tape is found and read with nothing marked, in a picture held upside down', () => {
  const { gray, placeOf } = tapePicture({ numerals: true });
  const tape = guess(turned(gray), nothing).proposals.find(({ kind }) => kind === 'tape-graduation');
  if (!tape) throw new Error('no tape');
  expect(tape.marks.length).toBeGreaterThan(24);
  for (const { placePx, readingMm } of tape.marks) {
    const [x, y] = [gray.widthPx - placePx[0], gray.heightPx - placePx[1]];
    const inches = (readingMm ?? Number.NaN) / 25.4;
    const [foot, tip] = [placeOf(inches, 0), placeOf(inches, 19)];
    const long = Math.hypot(tip[0] - foot[0], tip[1] - foot[1]);
    const off = ((x - foot[0]) * (tip[1] - foot[1]) - (y - foot[1]) * (tip[0] - foot[0])) / long;
    expect(Math.abs(off)).toBeLessThan(1);
  }
});

test('without numerals no tape is proposed: its readings would be made up', () => {
  expect(guess(tapePicture().gray, nothing).proposals).toEqual([]);
});

test('a bright strip has two long edges, each with its bright side', () => {
  const values = new Uint8Array(200 * 100).fill(60);
  for (let y = 40; y < 60; y++) values.fill(180, y * 200 + 20, y * 200 + 180);
  const edges = longEdges({ widthPx: 200, heightPx: 100, values }, 60);
  expect(edges.map(({ inward }) => Math.round(inward[1])).sort()).toEqual([-1, 1]);
  for (const { from, to } of edges) {
    expect(Math.abs(to[0] - from[0])).toBeGreaterThan(150);
    expect(Math.min(Math.abs(from[1] - 40), Math.abs(from[1] - 60))).toBeLessThan(1.2);
  }
});

test('the middle of a disc gets the most votes at its radius', () => {
  const [columns, rows] = [80, 70];
  const levels = Float64Array.from({ length: columns * rows }, (_, i) => {
    const r = Math.hypot((i % columns) - 47, Math.floor(i / columns) - 31);
    return 60 + 120 / (1 + Math.exp(2 * (r - 15)));
  });
  const [best] = ringPlaces({ columns, rows, levels }, [12, 15, 18], 3);
  expect(best?.radius).toBe(15);
  expect(Math.hypot((best?.at[0] ?? 0) - 47, (best?.at[1] ?? 0) - 31)).toBeLessThan(1.5);
});
