import { expect, test } from 'vitest';
import { CARD, MARKER_SIDE_MM } from '../../src/references/target-card.ts';
import { TARGET_MARKERS } from '../../src/references/target-markers.ts';
import { nodeOpencv } from '../vision/node-opencv.ts';

test('the cells are those of the open marker family, as OpenCV draws it', async () => {
  const cv = await nodeOpencv();
  const dictionary = cv.getPredefinedDictionary(cv.DICT_4X4_50);
  for (const { marker, rows } of TARGET_MARKERS) {
    const drawn = new cv.Mat();
    dictionary.generateImageMarker(marker, 6, drawn, 1);
    const bits = Array.from(drawn.data, (value) => (value > 0 ? '1' : '0'));
    const inner = [1, 2, 3, 4].map((row) => bits.slice(row * 6 + 1, row * 6 + 5).join(''));
    expect(inner).toEqual(rows);
    drawn.delete();
  }
  dictionary.delete();
});

const turned = (rows: readonly string[]) =>
  [0, 1, 2, 3].map((row) => [0, 1, 2, 3].map((column) => rows[3 - column]?.[row]).join(''));
const apart = (a: readonly string[], b: readonly string[]) =>
  [...a.join('')].filter((bit, at) => bit !== b.join('')[at]).length;

test('no marker can be taken for another, or for itself turned, unless six cells are misread', () => {
  for (const one of TARGET_MARKERS)
    for (const other of TARGET_MARKERS) {
      let rows = other.rows;
      for (let turns = 0; turns < 4; turns++) {
        if (one !== other || turns > 0) expect(apart(one.rows, rows)).toBeGreaterThanOrEqual(6);
        rows = turned(rows);
      }
    }
});

test('every marker lies on the card with a white rim of a cell at least, clockwise from the top left', () => {
  const rim = MARKER_SIDE_MM / 6;
  for (const { cornersMm } of TARGET_MARKERS) {
    const [[left, top], [right], [, bottom]] = cornersMm;
    expect([right - left, bottom - top]).toEqual([MARKER_SIDE_MM, MARKER_SIDE_MM]);
    expect(cornersMm[3]).toEqual([left, bottom]);
    expect(left).toBeGreaterThanOrEqual(rim);
    expect(right).toBeLessThanOrEqual(CARD.widthMm - rim);
    expect(top).toBeGreaterThanOrEqual(-CARD.heightMm + rim);
    expect(bottom).toBeLessThanOrEqual(-rim);
  }
});
