import { expect, test } from 'vitest';
import { normalCdf } from '../../src/basics/normal.ts';
import { drawFrom } from '../../src/basics/random.ts';
import { blurredStep } from '../../src/vision/blurred-step.ts';
import { homographyOf, inverseOf, mapped } from '../../src/vision/homography.ts';
import { cellsOf, markerModel, UNKNOWNS } from '../../src/vision/marker-model.ts';
import type { Point } from '../../src/vision/point.ts';

const ROWS = ['1011', '0101', '0011', '0010'];

test('each slope of the model is its numeric derivative', () => {
  const model = markerModel(cellsOf(ROWS));
  const draw = drawFrom(3);
  const none = new Float64Array(UNKNOWNS);
  for (let times = 0; times < 200; times++) {
    const near = (mean: number, spread: number) => mean + draw.uniform(-spread, spread);
    const k = Float64Array.from([
      ...[near(3, 0.5), near(0, 0.5), near(3, 0.2), near(0, 0.5), near(3, 0.5), near(3, 0.2)],
      ...[near(0, 0.1), near(0, 0.1), near(0.4, 0.3), near(0.4, 0.3)],
      ...[near(0.05, 0.02), near(0.7, 0.2), near(0, 0.2), near(0, 0.2)],
    ]);
    const [x, y] = [draw.uniform(-1.2, 1.2), draw.uniform(-1.2, 1.2)];
    const slopes = new Float64Array(UNKNOWNS);
    model.brightness(k, x, y, slopes);
    // Wide enough that the table of the blurred step, a chain of straight lines, is crossed in several.
    const step = 1e-3;
    slopes.forEach((slope, i) => {
      const moved = (by: number) =>
        model.brightness(
          k.map((v, j) => (j === i ? v + by : v)),
          x,
          y,
          none,
        );
      const numeric = (moved(step) - moved(-step)) / (2 * step);
      expect(Math.abs(slope - numeric), `unknown ${i}`).toBeLessThan(2e-3 * (1 + Math.abs(numeric)));
    });
  }
});

test('in the middle of a cell that is hardly blurred the model is that cell', () => {
  const model = markerModel(cellsOf(ROWS));
  const k = Float64Array.from([3, 0, 3, 0, 3, 3, 0, 0, 0.05, 0.05, 0, 1, 0, 0]);
  const none = new Float64Array(UNKNOWNS);
  const at = (u: number, v: number) => model.brightness(k, (u - 3) / 3, (v - 3) / 3, none);
  const inner = [0, 1, 2, 3].map((row) =>
    [0, 1, 2, 3].map((column) => Math.round(at(column + 1.5, row + 1.5))).join(''),
  );
  expect(inner).toEqual(ROWS);
  expect(at(0.5, 3.5)).toBeCloseTo(0, 9);
  expect(at(-0.5, 3.5)).toBeCloseTo(1, 9);
  expect(at(6.5, 6.5)).toBeCloseTo(1, 9);
  expect(at(6, 3)).toBeCloseTo(0.5, 5);
});

test('the table of the blurred step is the normal distribution', () => {
  for (let t = -4.49; t < 4.49; t += 0.0137)
    expect(Math.abs(blurredStep(t) - normalCdf(t))).toBeLessThan(1e-6);
});

test('a map between planes is found from points, and leads back', () => {
  const from: Point[] = [
    [0, 0],
    [200, 3],
    [190, 40],
    [-5, 36],
    [90, 20],
  ];
  const known = [2.5, 0.3, 700, -0.2, 2.2, 400, 1e-4, -3e-4, 1] as const;
  const fitted = homographyOf(
    from,
    from.map((point) => mapped(known, point)),
  );
  expect(fitted).not.toBeNull();
  if (!fitted) return;
  for (const point of [
    [50, 10],
    [150, 30],
  ] as const) {
    const there = mapped(fitted, point);
    const [x, y] = mapped(known, point);
    const [u, v] = mapped(inverseOf(fitted), there);
    expect(there[0]).toBeCloseTo(x, 6);
    expect(there[1]).toBeCloseTo(y, 6);
    expect(u).toBeCloseTo(point[0], 6);
    expect(v).toBeCloseTo(point[1], 6);
  }
});

test('points on one line hold no map', () => {
  const line = [0, 1, 2, 3, 4].map((t): Point => [t, 2 * t]);
  expect(homographyOf(line, line)).toBeNull();
});
