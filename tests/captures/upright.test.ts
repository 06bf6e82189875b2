/** Where the stored picture's row 0 and column 0 belong: Exif 2.32 (CIPA DC-008) 4.6.4, tag Orientation (clause from memory). */
import { expect, test } from 'vitest';
import { uprightFromStored, uprightOf, uprightSize } from '../../src/captures/upright.ts';

const STORED = { widthPx: 40, heightPx: 30 };

test.each([
  [1, 'top', 'left'],
  [2, 'top', 'right'],
  [3, 'bottom', 'right'],
  [4, 'bottom', 'left'],
  [5, 'left', 'top'],
  [6, 'right', 'top'],
  [7, 'right', 'bottom'],
  [8, 'left', 'bottom'],
])('orientation %i: row 0 at the %s, column 0 at the %s', (orientation, row0, column0) => {
  const upright = uprightOf(orientation);
  const size = uprightSize(STORED, upright);
  const [a, b, c, d, e, f] = uprightFromStored(STORED, upright);
  const sideOf = (x: number, y: number) => {
    const at = { x: a * x + c * y + e, y: b * x + d * y + f };
    if (at.x === 0) return 'left';
    if (at.x === size.widthPx) return 'right';
    if (at.y === 0) return 'top';
    return at.y === size.heightPx ? 'bottom' : 'inside';
  };
  expect(sideOf(STORED.widthPx / 2, 0)).toBe(row0);
  expect(sideOf(0, STORED.heightPx / 2)).toBe(column0);
});

test.each([null, 0, 9])('orientation %s asks for nothing', (orientation) => {
  expect(uprightOf(orientation)).toEqual({ rotationDeg: 0, mirrored: false });
});
