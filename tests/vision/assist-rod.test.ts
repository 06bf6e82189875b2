import { expect, test } from 'vitest';
import { findRod } from '../../src/vision/assist-rod.ts';
import { cylinderAxis } from '../../src/vision/cylinder-axis.ts';
import { dot, minus, type Point } from '../../src/vision/point.ts';
import { scaleBeside } from '../../src/vision/tape-depth.ts';
import { FOCAL, type RodLook, rodPicture } from './rod-picture.ts';

const found = (look: RodLook = {}) => {
  const { gray, asked } = rodPicture(look);
  return findRod(gray, asked);
};
const codeOf = (look: RodLook) => {
  const result = found(look);
  return result.ok ? 'found' : result.failure.code;
};

/** Pixels from the line through two points. */
function offLine([from, to]: readonly [Point, Point], point: Point): number {
  const [dx, dy] = minus(to, from);
  return dot(minus(point, from), [-dy, dx]) / Math.hypot(dx, dy);
}

test('the middle line is found from both edges: within a third of a pixel of the true axis, two marks along the rod', () => {
  for (const slantRad of [-0.45, 0, 0.45]) {
    const { gray, asked, axisPx } = rodPicture({ slantRad });
    const result = findRod(gray, asked);
    if (!result.ok) throw new Error(result.failure.code);
    const { marks } = result.value;
    expect(marks).toHaveLength(2);
    for (const { placePx, sigmaPx } of marks) {
      expect(Math.abs(offLine([axisPx(0), axisPx(100)], placePx))).toBeLessThan(0.33);
      expect(sigmaPx).toBeLessThan(0.6);
    }
    const [a, b] = marks.map(({ placePx }) => placePx);
    if (a && b) expect(Math.hypot(...minus(a, b))).toBeGreaterThan(60);
  }
});

test('a face marked roughly makes no difference; one marked on the rod’s edge is no rod’s middle', () => {
  const { gray, asked, axisPx } = rodPicture();
  const at = ([x, y]: Point, by: number): Point => [x, y + by];
  const rough = findRod(gray, { ...asked, facePx: at(asked.facePx, 3) });
  if (!rough.ok) throw new Error(rough.failure.code);
  for (const { placePx } of rough.value.marks)
    expect(Math.abs(offLine([axisPx(0), axisPx(100)], placePx))).toBeLessThan(0.33);
  expect(findRod(gray, { ...asked, facePx: at(asked.facePx, 18) }).ok).toBe(false);
});

test('refused with the reason: no rod, one of another width, a shadow’s edge that could as well be the rod’s', () => {
  expect(codeOf({ shades: [120] })).toBe('rod/no-edges');
  expect(codeOf({ radiusMm: 11 })).toBe('rod/no-edges');
  expect(codeOf({ radiusMm: 8.3, shades: [60, ...Array<number>(11).fill(100)] })).toBe('rod/two-ways');
});

test('a tape whose graduations do not tell how it is slanted tells no width', () => {
  const { gray, asked } = rodPicture();
  const tape = asked.tape.slice(0, 4).map((mark) => ({ ...mark, sigmaPx: 6 }));
  const result = findRod(gray, { ...asked, tape });
  expect(result.ok ? null : result.failure.code).toBe('rod/loose-scale');
});

test('the axis lies where it is projected, though halfway between the edges it is not', () => {
  // A wide, near bar far off the middle: its edges by the points of its surface that are seen farthest out.
  const [radius, x, z] = [60, 260, 400];
  const see = ([px, py, pz]: readonly [number, number, number]): Point => [
    500 + (700 * px) / pz,
    400 + (700 * py) / pz,
  ];
  const edgeAt = (y: number, side: 1 | -1): Point => {
    const seen = Array.from({ length: 20_000 }, (_, i) => {
      const turn = (i * Math.PI) / 10_000;
      return see([x + radius * Math.cos(turn), y, z + radius * Math.sin(turn)]);
    });
    return seen.reduce((most, point) => (side * point[0] > side * most[0] ? point : most));
  };
  const [low, high] = ([-1, 1] as const).map((side) => [edgeAt(-50, side), edgeAt(50, side)] as const);
  if (!low || !high) throw new Error('no edges');
  const [a, b, c] = cylinderAxis([low, high], { middle: [500, 400], focalPx: 700 });
  const axis = see([x, 0, z]);
  expect(Math.abs((a * axis[0] + b * axis[1] + c) / Math.hypot(a, b))).toBeLessThan(0.01);
  expect(Math.abs((low[0][0] + high[0][0]) / 2 - axis[0])).toBeGreaterThan(5);
});

test('how far a slanted tape is, is told by its graduations alone', () => {
  const [slant, foot] = [0.5, [-60, 30, 500] as const];
  const readings = [0, 1, 2, 3, 4, 5].map((inches) => {
    const mm = 25.4 * inches;
    const [x, z] = [foot[0] + mm * Math.cos(slant), foot[2] + mm * Math.sin(slant)];
    return {
      placePx: [480 + (FOCAL * x) / z, 270 + (FOCAL * foot[1]) / z] as const,
      sigmaPx: 0.2,
      readingMm: mm,
    };
  });
  for (const at of [1, 4]) {
    const depthMm = foot[2] + 25.4 * at * Math.sin(slant);
    const scale = scaleBeside(readings, readings[at]?.placePx ?? [0, 0], {
      middle: [480, 270],
      focalPx: FOCAL,
    });
    expect(FOCAL / (scale?.pxPerMm ?? Number.NaN)).toBeCloseTo(depthMm, 3);
  }
  expect(scaleBeside(readings.slice(0, 3), [0, 0], { middle: [480, 270], focalPx: FOCAL })).toBeNull();
});
