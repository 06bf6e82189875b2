/** Worked by hand: maps and colours made here, whose steps and distances are known. */
import { expect, test } from 'vitest';
import { colourApart, streakyOf } from '../../src/vision/paint-apart.ts';
import { type Colour, colourEdge, colourSums } from '../../src/vision/paint-colour-edge.ts';
import { colourEnds } from '../../src/vision/paint-colour-ends.ts';
import { BESIDE, CORE, type PaintMap } from '../../src/vision/paint-map.ts';
import { columnOf, type Strip } from '../../src/vision/paint-strip.ts';

const strip: Strip = { rows: 1, columns: 264, stepMm: 0.25, stepAcross: 0.1, linear: new Float32Array(0) };
const cell = (hue: readonly [number, number]) => ({ hue, light: 0.2, red: 0.2 });

/** Redder by 0.3 and yellower by 0.4 up to an edge, moved along each line by so many columns. */
function banded(edge: number, moved: (row: number) => number): PaintMap {
  const line = (at: number) =>
    Array.from({ length: strip.columns }, (_, column) => cell(column < at ? [0.8, 0.6] : [0.5, 0.2]));
  return { core: CORE.map((_, row) => line(edge + moved(row))), beside: BESIDE.map(() => line(0)) };
}

const straight = CORE.map(() => 0);
const edge = columnOf(strip, 12);

test('an edge all across is even, its change the distance of both hues', () => {
  const even = colourEdge(strip, colourSums(banded(edge, () => 0)), { to: edge, bend: straight });
  expect(even.change).toBeCloseTo(0.5, 9);
  expect(even.hueChange).toBeCloseTo(0.5, 9);
  expect(even.even).toBeCloseTo(0.5 / 0.06, 6);
  expect(even.across).toBe(1);
  const ragged = colourEdge(strip, colourSums(banded(edge, (row) => 8 * ((row % 3) - 1))), {
    to: edge,
    bend: straight,
  });
  expect(ragged.even).toBeLessThan(0.3 * even.even);
});

test('the edge is found along the rod, bent or straight', () => {
  for (const bend of [
    straight,
    CORE.map((across) => Math.round(12 * (1 - Math.sqrt(1 - across * across)))),
  ]) {
    const map = banded(edge, (row) => bend[row] as number);
    const [first] = colourEnds(
      strip,
      map,
      colourSums(map),
      [straight, CORE.map((across) => Math.round(12 * (1 - Math.sqrt(1 - across * across))))],
      [1.2, 46],
      6,
    );
    expect(Math.abs((first?.to ?? 0) - edge)).toBeLessThanOrEqual(1);
    expect(first?.bend).toEqual(bend);
  }
});

/** Eight corners of a box: no covariance but the half widths squared. */
const box = (middle: Colour, half: Colour): Colour[] =>
  [-1, 1].flatMap((a) =>
    [-1, 1].flatMap((b) =>
      [-1, 1].map((c): Colour => [middle[0] + a * half[0], middle[1] + b * half[1], middle[2] + c * half[2]]),
    ),
  );

test('colours lie apart by the squared distance in their own spreads', () => {
  const half: Colour = [0.1, 0.2, 0.3];
  expect(colourApart(box([0, 0, 0], half), box([0, 0, 0], half))).toBeCloseTo(0, 9);
  const expected = 0.3 ** 2 / (0.01 + 0.003) + 0.1 ** 2 / (0.04 + 0.003) + 0.6 ** 2 / (0.09 + 0.003);
  expect(colourApart(box([0.3, 0.1, -0.6], half), box([0, 0, 0], half))).toBeCloseTo(
    Math.log(1 + expected),
    9,
  );
});

test('streaks are told along each line by itself', () => {
  expect(
    streakyOf([
      [1, 1, 1],
      [5, 5, 5],
    ]),
  ).toBe(0);
  expect(streakyOf([[0, 1, 2, 3, 4]])).toBe(1);
});
