import { expect, test } from 'vitest';
import type { Gray } from '../../src/vision/gray.ts';
import { apart, type Point } from '../../src/vision/point.ts';
import { circles, roundness } from '../../src/vision/roundness.ts';
import { seekEnds } from '../../src/vision/seek-ends.ts';
import { edgeAlong, sideMap } from '../../src/vision/side-map.ts';

const [WIDTH, HEIGHT] = [1000, 900];
const PX_PER_MM = 2;
const TILT = 0.35;

/** The chamber's axis runs to the right, turned a little, from here. */
const MIDDLE: Point = [140, 430];
const TURN_RAD = 0.1;
const band = {
  rim: [],
  axisPx: [MIDDLE, [MIDDLE[0] + 500 * Math.cos(TURN_RAD), MIDDLE[1] + 500 * Math.sin(TURN_RAD)]] as const,
  pxPerMm: PX_PER_MM * Math.cos(TILT),
  ratio: Math.sin(TILT),
};
type Drawn = { readonly side: 1 | -1; readonly ends: boolean };

const within = (mm: number) => Math.min(1, Math.max(0, 0.5 + mm * PX_PER_MM));

/** Levels in the plane of motion, mm along and across the axis: an arm with eye and boss, a pin's end, a camshaft's with a washer. */
function levelIn(u: number, v: number, pin: Point, camshaft: Point, ends: boolean): number {
  let level = 120 + 25 * Math.sin(0.11 * u + 0.07 * v) * Math.sin(0.05 * u - 0.13 * v);
  if (!ends) return level;
  const paint = (cover: number, by: number) => {
    level += cover * (by - level);
  };
  const disc = (at: Point, radius: number, by: number) =>
    paint(within(radius - Math.hypot(u - at[0], v - at[1])), by);
  const length = apart(pin, camshaft);
  const [au, av] = [(camshaft[0] - pin[0]) / length, (camshaft[1] - pin[1]) / length];
  const along = (u - pin[0]) * au + (v - pin[1]) * av;
  const aside = Math.abs((v - pin[1]) * au - (u - pin[0]) * av);
  paint(within(along) * within(length - along) * within(14 + (8 * along) / length - aside), 70);
  for (const [at, radius, by] of [
    [pin, 16, 75],
    [pin, 11, 130],
    [pin, 6.4, 190],
    [camshaft, 33, 80],
    [camshaft, 26, 140],
    [camshaft, 17.5, 60],
  ] as const)
    disc(at, radius, by);
  return level;
}

function pictureOf({ side, ends }: Drawn) {
  const [pin, camshaft]: readonly [Point, Point] = [
    [185, 4 * side],
    [200, 136 * side],
  ];
  const [c, s] = [Math.cos(TURN_RAD), Math.sin(TURN_RAD)];
  const gray: Gray = {
    widthPx: WIDTH,
    heightPx: HEIGHT,
    values: Uint8Array.from({ length: WIDTH * HEIGHT }, (_, i) => {
      const [dx, dy] = [(i % WIDTH) + 0.5 - MIDDLE[0], Math.floor(i / WIDTH) + 0.5 - MIDDLE[1]];
      return levelIn((c * dx + s * dy) / band.pxPerMm, (c * dy - s * dx) / PX_PER_MM, pin, camshaft, ends);
    }),
  };
  const placeOf = ([u, v]: Point): Point => [
    MIDDLE[0] + c * band.pxPerMm * u - s * PX_PER_MM * v,
    MIDDLE[1] + s * band.pxPerMm * u + c * PX_PER_MM * v,
  ];
  return { gray, pinPx: placeOf(pin), camshaftPx: placeOf(camshaft) };
}

test.each([1, -1] as const)(
  'both ends are seen, the camshaft as likely, about the axis, the arm to either side of it: %i',
  (side) => {
    const { gray, pinPx, camshaftPx } = pictureOf({ side, ends: true });
    const { pin, camshaft } = seekEnds(gray, band);
    expect([pin?.likely, camshaft?.likely]).toEqual([false, true]);
    // Half the radius of what is drawn.
    expect(apart(pin?.placePx ?? [0, 0], pinPx)).toBeLessThan(4 * PX_PER_MM);
    expect(apart(camshaft?.placePx ?? [0, 0], camshaftPx)).toBeLessThan(10 * PX_PER_MM);
    // Radii of the largest such ends, 8 and 20.6 mm.
    expect(pin?.radiusPx).toBeCloseTo(8 * PX_PER_MM);
    expect(camshaft?.radiusPx).toBeCloseTo(20.6 * PX_PER_MM);
  },
);

test('where nothing is round, nothing is likely', () => {
  const { pin, camshaft } = seekEnds(pictureOf({ side: 1, ends: false }).gray, band);
  expect([pin?.likely ?? false, camshaft?.likely ?? false]).toEqual([false, false]);
});

test('a picture that ends before rod and arm shows neither', () => {
  const { gray } = pictureOf({ side: 1, ends: true });
  const cut = { widthPx: 150, heightPx: HEIGHT, values: new Uint8Array(150 * HEIGHT) };
  for (let row = 0; row < HEIGHT; row++)
    cut.values.set(gray.values.subarray(row * WIDTH, row * WIDTH + 150), row * 150);
  const { pin, camshaft } = seekEnds(cut, band);
  expect([pin?.likely ?? false, camshaft?.likely ?? false]).toEqual([false, false]);
});

test('circles about a middle are round, a straight edge is not, and is seen along itself alone', () => {
  const { gray } = pictureOf({ side: 1, ends: true });
  const map = sideMap(gray, band);
  const rays = circles(8, 38, 1.5, 32);
  expect(roundness(map, [200, 136], rays)).toBeGreaterThan(0.1);
  const edge = edgeAlong(map, [188 + 17, 40], [195 + 19, 90]);
  expect(edge).toBeGreaterThan(2 * edgeAlong(map, [195, 40], [200, 90]));
  expect(Math.abs(roundness(map, [300, -120], rays))).toBeLessThan(0.05);
});
