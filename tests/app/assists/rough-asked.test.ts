import { expect, test } from 'vitest';
import { closeTo, isRoughWanted, roughMarks, withoutEnds } from '../../../src/app/assists/rough-asked.ts';
import type { Mark } from '../../../src/marks/mark.ts';
import type { RoughGuess } from '../../../src/vision/rough-sight.ts';

const at = (id: string) => ({ id, xPx: 1, yPx: 2, sigmaPx: 1, placedBy: 'hand' }) as const;
const face: Mark = { kind: 'chamber-face', ...at('face') };
const pin: Mark = { kind: 'clevis-pin', ...at('pin') };
const shaft: Mark = { kind: 'camshaft-end', ...at('shaft') };
const graduation: Mark = { kind: 'tape-graduation', readingMm: 25.4, ...at('inch') };

test('it is of use until the face is marked, or the tape', () => {
  const wanted = [[], [pin, shaft]];
  const past = [[face], [graduation], [pin, graduation]];
  expect(wanted.map((marks) => isRoughWanted({ marks }))).toEqual([true, true]);
  expect(past.map((marks) => isRoughWanted({ marks }))).toEqual([false, false, false]);
});

const guess: RoughGuess = {
  tape: {
    likely: false,
    placesPx: [
      [10, 20],
      [30, 20],
    ],
  },
  band: null,
  axis: {
    likely: true,
    placesPx: [
      [5, 50],
      [90, 50],
    ],
  },
  pin: { likely: false, placePx: [60, 52], radiusPx: 4 },
  camshaft: { likely: true, placePx: [65, 90], radiusPx: 11 },
};

test('what is seen is drawn as its line, the tape named far from the chamber, ends as rings; what is not seen is not drawn', () => {
  const drawn = roughMarks(guess);
  expect(drawn.map(({ line, name, ringPx }) => [line, name, ringPx])).toEqual([
    ['row', null, undefined],
    ['row', 'tape?', undefined],
    ['edge', null, undefined],
    ['edge', null, undefined],
    [null, 'clevis pin?', 4],
    [null, 'camshaft end', 11],
  ]);
  expect(new Set(drawn.map(({ id }) => id)).size).toBe(6);
  const nothing = { tape: null, band: null, axis: null, pin: null, camshaft: null };
  expect(roughMarks(nothing)).toEqual([]);
});

test('an end that is marked or found has no ring any more', () => {
  const names = roughMarks(withoutEnds(guess, ['clevis-pin'])).map(({ name }) => name);
  expect(names).toContain('camshaft end');
  expect(names).not.toContain('clevis pin?');
});

test('tape, band and ends are brought close, not the far end of an axis', () => {
  expect(closeTo(guess)).toEqual([
    { xPx: 10, yPx: 20 },
    { xPx: 30, yPx: 20 },
    { xPx: 60, yPx: 52 },
    { xPx: 65, yPx: 90 },
  ]);
});
