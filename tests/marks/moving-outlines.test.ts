import { expect, test } from 'vitest';
import type { Mark } from '../../src/marks/mark.ts';
import { movingOutlines } from '../../src/marks/moving-outlines.ts';
import { inside } from '../../src/vision/inside.ts';

let count = 0;
const at = (xPx: number, yPx: number) => ({
  id: `m${count++}`,
  xPx,
  yPx,
  sigmaPx: 1,
  placedBy: 'hand' as const,
});
const face: Mark = { kind: 'chamber-face', ...at(1000, 1000) };
const pin: Mark = { kind: 'clevis-pin', ...at(1500, 1000) };
const camshaft: Mark = { kind: 'camshaft-end', ...at(1600, 1560) };

/** An arm of 140 mm is 569 px here: 4.06 px a millimetre. */
const leftOut = (marks: readonly Mark[], place: readonly [number, number]) =>
  movingOutlines({ marks }).some((outline) => inside(place, outline));

test.each<[string, readonly [number, number], boolean]>([
  ['the rod', [1250, 1020], true],
  ['the end of the arm past the pin', [1480, 880], true],
  ['the adjuster’s body below the camshaft', [1600, 1780], true],
  ['the chamber’s side', [850, 1000], false],
  ['a bolt of the chamber, 60 mm off the axis', [990, 1250], false],
  ['the axle', [1900, 1700], false],
])('%s', (_, place, expected) => {
  expect(leftOut([face, pin, camshaft], place)).toBe(expected);
});

test('without the camshaft’s end the arm may be on either side', () => {
  expect(leftOut([face, pin], [1500, 400])).toBe(true);
  expect(leftOut([face, pin], [1500, 1600])).toBe(true);
});

test('a tape is left out with the hand at its end, not what lies far beside it', () => {
  const graduation = (readingMm: number, xPx: number): Mark => ({
    kind: 'tape-graduation',
    readingMm,
    ...at(xPx, 500),
  });
  const tape = [graduation(25.4, 1100), graduation(254, 2014)];
  expect(leftOut(tape, [1020, 500])).toBe(true);
  expect(leftOut(tape, [2300, 800])).toBe(true);
  expect(leftOut(tape, [1500, 800])).toBe(false);
});

test('a picture without marks leaves nothing out', () => {
  expect(movingOutlines({ marks: [] })).toEqual([]);
});
