import { expect, test } from 'vitest';
import { viewerMarks } from '../../../src/app/pictures/viewer-marks.ts';
import type { Mark } from '../../../src/marks/mark.ts';

const placed = { xPx: 0, yPx: 0, sigmaPx: 1 };
const rim = (id: string, placedBy: Mark['placedBy']): Mark => ({
  kind: 'clamp-band',
  id,
  ...placed,
  placedBy,
});
const inch = (readingMm: number, placedBy: Mark['placedBy']): Mark => ({
  ...{ kind: 'tape-graduation', id: `${readingMm}`, readingMm },
  ...{ ...placed, placedBy },
});
const linesOf = (marks: readonly Mark[]) =>
  viewerMarks({ state: 'released', captureId: 'c', frame: null, marks }, null, null, 'fraction').map(
    ({ line }) => line,
  );

test('a rim that was found is one line, with the point that a hand moved; one marked by hand is crosses', () => {
  expect(linesOf([rim('a', 'assist'), rim('b', 'hand')])).toEqual(['rim', 'rim']);
  expect(linesOf([rim('a', 'hand'), rim('b', 'hand')])).toEqual([null, null]);
});

test('found graduations between the first and the last are one line', () => {
  expect(linesOf([25.4, 50.8, 76.2].map((mm) => inch(mm, 'assist')))).toEqual([null, 'row', null]);
  expect(linesOf([25.4, 50.8, 76.2].map((mm) => inch(mm, 'hand')))).toEqual([null, null, null]);
});
