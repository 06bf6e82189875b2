/**
 * The page on which the calibration board is printed, as an SVG in millimetres. Upright paper, as a printer expects it: the board
 * lies on its side.
 */
import { BOARD_COLUMNS, BOARD_MARKERS, BOARD_ROWS, isBlackSquare, SQUARE_MM } from './calibration-board.ts';
import { PAPER_SIZES, type Paper } from './paper.ts';
import { checkLineDrawing, markerDrawing } from './sheet-drawing.ts';
import { CHECK_LINE_MM } from './target-card.ts';

const LONG_MM = BOARD_COLUMNS * SQUARE_MM;
const SHORT_MM = BOARD_ROWS * SQUARE_MM;
/** Off the edge by what printers leave white; common practice, no source. */
const TOP_MM = 7;
const CHECK_MM = TOP_MM + LONG_MM + 9;
const TITLE = 'Strokewitness: calibration board';
const WORDS = [
  `${TITLE}. Print at 100 %, not fitted to the page.`,
  'Glue it on a stiff, flat plate. Both check lines, this and the one on the side, must measure the same: 100 mm (3.94 in).',
];

export function boardSheet(paper: Paper): string {
  const { widthMm, heightMm } = PAPER_SIZES[paper];
  const left = (widthMm - SHORT_MM) / 2;
  const [checkLeft, middle] = [left - 3, TOP_MM + LONG_MM / 2];
  const parts = [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}">`,
    `<title>${TITLE}</title>`,
    `<style>@page{size:${widthMm}mm ${heightMm}mm;margin:0}text{font-family:sans-serif;fill:#000}</style>`,
    `<rect width="${widthMm}" height="${heightMm}" fill="#fff"/>`,
    `<g id="board" transform="translate(${left + SHORT_MM} ${TOP_MM}) rotate(90)">${board()}</g>`,
    `<g id="check-line-down" transform="translate(${checkLeft} ${middle + CHECK_LINE_MM / 2}) rotate(-90)">${checkLineDrawing()}</g>`,
    `<g id="check-line-across" transform="translate(${(widthMm - CHECK_LINE_MM) / 2} ${CHECK_MM})">${checkLineDrawing()}</g>`,
    ...WORDS.map(
      (line, at) => `<text x="${left}" y="${CHECK_MM + 3.5 + 3.5 * at}" font-size="2.8">${line}</text>`,
    ),
    '</svg>',
  ];
  return `${parts.join('\n')}\n`;
}

function board(): string {
  const squares = Array.from({ length: BOARD_COLUMNS * BOARD_ROWS }, (_, at) => ({
    column: at % BOARD_COLUMNS,
    row: Math.floor(at / BOARD_COLUMNS),
  }));
  const black = squares
    .filter(({ column, row }) => isBlackSquare(column, row))
    .map(
      ({ column, row }) =>
        `M${column * SQUARE_MM} ${row * SQUARE_MM}h${SQUARE_MM}v${SQUARE_MM}h${-SQUARE_MM}z`,
    );
  return [`<path d="${black.join('')}"/>`, ...BOARD_MARKERS.map(markerDrawing)].join('\n');
}
