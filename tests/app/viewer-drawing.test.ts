import fc from 'fast-check';
import { expect, test } from 'vitest';
import { overlapCss2 } from '../../src/app/viewer/box.ts';
import { dimensionLines } from '../../src/app/viewer/dimension-lines.ts';
import { LOUPE_CSS, type LoupeSide, loupePlace, loupeScale } from '../../src/app/viewer/loupe-place.ts';
import { namePlaces } from '../../src/app/viewer/name-places.ts';
import { lengthInsideCss, outsideDiscs } from '../../src/app/viewer/segment.ts';
import { distanceCss } from '../../src/app/viewer/view-transform.ts';

const SCREEN = { widthCss: 1000, heightCss: 600 };
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const point = (width: number, height: number) =>
  fc.record({ xCss: number(0, width), yCss: number(0, height) });

test('the loupe is never off the screen and never under the finger, on any screen from 320 by 300 on', () => {
  const sides: (LoupeSide | null)[] = [null, 'above', 'left', 'right', 'below', 'top-left', 'bottom-right'];
  fc.assert(
    fc.property(
      number(320, 1500),
      number(300, 1000),
      number(0, 1),
      number(0, 1),
      number(-60, 60),
      fc.constantFrom(...sides),
      (widthCss, heightCss, shareX, shareY, aside, before) => {
        const finger = { xCss: shareX * widthCss, yCss: shareY * heightCss };
        const mark = { xCss: finger.xCss + aside, yCss: finger.yCss - aside };
        const { leftCss, topCss } = loupePlace('finger', { finger, mark }, { widthCss, heightCss }, before);
        expect(leftCss).toBeGreaterThanOrEqual(0);
        expect(topCss).toBeGreaterThanOrEqual(0);
        expect(leftCss + LOUPE_CSS).toBeLessThanOrEqual(widthCss);
        expect(topCss + LOUPE_CSS).toBeLessThanOrEqual(heightCss);
        const nearest = {
          xCss: Math.min(Math.max(finger.xCss, leftCss), leftCss + LOUPE_CSS),
          yCss: Math.min(Math.max(finger.yCss, topCss), topCss + LOUPE_CSS),
        };
        expect(distanceCss(finger, nearest)).toBeGreaterThan(40);
      },
    ),
    { numRuns: 2000 },
  );
});

test('the loupe goes above, and to a side where there is no room above', () => {
  const at = (xCss: number, yCss: number) =>
    loupePlace('finger', { finger: { xCss, yCss }, mark: { xCss, yCss } }, SCREEN, null).side;
  expect(at(500, 400)).toBe('above');
  expect(at(500, 60)).toBe('left');
  expect(at(60, 60)).toBe('right');
});

test('the loupe enlarges, and a mouse has none where the picture is large already', () => {
  expect(loupeScale('finger', 0.5)).toBe(2);
  expect(loupeScale('finger', 0.1)).toBe(1);
  expect(loupeScale('finger', 20)).toBe(20);
  expect(loupeScale('mouse', 1)).toBeNull();
  expect(loupeScale('mouse', 0.5)).toBe(2);
});

const text = { widthCss: 80, heightCss: 24 };

test('a long dimension has its value in the break and its arrowheads inside', () => {
  const ends = [
    { xCss: 100, yCss: 200 },
    { xCss: 500, yCss: 200 },
  ] as const;
  const { shafts, arrows, value } = dimensionLines(ends, text, SCREEN);
  expect(value).toEqual({ leftCss: 260, topCss: 188, ...text });
  expect(shafts).toHaveLength(2);
  for (const shaft of shafts) expect(lengthInsideCss(shaft, value)).toBe(0);
  const [tip, left] = arrows[0];
  expect(tip).toEqual(ends[0]);
  expect(left.xCss).toBeGreaterThan(tip.xCss);
});

test('arrowheads are three times as long as wide in every direction', () => {
  fc.assert(
    fc.property(point(1000, 600), point(1000, 600), (from, to) => {
      for (const [tip, left, right] of dimensionLines([from, to], text, SCREEN).arrows) {
        const back = { xCss: (left.xCss + right.xCss) / 2, yCss: (left.yCss + right.yCss) / 2 };
        expect(distanceCss(tip, back) / distanceCss(left, right)).toBeCloseTo(3, 6);
      }
    }),
  );
});

test('a short dimension has its arrowheads outside and its value on the side that has room', () => {
  const short = (xCss: number) =>
    dimensionLines(
      [
        { xCss, yCss: 200 },
        { xCss: xCss + 30, yCss: 200 },
      ],
      text,
      SCREEN,
    );
  const [tip, left] = short(400).arrows[0];
  expect(left.xCss).toBeLessThan(tip.xCss);
  expect(short(400).value.leftCss).toBeGreaterThan(430);
  expect(short(930).value.leftCss + text.widthCss).toBeLessThan(930);
});

test('where a short dimension has no room at either end, its value is read whole beside it', () => {
  const narrow = { widthCss: 1.5 * text.widthCss, heightCss: 600 };
  for (const xCss of [10, 40, 0.7 * narrow.widthCss]) {
    const ends = [
      { xCss, yCss: 200 },
      { xCss: xCss + 30, yCss: 204 },
    ] as const;
    const { value, shafts } = dimensionLines(ends, text, narrow);
    expect(value.leftCss).toBeGreaterThanOrEqual(0);
    expect(value.leftCss + value.widthCss).toBeLessThanOrEqual(narrow.widthCss);
    for (const shaft of shafts) expect(lengthInsideCss(shaft, value)).toBe(0);
  }
});

test('a value beyond a short dimension keeps off the marks that lie there', () => {
  const ends = [
    { xCss: 400, yCss: 200 },
    { xCss: 430, yCss: 204 },
  ] as const;
  const beyond = dimensionLines(ends, text, SCREEN).value;
  const middle = { xCss: beyond.leftCss + text.widthCss / 2, yCss: beyond.topCss + text.heightCss / 2 };
  const { value, shafts } = dimensionLines(ends, text, SCREEN, [middle]);
  const cross = { leftCss: middle.xCss - 10, topCss: middle.yCss - 10, widthCss: 20, heightCss: 20 };
  expect(overlapCss2(beyond, cross)).toBeGreaterThan(0);
  expect(overlapCss2(value, cross)).toBe(0);
  for (const shaft of shafts) expect(lengthInsideCss(shaft, value)).toBe(0);
});

test('no shaft crosses the value, whatever the direction and length', () => {
  fc.assert(
    fc.property(point(1000, 600), point(1000, 600), (from, to) => {
      const { shafts, value } = dimensionLines([from, to], text, SCREEN);
      for (const shaft of shafts) expect(lengthInsideCss(shaft, value)).toBeLessThan(1e-6);
    }),
  );
});

const box = { leftCss: 10, topCss: 10, widthCss: 20, heightCss: 20 };

test.each([
  ['through', [0, 20, 100, 20], 20],
  ['beside', [0, 40, 100, 40], 0],
  ['ending inside', [0, 20, 15, 20], 5],
  ['upright through', [15, 0, 15, 50], 20],
  ['along the diagonal', [0, 0, 40, 40], 20 * Math.SQRT2],
] as const)('length of a line inside a box: %s', (_what, [x1, y1, x2, y2], lengthCss) => {
  const segment = [
    { xCss: x1, yCss: y1 },
    { xCss: x2, yCss: y2 },
  ] as const;
  expect(lengthInsideCss(segment, box)).toBeCloseTo(lengthCss, 10);
});

test('marks that share a stretch of the line take it once', () => {
  const at = (xCss: number, yCss = 0) => ({ xCss, yCss });
  expect(outsideDiscs([at(0), at(100)], [at(50), at(51, 17)], 18)).toEqual([
    [at(0), at(32)],
    [at(68), at(100)],
  ]);
});

test('a line keeps clear of every mark and loses nothing else', () => {
  fc.assert(
    fc.property(
      point(150, 90),
      point(150, 90),
      fc.array(point(150, 90), { maxLength: 6 }),
      number(0, 1),
      (from, to, centres, share) => {
        const at = {
          xCss: from.xCss + share * (to.xCss - from.xCss),
          yCss: from.yCss + share * (to.yCss - from.yCss),
        };
        const away = Math.min(...centres.map((centre) => distanceCss(centre, at)));
        const parts = outsideDiscs([from, to], centres, 18);
        const drawn = parts.some(
          ([a, b]) => distanceCss(a, at) + distanceCss(at, b) < distanceCss(a, b) + 1e-7,
        );
        if (away > 18.001 && distanceCss(from, to) > 1) expect(drawn).toBe(true);
        if (away < 17.9) expect(drawn).toBe(false);
      },
    ),
    { numRuns: 2000 },
  );
});

const name = (id: string, xCss: number, yCss: number, needed = false) => ({
  id,
  at: { xCss, yCss },
  widthCss: 70,
  heightCss: 20,
  reachCss: 11,
  needed,
  silent: false,
});
const nothing = { boxes: [], lines: [] };

test('a silent mark is not named, and its cross stays clear of the names of others', () => {
  const quiet = { ...name('rim', 560, 300), silent: true };
  const places = namePlaces([name('pin', 500, 300), quiet], nothing, SCREEN);
  expect(places.get('rim')).toBeNull();
  expect(places.get('pin')?.leftCss).toBeLessThan(500);
});

test('a name alone stands to the right of its cross, and to the left at the right edge', () => {
  expect(namePlaces([name('pin', 500, 300)], nothing, SCREEN).get('pin')?.leftCss).toBeGreaterThan(510);
  expect(namePlaces([name('pin', 970, 300)], nothing, SCREEN).get('pin')?.leftCss).toBeLessThan(900);
});

test('a mark off the screen has no name on it', () => {
  expect(namePlaces([name('pin', 1004, 300, true)], nothing, SCREEN).get('pin')).toBeNull();
});

test('a name avoids a line that would strike it through', () => {
  const axis = [
    { xCss: 0, yCss: 300 },
    { xCss: 1000, yCss: 300 },
  ] as const;
  const placed = namePlaces([name('pin', 500, 300)], { boxes: [], lines: [axis] }, SCREEN).get('pin');
  expect(placed && lengthInsideCss(axis, placed)).toBe(0);
});

test('names that are shown cover no cross and no other name; a needed name is always shown', () => {
  fc.assert(
    fc.property(fc.array(point(300, 200), { minLength: 1, maxLength: 12 }), (points) => {
      const names = points.map(({ xCss, yCss }, index) =>
        name(String(index), 200 + xCss, 200 + yCss, index === 3),
      );
      const places = namePlaces(names, nothing, SCREEN);
      const shown = [...places].filter(([id, place]) => place !== null && id !== '3');
      for (const [id, place] of shown)
        for (const [otherId, other] of shown)
          if (place && other && id !== otherId) expect(overlapCss2(place, other)).toBeLessThanOrEqual(12);
      if (names.length > 3) expect(places.get('3')).not.toBeNull();
      expect(places.size).toBe(names.length);
    }),
  );
});

test('names on one line keep a space between them', () => {
  const inches = Array.from({ length: 12 }, (_, n) => name(String(n), 300 + 26 * n, 300));
  const boxes = [...namePlaces(inches, nothing, SCREEN).values()].flatMap((box) => box ?? []);
  expect(boxes.length).toBeGreaterThan(3);
  for (const one of boxes)
    for (const other of boxes) {
      const level = Math.abs(one.topCss - other.topCss) < one.heightCss;
      if (one !== other && level)
        expect(Math.abs(one.leftCss - other.leftCss)).toBeGreaterThan(one.widthCss + 5);
    }
});

test('where there is no room a name is left out rather than laid over a cross, unless it is needed', () => {
  const crowd = Array.from({ length: 81 }, (_, n) =>
    name(String(n), 300 + 22 * (n % 9), 200 + 22 * Math.floor(n / 9), n === 40),
  );
  const places = namePlaces(crowd, nothing, SCREEN);
  expect(places.get('40')).not.toBeNull();
  expect(places.get('41')).toBeNull();
  expect(places.get('8')).not.toBeNull();
});
