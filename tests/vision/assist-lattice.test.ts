import { expect, test } from 'vitest';
import { findLattice } from '../../src/vision/assist-lattice.ts';
import { tapePicture } from './tape-picture.ts';

const named = (inches: number, [x, y]: readonly [number, number], sigmaPx = 1.5) => ({
  readingMm: 25.4 * inches,
  placePx: [x, y] as const,
  sigmaPx,
});
const codeOf = (result: ReturnType<typeof findLattice>) => (result.ok ? 'found' : result.failure.code);

test('every quarter inch between two named graduations is found to a small part of a pixel, and a little beyond', () => {
  const { gray, placeOf } = tapePicture();
  const [low, high] = [placeOf(2, 0), placeOf(9, 0)];
  const found = findLattice(gray, [
    named(2, [low[0] + 1.8, low[1] - 1]),
    named(9, [high[0] - 1.5, high[1] + 1.2]),
  ]);
  if (!found.ok) throw new Error(found.failure.code);
  const { marks } = found.value;
  const quarters = marks.map(({ readingMm }) => ((readingMm ?? NaN) * 4) / 25.4);
  for (let quarter = 8; quarter <= 36; quarter++)
    expect(quarters.some((each) => Math.abs(each - quarter) < 1e-6)).toBe(true);
  expect(marks.length).toBeGreaterThan(32);
  for (const { placePx, readingMm, sigmaPx } of marks) {
    const inches = (readingMm ?? NaN) / 25.4;
    const [foot, tip] = [placeOf(inches, 0), placeOf(inches, 4)];
    const long = Math.hypot(tip[0] - foot[0], tip[1] - foot[1]);
    const off =
      ((placePx[0] - foot[0]) * (tip[1] - foot[1]) - (placePx[1] - foot[1]) * (tip[0] - foot[0])) / long;
    expect(Math.abs(off)).toBeLessThan(0.35);
    expect(Math.abs(off)).toBeLessThan(4 * sigmaPx);
  }
});

test('a reading that is an inch off finds nothing, and says so', () => {
  const { gray, placeOf } = tapePicture();
  expect(codeOf(findLattice(gray, [named(2, placeOf(2, 0)), named(10, placeOf(9, 0))]))).toMatch(
    /no-lattice|few-strokes|two-ways/,
  );
});

test.each([
  ['a blade without strokes', () => tapePicture({ strokes: false }), 2, 9, /no-lattice|few-strokes|two-ways/],
  ['readings of no usual step', () => tapePicture(), 2.03, 9, /odd-readings/],
  ['marks too near to each other', () => tapePicture(), 2, 3, /named-near/],
])('%s: refused with the reason', (_what, picture, low, high, code) => {
  const { gray, placeOf } = picture();
  expect(codeOf(findLattice(gray, [named(low, placeOf(low, 0)), named(high, placeOf(high, 0))]))).toMatch(
    code,
  );
});

test('marks beside the tape: no edge, or no strokes on what was taken for one', () => {
  const { gray } = tapePicture();
  expect(codeOf(findLattice(gray, [named(2, [100, 118]), named(9, [460, 121])]))).not.toBe('found');
});
