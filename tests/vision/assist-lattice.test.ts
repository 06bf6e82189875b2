import { expect, test } from 'vitest';
import { findLattice } from '../../src/vision/assist-lattice.ts';
import type { Point } from '../../src/vision/point.ts';
import { skyBehind, tapePicture } from './tape-picture.ts';

const named = (inches: number, [x, y]: readonly [number, number], sigmaPx = 1.5) => ({
  readingMm: 25.4 * inches,
  placePx: [x, y] as const,
  sigmaPx,
});
const codeOf = (result: ReturnType<typeof findLattice>) => (result.ok ? 'found' : result.failure.code);

/** The blade's corners from so many degrees to the side and from above, 560 mm away, by a lens of 1,100 px. */
function fromTheSide(yawDeg: number, liftDeg: number): readonly Point[] {
  const [yaw, lift] = [(yawDeg * Math.PI) / 180, (liftDeg * Math.PI) / 180];
  const corners: Point[] = [
    [-152, 0],
    [152, 0],
    [152, -19],
    [-152, -19],
  ];
  return corners.map(([x, y]): Point => {
    const [across, away] = [x * Math.cos(yaw), x * Math.sin(yaw)];
    const [down, z] = [
      y * Math.cos(lift) - away * Math.sin(lift),
      y * Math.sin(lift) + away * Math.cos(lift) + 560,
    ];
    // Held so that the tape lies level in the picture.
    const roll = Math.atan2(Math.sin(yaw) * Math.sin(lift), Math.cos(yaw));
    const [right, low] = [
      across * Math.cos(roll) - down * Math.sin(roll),
      across * Math.sin(roll) + down * Math.cos(roll),
    ];
    return [330 + (1100 * right) / z, 85 + (1100 * low) / z];
  });
}
const STEEP = fromTheSide(32, 14);

test.each([
  ['before something dark', {}],
  ['before a sky lighter than the blade', { behind: skyBehind }],
  ['from the side', { shown: STEEP }],
  ['from the other side', { shown: fromTheSide(-32, 14) }],
  ['from the side, before a sky', { shown: STEEP, behind: skyBehind }],
])(
  'every quarter inch between two named graduations is found to a small part of a pixel, and a little beyond: %s',
  (_what, how) => {
    const { gray, placeOf } = tapePicture(how);
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
  },
);

test.each([
  ['before something dark', {}],
  ['from the side, before a sky', { shown: STEEP, behind: skyBehind }],
])('readings that are an inch or two off find nothing, and say so: %s', (_what, how) => {
  const { gray, placeOf } = tapePicture(how);
  for (const [low, high] of [
    [2, 10],
    [2, 8],
    [2, 7],
    [3, 9],
    [1, 9],
  ] as const)
    expect(codeOf(findLattice(gray, [named(low, placeOf(2, 0)), named(high, placeOf(9, 0))]))).toMatch(
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
