import { expect, test } from 'vitest';
import { targetMarks } from '../../src/references/target-marks.ts';

test('corners become automatic marks, less certain by what a print is off: 0.03 mm at 4 px per mm', () => {
  const square = [
    [100, 100],
    [196, 100],
    [196, 196],
    [100, 196],
  ] as const;
  const corners = square.map(([xPx, yPx], corner) => ({ marker: 2, corner, xPx, yPx, sigmaPx: 0.05 }));
  let ids = 0;
  const marks = targetMarks(corners, () => `m${ids++}`);
  expect(marks).toHaveLength(4);
  expect(marks[2]).toEqual({
    kind: 'target-corner',
    id: 'm2',
    marker: 2,
    corner: 2,
    xPx: 196,
    yPx: 196,
    sigmaPx: expect.closeTo(0.13, 12),
    placedBy: 'assist',
  });
});
