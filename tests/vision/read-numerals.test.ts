import { expect, test } from 'vitest';
import { measureLattice } from '../../src/vision/assist-lattice.ts';
import { findTape } from '../../src/vision/find-tape.ts';
import { isWholeInch } from '../../src/vision/name-strokes.ts';
import { readNumerals } from '../../src/vision/read-numerals.ts';
import { type TapePicture, tapePicture } from './tape-picture.ts';

const INCH = 25.4;
const counted = (first: number, step: 1 | -1) =>
  Array.from({ length: 13 }, (_, inch) => (inch > 0 ? String(first + step * inch) : ''));
const COUNTED = tapePicture({ numerals: counted(0, 1) });

/** The lattice counts from 30 where the blade begins. */
function readOn({ gray, placeOf }: TapePicture, faceInches = 30) {
  const named = (inch: number) => ({ placePx: placeOf(inch, 2), sigmaPx: 1, readingMm: (30 + inch) * INCH });
  const lattice = measureLattice(gray, [named(1), named(11)]);
  if (!lattice.ok) throw new Error(lattice.failure.code);
  return readNumerals(gray, lattice.value, faceInches * INCH);
}

test('numerals are read as well where the tape begins elsewhere than at the face', () => {
  expect(readOn(COUNTED, 33)).toMatchObject({ sign: 1, byInches: -30 });
});

test('numerals are read that stand upside down and count towards the face', () => {
  const picture = tapePicture({ numerals: counted(14, -1), upsideDown: true });
  expect(readOn(picture, 43)).toMatchObject({ sign: -1, byInches: 44 });
});

test('a tape that counts from one again after a foot is read by what stands before it', () => {
  const numerals = ['', '8', '9', '10', '11', '', '1', '2', '3', '4', '5', '6', '7'];
  expect(readOn(tapePicture({ numerals }))).toMatchObject({ sign: 1, byInches: 8 - 31 });
});

test.each([
  ['none', []],
  ['some that do not count up', ['', '4', '4', '9', '1', '4', '7', '1', '0', '4', '9', '7', '1']],
])('nothing is read where there are numerals of this sort: %s', (_sort, numerals) => {
  expect(readOn(tapePicture({ numerals }))).toBeNull();
});

test('a tape of which nothing is named gets the readings of its numerals', () => {
  const [facePx, pinPx] = [COUNTED.placeOf(0, -6), COUNTED.placeOf(6.5, -6)];
  const found = findTape(COUNTED.gray, { of: 'tape-strokes', facePx, pinPx });
  if (!found.ok) throw new Error(found.failure.code);
  expect(found.value.isRead).toBe(true);
  const wholes = found.value.marks.filter(isWholeInch);
  expect(wholes.length).toBeGreaterThan(8);
  for (const { placePx, readingMm } of wholes) {
    const [x, y] = COUNTED.placeOf((readingMm ?? 0) / INCH, 2);
    expect(Math.hypot(placePx[0] - x, placePx[1] - y)).toBeLessThan(12);
  }
});
