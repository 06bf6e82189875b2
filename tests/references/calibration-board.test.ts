/** The board against OpenCV's own picture of the same board (aruco_CharucoBoard, OpenCV 4.13): every cell of the print. */
import { loadOpenCV } from '@opencvjs/node';
import { expect, test } from 'vitest';
import {
  BOARD_COLUMNS,
  BOARD_CORNERS_MM,
  BOARD_MARKER_MM,
  BOARD_MARKERS,
  BOARD_ROWS,
  isBlackSquare,
  SQUARE_MM,
} from '../../src/references/calibration-board.ts';
import { TARGET_MARKERS } from '../../src/references/target-markers.ts';

test('the numbers of the board and of the printed target do not meet', () => {
  const numbers = [...BOARD_MARKERS, ...TARGET_MARKERS].map(({ marker }) => marker);
  expect(BOARD_MARKERS).toHaveLength(35);
  expect(new Set(numbers).size).toBe(numbers.length);
});

test('squares, markers and corners are those of the usual board of this family', async () => {
  // biome-ignore lint/suspicious/noExplicitAny: the package declares another set of functions than it has.
  const cv = (await loadOpenCV()) as any;
  const ids = cv.matFromArray(
    35,
    1,
    cv.CV_32S,
    BOARD_MARKERS.map(({ marker }) => marker),
  );
  const size = { width: BOARD_COLUMNS, height: BOARD_ROWS };
  const dictionary = cv.getPredefinedDictionary(cv.DICT_4X4_50);
  const board = new cv.aruco_CharucoBoard(size, SQUARE_MM, BOARD_MARKER_MM, dictionary, ids);
  const corners = board.getChessboardCorners();
  expect(corners.size()).toBe(BOARD_CORNERS_MM.length);
  for (const [i, [xMm, yMm]] of BOARD_CORNERS_MM.entries())
    expect(corners.get(i)).toMatchObject({ x: xMm, y: yMm });

  const perCell = 4;
  const cellMm = BOARD_MARKER_MM / 6;
  const [width, height] = [BOARD_COLUMNS, BOARD_ROWS].map((n) => (n * SQUARE_MM * perCell) / cellMm) as [
    number,
    number,
  ];
  const picture = new cv.Mat();
  board.generateImage({ width, height }, picture, 0, 1);
  for (let y = perCell / 2; y < height; y += perCell)
    for (let x = perCell / 2; x < width; x += perCell) {
      const drawn = picture.data[y * width + x] === 0;
      const place = [(x * cellMm) / perCell, (y * cellMm) / perCell] as const;
      expect({ place, black: isBlack(...place) }).toEqual({ place, black: drawn });
    }
});

function isBlack(xMm: number, yMm: number): boolean {
  if (isBlackSquare(Math.floor(xMm / SQUARE_MM), Math.floor(yMm / SQUARE_MM))) return true;
  for (const { rows, cornersMm } of BOARD_MARKERS) {
    const [[left, top], , [right, bottom]] = cornersMm;
    if (xMm < left || xMm > right || yMm < top || yMm > bottom) continue;
    const cell = (from: number, at: number) => Math.floor((6 * (at - from)) / BOARD_MARKER_MM) - 1;
    return rows[cell(top, yMm)]?.[cell(left, xMm)] !== '1';
  }
  return false;
}
