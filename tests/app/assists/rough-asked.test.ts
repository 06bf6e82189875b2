import { expect, test } from 'vitest';
import { closeTo, isRoughWanted, roughMarks } from '../../../src/app/assists/rough-asked.ts';
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
};

test('what is seen is drawn as its line, the tape named far from the chamber; what is not seen is not drawn', () => {
  const drawn = roughMarks(guess);
  expect(drawn.map(({ line, name }) => [line, name])).toEqual([
    ['row', null],
    ['row', 'tape, perhaps'],
    ['edge', null],
    ['edge', null],
  ]);
  expect(new Set(drawn.map(({ id }) => id)).size).toBe(4);
  expect(roughMarks({ tape: null, band: null, axis: null })).toEqual([]);
});

test('tape and band are brought close, not the far end of an axis', () => {
  expect(closeTo(guess)).toEqual([
    { xPx: 10, yPx: 20 },
    { xPx: 30, yPx: 20 },
  ]);
});
