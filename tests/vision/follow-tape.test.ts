import { expect, test } from 'vitest';
import { tapeIn } from '../../src/vision/follow-tape.ts';
import type { Point } from '../../src/vision/point.ts';
import { seedTape } from '../../src/vision/seed-tape.ts';
import { skyBehind, type TapePicture, tapePicture } from './tape-picture.ts';

/** As seen from a hand's width aside: shifted along and aside, a little longer, a little turned. */
const ASIDE: readonly Point[] = [
  [31.4, 99.2],
  [615.3, 60.7],
  [613.3, 28.6],
  [33.3, 55.4],
];
/** As the seed's is drawn, and half-way along it. */
const SEED_SHOWN: readonly Point[] = [
  [40, 96],
  [620, 60],
  [618, 28],
  [42, 52],
];
const MIDDLE_PX = 330;
const INCHES = [2, 3, 4, 5, 6, 7, 8, 9];
const marksOf = ({ placeOf }: TapePicture) =>
  INCHES.map((inches, i) => {
    const [x, y] = placeOf(inches, 0);
    return { readingMm: 25.4 * inches, placePx: [x + (i % 3) - 1, y + ((i % 2) - 0.5)] as Point, sigmaPx: 1 };
  });

/** What stands still does not know how the tape moved. */
const stayed = (place: Point) => ({ place, steps: [1, 0, 0, 1] as const });

test.each([
  ['something dark', {}],
  ['a sky lighter than the blade', { behind: skyBehind }],
])('each spot goes with its graduation, hand marks beside it and all: before %s', (_what, how) => {
  const [seed, there] = [tapePicture(how), tapePicture({ ...how, shown: ASIDE })];
  const marks = marksOf(seed);
  const tape = seedTape(seed.gray, marks);
  const seen = tape && tapeIn(tape, there.gray, stayed);
  if (!seen) throw new Error('not found');
  expect(seen).not.toContain(null);
  for (const [i, sight] of seen.entries()) {
    if (!sight) continue;
    const [from, to] = [seed, there].map(({ placeOf }) => placeOf(INCHES[i] as number, 0)) as [Point, Point];
    const [marked, seenAt] = [marks[i]?.placePx as Point, sight.placePx];
    const off = ([0, 1] as const).map((axis) => seenAt[axis] - marked[axis] - (to[axis] - from[axis]));
    expect(Math.hypot(...off)).toBeLessThan(0.35);
    expect(sight.sigmaPx).toBeLessThan(0.35);
  }
});

test.each([-0.017, 0.017])('a blade longer by %s than what stands still says is found', (stretch) => {
  const shown = SEED_SHOWN.map(([x, y]): Point => [x + stretch * (x - MIDDLE_PX), y]);
  const [seed, there] = [tapePicture(), tapePicture({ shown })];
  const tape = seedTape(seed.gray, marksOf(seed));
  const seen = tape && tapeIn(tape, there.gray, stayed);
  if (!seen) throw new Error('not found');
  for (const [i, sight] of seen.entries()) {
    const at = marksOf(there)[i]?.placePx as Point;
    expect(sight && Math.hypot(sight.placePx[0] - at[0], sight.placePx[1] - at[1])).toBeLessThan(0.35);
  }
});

test('a blade that shows nothing, and no blade at all, are not taken for it', () => {
  const seed = tapePicture();
  const marks = marksOf(seed);
  const tape = seedTape(seed.gray, marks);
  if (!tape) throw new Error('the seed shows a tape');
  expect(tapeIn(tape, tapePicture({ strokes: false }).gray, stayed)).toBeNull();
  const { widthPx, heightPx } = seed.gray;
  const blank = { widthPx, heightPx, values: new Uint8Array(widthPx * heightPx).fill(90) };
  expect(tapeIn(tape, blank, stayed)).toBeNull();
  expect(seedTape(blank, marks)).toBeNull();
});
