import { expect, test } from 'vitest';
import { findTape } from '../../src/vision/find-tape.ts';
import { isWholeInch, nameStrokes, tapeLie } from '../../src/vision/name-strokes.ts';
import type { Point } from '../../src/vision/point.ts';
import { type TapePicture, tapePicture } from './tape-picture.ts';

/** A rod beside the tape, from its zero to six inches and a half, marked some pixels off. */
const rodBeside = ({ placeOf }: TapePicture) => {
  const [[fx, fy], [px, py]] = [placeOf(0, -6), placeOf(6.5, -6)];
  return { of: 'tape-strokes', facePx: [fx + 3, fy - 2], pinPx: [px - 2, py + 3] } as const;
};
const seenOn = (picture: TapePicture) => {
  const found = findTape(picture.gray, rodBeside(picture));
  if (!found.ok) throw new Error(found.failure.code);
  // It has no numerals.
  expect(found.value.isRead).toBeUndefined();
  return found.value.marks;
};
const TAPE = tapePicture();
const graduation = (inches: number, placePx: Point) => ({ placePx, sigmaPx: 2, readingMm: 25.4 * inches });

test('the strokes of a tape are found with nothing named, and read as it does once one is named', () => {
  const picture = TAPE;
  const [x, y] = picture.placeOf(3, 2);
  const named = nameStrokes(seenOn(picture), graduation(3, [x + 4, y - 3]), rodBeside(picture)) ?? [];
  expect(named.filter(isWholeInch).length).toBeGreaterThan(9);
  for (const { placePx, readingMm, sigmaPx } of named) {
    const inches = (readingMm ?? Number.NaN) / 25.4;
    const [foot, tip] = [picture.placeOf(inches, 0), picture.placeOf(inches, 4)];
    const long = Math.hypot(tip[0] - foot[0], tip[1] - foot[1]);
    const off =
      ((placePx[0] - foot[0]) * (tip[1] - foot[1]) - (placePx[1] - foot[1]) * (tip[0] - foot[0])) / long;
    expect(Math.abs(off)).toBeLessThan(4 * sigmaPx);
  }
});

test.each([
  ['a blade without strokes', { strokes: false }],
  ['whole inches no longer than halves', { wholeMm: 7.4 }],
])('%s: nothing is found', (_what, drawn) => {
  const picture = tapePicture(drawn);
  expect(findTape(picture.gray, rodBeside(picture))).toMatchObject({ failure: { code: 'tape/not-seen' } });
});

test('nothing is read where what is named does not fit the strokes', () => {
  const picture = TAPE;
  const rod = rodBeside(picture);
  const strokes = seenOn(picture);
  const named = (inches: number, place: Point, facePx: Point = rod.facePx) =>
    nameStrokes(strokes, graduation(inches, place), { ...rod, facePx });
  const onFive = picture.placeOf(5, 2);
  expect(named(5, onFive)).not.toBeNull();
  // An inch off: the tape would begin an inch from the face.
  expect(named(6, onFive)).toBeNull();
  // A whole inch named where a half lies, and a reading that is none of inches.
  expect(named(5, picture.placeOf(5.5, 2))).toBeNull();
  expect(named(127.3 / 25.4, onFive)).toBeNull();
  // The face at the tape's other end: it reads the other way.
  expect(named(5, onFive, picture.placeOf(12, -6))).toBeNull();
  // Beside the blade.
  expect(named(5, picture.placeOf(5, -45))).toBeNull();
});

test('how a tape lies beside the rod is told by its strokes, and roughly by two of them', () => {
  const [face, pin] = [TAPE.placeOf(3, -6), TAPE.placeOf(9, -6)];
  const at = (inches: number) => graduation(inches, TAPE.placeOf(inches, 2));
  const all = Array.from({ length: 10 }, (_, i) => at(i + 1));
  const lie = (graduations: typeof all, facePx = face, pinPx = pin) =>
    tapeLie(graduations, { facePx, pinPx }) ?? { faceMm: Number.NaN, sign: 0 };
  expect(lie(all).sign).toBe(1);
  expect(Math.abs(lie(all).faceMm - 3 * 25.4)).toBeLessThan(2);
  expect(lie(all, pin, face).sign).toBe(-1);
  expect(Math.abs(lie(all, pin, face).faceMm - 9 * 25.4)).toBeLessThan(2);
  expect(Math.abs(lie([at(4), at(11)]).faceMm - 3 * 25.4)).toBeLessThan(12);
  expect(tapeLie([at(4)], { facePx: face, pinPx: pin })).toBeNull();
});
