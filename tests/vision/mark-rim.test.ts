import { expect, test } from 'vitest';
import { drawFrom } from '../../src/basics/random.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { markRim } from '../../src/vision/mark-rim.ts';
import type { Point } from '../../src/vision/point.ts';

/** A bore of long half axis 8 px in a face, seen from the side. */
const BORE = { centre: [40.3, 37.8], longPx: 8, shortBy: 0.86, angleRad: 0.7 } as const;
const FINE = 6;

function borePicture(inside: (lit: number) => number, darker: (place: Point) => number = () => 0): Gray {
  const side = 80;
  const grain = drawFrom(5);
  const [c, s] = [Math.cos(BORE.angleRad), Math.sin(BORE.angleRad)];
  const light = (x: number, y: number) => {
    const [dx, dy] = [x - BORE.centre[0], y - BORE.centre[1]];
    const rho = Math.hypot(c * dx + s * dy, (c * dy - s * dx) / BORE.shortBy);
    if (rho < BORE.longPx) return inside(dx / Math.max(1, Math.hypot(dx, dy)));
    return 140 - darker([x, y]);
  };
  const values = Uint8Array.from({ length: side * side }, (_, at) => {
    const [column, row] = [at % side, Math.floor(at / side)];
    let sum = 0;
    for (let i = 0; i < FINE * FINE; i++)
      sum += light(
        column - 0.5 + (2 * (i % FINE)) / (FINE - 1),
        row - 0.5 + (2 * Math.floor(i / FINE)) / (FINE - 1),
      );
    return Math.round(Math.min(255, Math.max(0, sum / FINE ** 2 + grain.normal(0, 2))));
  });
  return { widthPx: side, heightPx: side, values };
}

const rimIn = (gray: Gray) => markRim(gray, [BORE.centre[0] + 0.9, BORE.centre[1] - 0.6], 6.8, BORE);
const litAndShaded = (lit: number) => 140 + 75 * lit;

test('the rim of a bore that is lit on one side and shaded on the other tells its middle', () => {
  const rim = rimIn(borePicture(litAndShaded));
  const [x, y] = rim?.placePx ?? [Number.NaN, Number.NaN];
  expect(Math.hypot(x - BORE.centre[0], y - BORE.centre[1])).toBeLessThan(0.15);
  expect(rim?.radiusPx).toBeCloseTo(BORE.longPx, 0);
  expect(rim?.rmsPx).toBeLessThan(0.3);
});

test('a bore dark all round, or a lit half alone, tells none', () => {
  expect(rimIn(borePicture((lit) => 60 + 30 * lit))).toBeNull();
  expect(rimIn(borePicture((lit) => (lit > 0 ? 140 + 75 * lit : 140)))).toBeNull();
});

test('a dark spot that touches the rim does not draw it', () => {
  const rim = rimIn(borePicture(litAndShaded, ([x, y]) => (Math.hypot(x - 50, y - 31) < 6 ? 90 : 0)));
  const [x, y] = rim?.placePx ?? [Number.NaN, Number.NaN];
  expect(Math.hypot(x - BORE.centre[0], y - BORE.centre[1])).toBeLessThan(0.15);
});

test('where the lit side looks as the face does, grease about it is not taken for its rim', () => {
  const grease = ([x, y]: Point) => (x > 40 && Math.hypot(x - 41, y - 37.8) > 9 ? 70 : 0);
  expect(rimIn(borePicture((lit) => 140 + 75 * Math.min(0, lit), grease))).toBeNull();
});
