/** The corner coordinates kept beside these tests, as sights of a flat pattern. */
import { readFileSync } from 'node:fs';
import type { Sight } from './planar-bundle.ts';

const MM_PER_INCH = 25.4;

/** Lines of numbers under a line with a word: one block for each picture. */
function blocks(file: string): readonly (readonly (readonly number[])[])[] {
  const found: number[][][] = [];
  for (const line of readFileSync(new URL(`./data/${file}`, import.meta.url), 'utf8').split('\n')) {
    if (line === '' || line.startsWith('#')) continue;
    if (/^[a-z]/.test(line)) found.push([]);
    else found.at(-1)?.push(line.split(' ').map(Number));
  }
  return found;
}

/** Five pictures of 64 squares of 1/2 in, 8/9 in apart. */
export function zhangPictures(): readonly (readonly Sight[])[] {
  const corners = [
    [0, 0],
    [0.5, 0],
    [0.5, 0.5],
    [0, 0.5],
  ] as const;
  return blocks('zhang-corners.txt').map((squares) =>
    squares.flatMap((numbers, k) =>
      corners.map(([right, up], i) => ({
        xMm: MM_PER_INCH * ((8 * (k % 8)) / 9 + right),
        yMm: MM_PER_INCH * (-0.5 - (8 * Math.floor(k / 8)) / 9 + up),
        xPx: numbers[2 * i] ?? Number.NaN,
        yPx: numbers[2 * i + 1] ?? Number.NaN,
      })),
    ),
  );
}

export const CHESSBOARD_SQUARE_MM = 25;

/** Thirteen photographs of 9 x 6 corners. */
export function chessboardPictures(): readonly (readonly Sight[])[] {
  return blocks('chessboard-corners.txt').map((rows) =>
    rows.flatMap((numbers, row) =>
      Array.from({ length: 9 }, (_, column) => ({
        xMm: CHESSBOARD_SQUARE_MM * column,
        yMm: CHESSBOARD_SQUARE_MM * row,
        xPx: numbers[2 * column] ?? Number.NaN,
        yPx: numbers[2 * column + 1] ?? Number.NaN,
      })),
    ),
  );
}
