/**
 * The calibration board: a chessboard with a coded marker in every white square, so that any part of it that a picture shows
 * tells which part it is.
 *
 * Frame  nominal millimetres of the print; x to the right, y down, origin at the top left of the chessboard. Corners are the
 *        points where four squares meet, row by row from the top left. Markers go the same way over the white squares, so that
 *        the layout is the usual one of such boards (ChArUco).
 */
import data from './board-markers.json' with { type: 'json' };

export const BOARD_COLUMNS = 10;
export const BOARD_ROWS = 7;
/** 250 x 175 mm: as large as both A4 and US Letter take with room for the check lines. */
export const SQUARE_MM = 25;
/** Leaves a fifth of a square of plain white round a marker, for the corners' sake. */
export const BOARD_MARKER_MM = 15;

const CORNER_COLUMNS = BOARD_COLUMNS - 1;
const CORNER_ROWS = BOARD_ROWS - 1;

export type BoardPoint = readonly [xMm: number, yMm: number];

export type BoardMarker = {
  readonly marker: number;
  /** Inner cells, top row first; 1 white. */
  readonly rows: readonly string[];
  /** Top left first, clockwise as printed. */
  readonly cornersMm: readonly [BoardPoint, BoardPoint, BoardPoint, BoardPoint];
};

/** The top left square is black. */
export function isBlackSquare(column: number, row: number): boolean {
  return (column + row) % 2 === 0;
}

const WHITE_SQUARES = Array.from({ length: BOARD_COLUMNS * BOARD_ROWS }, (_, at) => ({
  column: at % BOARD_COLUMNS,
  row: Math.floor(at / BOARD_COLUMNS),
})).filter(({ column, row }) => !isBlackSquare(column, row));

export const BOARD_MARKERS: readonly BoardMarker[] = WHITE_SQUARES.flatMap(({ column, row }, at) => {
  const printed = data.markers[at];
  if (!printed) return [];
  const rim = (SQUARE_MM - BOARD_MARKER_MM) / 2;
  const [left, top] = [column * SQUARE_MM + rim, row * SQUARE_MM + rim];
  const [right, bottom] = [left + BOARD_MARKER_MM, top + BOARD_MARKER_MM];
  return [
    {
      ...printed,
      cornersMm: [
        [left, top],
        [right, top],
        [right, bottom],
        [left, bottom],
      ] as const,
    },
  ];
});

/** By the number of the corner. */
export const BOARD_CORNERS_MM: readonly BoardPoint[] = Array.from(
  { length: CORNER_COLUMNS * CORNER_ROWS },
  (_, corner) => [
    SQUARE_MM * (1 + (corner % CORNER_COLUMNS)),
    SQUARE_MM * (1 + Math.floor(corner / CORNER_COLUMNS)),
  ],
);
