import { expect, test } from 'vitest';
import { drawFrom } from '../../src/basics/random.ts';
import { TARGET_MARKERS } from '../../src/references/target-markers.ts';
import { findTarget } from '../../src/vision/find-target.ts';
import type { Gray } from '../../src/vision/gray.ts';
import type { TargetSight } from '../../src/vision/target-sight.ts';
import { type CardPicture, type CardPictureOptions, cardPicture, PLAIN } from './card-picture.ts';
import { nodeOpencv } from './node-opencv.ts';

const cv = await nodeOpencv();
const ALL = TARGET_MARKERS.map(({ marker }) => marker);

function sightOf(gray: Gray): TargetSight {
  const found = findTarget(cv, gray, TARGET_MARKERS);
  if (!found.ok) throw new Error(found.failure.code);
  return found.value;
}

/** Each error of x and of y, in pixels and in stated standard uncertainties. */
function errors(picture: CardPicture, sight: TargetSight) {
  return sight.corners.flatMap(({ marker, corner, xPx, yPx, sigmaPx }) => {
    const [x, y] = picture.corner(marker, corner);
    return [xPx - x, yPx - y].map((errorPx) => ({ errorPx, inSigma: errorPx / sigmaPx }));
  });
}

const rms = (values: readonly number[]) =>
  Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length);

function found(over: Partial<CardPictureOptions>) {
  const picture = cardPicture({ ...PLAIN, ...over });
  const sight = sightOf(picture.gray);
  const each = errors(picture, sight);
  return {
    sight,
    rmsPx: rms(each.map(({ errorPx }) => errorPx)),
    rmsInSigma: rms(each.map(({ inSigma }) => inSigma)),
    mostInSigma: Math.max(...each.map(({ inSigma }) => Math.abs(inSigma))),
  };
}

test.each<[string, Partial<CardPictureOptions>, number]>([
  ['small', { markerPx: 16 }, 0.06],
  ['of middle size', { markerPx: 40, turnDeg: 200 }, 0.03],
  ['large', { markerPx: 120 }, 0.03],
  ['steep', { tiltDeg: 40, tiltAboutDeg: 60, turnDeg: -20 }, 0.03],
  ['out of focus', { markerPx: 90, blurPx: 3 }, 0.04],
  ['in bad light', { noise: 8, lightFall: 0.7 }, 0.08],
])('all corners of a card that is %s are found where they are, as well as is stated', (_, over, mostPx) => {
  const { sight, rmsPx, rmsInSigma, mostInSigma } = found(over);
  expect(sight.missing).toEqual([]);
  expect(sight.corners).toHaveLength(24);
  expect(rmsPx).toBeLessThan(mostPx);
  expect(rmsInSigma).toBeLessThan(1.2);
  expect(mostInSigma).toBeLessThan(4);
});

test.each<[string, Partial<CardPictureOptions>]>([
  ['ink that runs out', { inkMm: 0.1 }],
  ['ink that does not reach its edge', { inkMm: -0.1 }],
  ['a coding of light that is darker than sRGB', { toneExponent: 1 / 1.8 }],
  ['a coding of light that is lighter than sRGB', { toneExponent: 1 / 2.8 }],
])('%s does not move the corners', (_, over) => {
  const { sight, rmsInSigma } = found(over);
  expect(sight.missing).toEqual([]);
  expect(rmsInSigma).toBeLessThan(1.1);
});

test('a covered marker is reported as missing, the others are found', () => {
  const { sight, mostInSigma } = found({ covered: [2] });
  // The cover reaches over the white rim of the next one.
  expect(sight.missing).toEqual([2, 3]);
  expect(mostInSigma).toBeLessThan(4);
});

test('one marker alone is not believed', () => {
  const { sight } = found({ covered: [1, 3, 4] });
  expect(sight.corners).toEqual([]);
  expect(sight.missing).toEqual(ALL);
});

test('two cards in one picture are not told apart, so none is reported', () => {
  const { gray } = cardPicture({ ...PLAIN, markerPx: 40 });
  const twice: Gray = {
    ...gray,
    heightPx: 2 * gray.heightPx,
    values: Uint8Array.from([...gray.values, ...gray.values]),
  };
  expect(sightOf(twice)).toEqual({ corners: [], missing: ALL });
});

test('a card on its mirror image is not found', () => {
  const { gray } = cardPicture(PLAIN);
  const values = gray.values.map(
    (_, at) => gray.values[at - (at % gray.widthPx) + gray.widthPx - 1 - (at % gray.widthPx)] as number,
  );
  expect(sightOf({ ...gray, values })).toEqual({ corners: [], missing: ALL });
});

/** Black squares with cells by chance: what looks most like a marker. */
test('among 1,200 squares with cells by chance no target is reported', () => {
  const draw = drawFrom(7);
  const [cellPx, across, down] = [5, 30, 40];
  const pitch = 10 * cellPx;
  const [widthPx, heightPx] = [across * pitch, down * pitch];
  const cells = Array.from({ length: across * down * 16 }, () => draw.uniform(0, 1) > 0.5);
  const values = new Uint8Array(widthPx * heightPx).map((_, at) => {
    const [x, y] = [at % widthPx, Math.floor(at / widthPx)];
    const [column, row] = [x % pitch, y % pitch].map((place) => Math.floor(place / cellPx) - 2) as [
      number,
      number,
    ];
    if (column < 0 || column > 5 || row < 0 || row > 5) return 220;
    if (column === 0 || column === 5 || row === 0 || row === 5) return 30;
    const square = Math.floor(y / pitch) * across + Math.floor(x / pitch);
    return cells[square * 16 + (row - 1) * 4 + column - 1] ? 220 : 30;
  });
  expect(sightOf({ widthPx, heightPx, values })).toEqual({ corners: [], missing: ALL });
});
