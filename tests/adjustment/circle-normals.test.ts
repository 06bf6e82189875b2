import fc from 'fast-check';
import { expect, test } from 'vitest';
import { circleNormals } from '../../src/adjustment/circle-normals.ts';
import { drawFrom } from '../../src/basics/random.ts';
import { type Mat3, multiply, rotate, rotationAbout, type Vec3 } from '../../src/basics/rotation.ts';

type Rim = {
  readonly tiltDeg: number;
  /** Which way the rim leans, about the line of sight. */
  readonly leanDeg?: number;
  /** Direction to the rim's centre on the image plane. */
  readonly towards?: readonly [number, number];
  /** Angles round the rim: first and last. */
  readonly arcDeg?: readonly [number, number];
  readonly count?: number;
  readonly noise?: number;
};

/** A rim of 170 mm, 800 mm away: its rays and its true axis. */
function seen({ tiltDeg, leanDeg = 0, towards = [0, 0], arcDeg = [0, 360], count = 12, noise = 0 }: Rim): {
  readonly rays: readonly Vec3[];
  readonly axis: Vec3;
} {
  const turn: Mat3 = multiply(rotationAbout(2, rad(leanDeg)), rotationAbout(0, rad(tiltDeg)));
  const draw = drawFrom(4);
  const rays = Array.from({ length: count }, (_, i): Vec3 => {
    const angle = rad(arcDeg[0] + ((arcDeg[1] - arcDeg[0]) * i) / count);
    const [x, y, z] = rotate(turn, [85 * Math.cos(angle), 85 * Math.sin(angle), 0]);
    const depth = z + 800;
    const [a, b] = [(x + 800 * towards[0]) / depth, (y + 800 * towards[1]) / depth];
    return [a + draw.normal(0, noise), b + draw.normal(0, noise), 1];
  });
  return { rays, axis: rotate(turn, [0, 0, 1]) };
}

function rad(deg: number): number {
  return (deg * Math.PI) / 180;
}

/** Degrees between the axis and the nearest of the normals, either way round. */
function offDeg(normals: readonly Vec3[], axis: Vec3): number {
  const cosines = normals.map((n) => Math.abs(n[0] * axis[0] + n[1] * axis[1] + n[2] * axis[2]));
  return (Math.acos(Math.min(1, Math.max(...cosines))) * 180) / Math.PI;
}

// By hand: a rim square to the line of sight has a circle for its picture, and only one axis: the line of sight.
test('a rim seen square has the line of sight for its axis', () => {
  const normals = circleNormals(seen({ tiltDeg: 0 }).rays);
  expect(normals).toHaveLength(2);
  for (const n of normals) expect(Math.abs(n[2])).toBeCloseTo(1, 8);
});

const TILTS = [3, 15, 30, 50, 70, 85];

test.each(TILTS.flatMap((tiltDeg) => [0, 40, 130, 250].map((leanDeg) => ({ tiltDeg, leanDeg }))))(
  'the whole rim tilted by $tiltDeg, leaning to $leanDeg: one of the two is the axis, both are unit vectors',
  ({ tiltDeg, leanDeg }) => {
    const { rays, axis } = seen({ tiltDeg, leanDeg, towards: [0.2, -0.12] });
    const normals = circleNormals(rays);
    expect(normals).toHaveLength(2);
    for (const n of normals) expect(Math.hypot(...n)).toBeCloseTo(1, 10);
    expect(offDeg(normals, axis)).toBeLessThan(1e-3);
  },
);

// Either half of the rim, since the housing hides one of them, and a third of it.
test.each(
  TILTS.flatMap((tiltDeg) =>
    [
      [0, 180],
      [180, 360],
      [30, 150],
    ].map((arc) => ({ tiltDeg, from: arc[0] as number, to: arc[1] as number })),
  ),
)(
  'an arc from $from to $to of a rim tilted by $tiltDeg: one of the two is the axis',
  ({ tiltDeg, from, to }) => {
    const { rays, axis } = seen({ tiltDeg, leanDeg: 25, towards: [-0.15, 0.1], arcDeg: [from, to] });
    expect(offDeg(circleNormals(rays), axis)).toBeLessThan(0.01);
  },
);

test('the two axes are not the same where the rim is tilted', () => {
  const { rays } = seen({ tiltDeg: 40, towards: [0.1, 0] });
  const [first, second] = circleNormals(rays) as [Vec3, Vec3];
  expect(offDeg([first], second)).toBeGreaterThan(30);
});

// 0.5 px at a focal length of 1500 px: a start value is wanted, within the reach of the fit.
test.each([20, 40, 60])(
  'marks off by half a pixel still give the axis of a half rim tilted by %i within ten degrees',
  (tiltDeg) => {
    const { rays, axis } = seen({ tiltDeg, arcDeg: [180, 360], noise: 0.5 / 1500 });
    expect(offDeg(circleNormals(rays), axis)).toBeLessThan(10);
  },
);

test('five exact points suffice, four do not', () => {
  const { rays, axis } = seen({ tiltDeg: 35, count: 5 });
  expect(offDeg(circleNormals(rays), axis)).toBeLessThan(1e-3);
  expect(circleNormals(rays.slice(0, 4))).toEqual([]);
});

test('a rim seen edge on, points on a line and points on one spot give no direction that is not a number', () => {
  const edge = seen({ tiltDeg: 90 }).rays;
  const line = Array.from({ length: 8 }, (_, i): Vec3 => [i / 100, 0.3 - i / 50, 1]);
  const spot = Array.from({ length: 8 }, (): Vec3 => [0.1, 0.2, 1]);
  const hyperbola = Array.from({ length: 8 }, (_, i): Vec3 => [0.1 * (i + 1), 0.1 / (i + 1), 1]);
  for (const rays of [edge, line, spot, hyperbola]) allAreUnits(circleNormals(rays));
});

test('any points at all: no answer or two unit vectors', () => {
  const coordinate = fc.oneof(
    fc.double({ min: -2, max: 2, noNaN: true }),
    fc.constantFrom(0, 1e-12, -1e-12, 1, 100, -100),
  );
  const ray = fc.tuple(coordinate, coordinate).map(([a, b]): Vec3 => [a, b, 1]);
  fc.assert(
    fc.property(fc.array(ray, { maxLength: 14 }), (rays) => {
      allAreUnits(circleNormals(rays));
    }),
    { numRuns: 2000 },
  );
});

test('ever shorter arcs: no answer or two unit vectors', () => {
  for (let arc = 90; arc > 1e-7; arc /= 2)
    for (const noise of [0, 1e-6, 1e-3])
      allAreUnits(circleNormals(seen({ tiltDeg: 30, arcDeg: [200, 200 + arc], noise }).rays));
});

function allAreUnits(normals: readonly Vec3[]): void {
  expect([0, 2]).toContain(normals.length);
  for (const n of normals) expect(Math.abs(Math.hypot(...n) - 1)).toBeLessThan(1e-9);
}
