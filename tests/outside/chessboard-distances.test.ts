/**
 * Distances on photographs of a real chessboard: scale from one square of 25 mm, the others measured with their U95.
 *
 * Source   OpenCV's sample photographs left01 to left14 (Debian package opencv-doc 4.6.0) and the side of a square given in
 *          their left_intrinsics.yml; corners found by python3-opencv 4.6.0 (data/chessboard-corners.txt).
 * Model    camera calibrated on the other half of the photographs, held by its values and standard deviations; the four corners
 *          of the square known, the pose and every other corner unknown; u by derived.ts. Corners of 0.15 px: the scatter
 *          of the calibration (0.205 px of a corner, over the square root of 2).
 * Assumes  the board is flat and its squares are of the nominal size; what print and paper add is not in U95, which shows
 *          where the known block is large and U95 is small.
 */
import { describe, expect, test } from 'vitest';
import { choleskyFactor, inverseFromLower, lowerInverse } from '../../src/basics/symmetric.ts';
import { CHESSBOARD_SQUARE_MM, chessboardPictures } from './corner-files.ts';
import { adjustBundle, type Prior, type Sight } from './planar-bundle.ts';
import { propagated } from './small-adjustment.ts';

const SIGMA_PX = 0.15;
const pictures = chessboardPictures();

type Corner = readonly [column: number, row: number];
const index = ([column, row]: Corner): number => 9 * row + column;

/** Across the board, along its sides and short ones. */
const DISTANCES: readonly (readonly [Corner, Corner])[] = [
  [
    [0, 0],
    [8, 0],
  ],
  [
    [0, 5],
    [8, 5],
  ],
  [
    [0, 0],
    [0, 5],
  ],
  [
    [8, 0],
    [8, 5],
  ],
  [
    [0, 0],
    [8, 5],
  ],
  [
    [8, 0],
    [0, 5],
  ],
  [
    [1, 2],
    [2, 2],
  ],
  [
    [5, 1],
    [7, 1],
  ],
  [
    [7, 1],
    [7, 4],
  ],
];

function calibrated(on: readonly (readonly Sight[])[]): readonly Prior[] {
  const cameraStart = [Math.log(600), 320, 240, 0, 0];
  const { x, equations } = adjustBundle({ pictures: on, sigmaPx: SIGMA_PX, cameraStart }).fitted;
  const lower = choleskyFactor(equations.normal().matrix, x.length);
  if (!lower) throw new Error('every unknown is held');
  const covariance = inverseFromLower(lowerInverse(lower, x.length), x.length);
  return [0, 1, 2, 3, 4].map((i) => ({
    mean: x[i] as number,
    sigma: Math.sqrt(covariance[i * x.length + i] as number),
  }));
}

const halves = [pictures.slice(0, 6), pictures.slice(6)] as const;
const cameraOfFirst = calibrated(halves[1]);
const cameraOfSecond = calibrated(halves[0]);

type Measured = { readonly trueMm: number; readonly errorMm: number; readonly U95Mm: number };

/** All distances of one photograph, the given corners known. */
function measuredIn(
  picture: readonly Sight[],
  camera: readonly Prior[],
  known: readonly Corner[],
): Measured[] {
  const knownAt = new Set(known.map(index));
  const asked = [...new Set(DISTANCES.flat().map(index))].filter((at) => !knownAt.has(at));
  const at = (i: number): Sight => picture[i] as Sight;
  // The start is a tenth off: the adjustment has to find the corners itself.
  const free = asked.map((i) => ({
    ...at(i),
    xMm: 0.9 * at(i).xMm + 8,
    yMm: 0.9 * at(i).yMm + 4,
    free: true,
  }));
  const { fitted } = adjustBundle({
    pictures: [[...[...knownAt].map(at), ...free]],
    sigmaPx: SIGMA_PX,
    cameraStart: camera.map(({ mean }) => mean),
    cameraPriors: camera,
  });
  expect(fitted.converged).toBe(true);
  const place = (i: number) => {
    const column = asked.includes(i) ? 11 + 2 * asked.indexOf(i) : null;
    const found = column === null ? [at(i).xMm, at(i).yMm] : fitted.x.subarray(column, column + 2);
    return { column, x: found[0] as number, y: found[1] as number };
  };
  return DISTANCES.flatMap(([from, to]) => {
    const [a, b] = [place(index(from)), place(index(to))];
    const distanceMm = Math.hypot(b.x - a.x, b.y - a.y);
    const trueMm = CHESSBOARD_SQUARE_MM * Math.hypot(to[0] - from[0], to[1] - from[1]);
    const gradient = new Array<number>(fitted.x.length).fill(0);
    for (const [{ column }, sign] of [
      [a, -1],
      [b, 1],
    ] as const) {
      if (column === null) continue;
      gradient[column] = (sign * (b.x - a.x)) / distanceMm;
      gradient[column + 1] = (sign * (b.y - a.y)) / distanceMm;
    }
    const U95Mm = 1.96 * propagated(fitted.equations, gradient).u;
    return { trueMm, errorMm: distanceMm - trueMm, U95Mm };
  });
}

function measuredInAll(known: readonly Corner[]): readonly Measured[] {
  return [
    ...halves[0].flatMap((picture) => measuredIn(picture, cameraOfFirst, known)),
    ...halves[1].flatMap((picture) => measuredIn(picture, cameraOfSecond, known)),
  ];
}

function square(column: number, row: number, squares = 1): readonly Corner[] {
  const [right, below] = [column + squares, row + squares];
  return [
    [column, row],
    [right, row],
    [right, below],
    [column, below],
  ];
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

// Least: of 117 distances, nine from each photograph's one pose, so that they fail together.
const REFERENCES = [
  { name: 'one square in the middle', known: square(4, 2), least: 109 },
  { name: 'one square at a corner', known: square(0, 0), least: 109 },
  { name: 'one square at the opposite corner', known: square(7, 4), least: 109 },
  { name: 'a block of 3 x 3 squares', known: square(3, 1, 3), least: 98 },
] as const;

describe('thirteen photographs, nine distances of 25 to 236 mm in each', () => {
  for (const { name, known, least } of REFERENCES) {
    const all = measuredInAll(known);
    const held = all.filter(({ errorMm, U95Mm }) => Math.abs(errorMm) <= U95Mm).length;
    const errorMm = median(all.map((m) => Math.abs(m.errorMm)));
    const worstMm = Math.max(...all.map((m) => Math.abs(m.errorMm)));
    const U95Mm = median(all.map((m) => m.U95Mm));
    const figures = `error ${errorMm.toFixed(2)} (median) and ${worstMm.toFixed(2)} mm (worst), U95 ${U95Mm.toFixed(2)} mm (median)`;
    test(`${name}: U95 holds ${held} of ${all.length}; ${figures}`, () => {
      expect(all).toHaveLength(117);
      expect(held).toBeGreaterThanOrEqual(least);
      // An interval that holds everything because it is wide would be no measurement.
      expect(U95Mm).toBeLessThan(2.5);
      expect(errorMm).toBeLessThan(0.8);
    });
  }
});
