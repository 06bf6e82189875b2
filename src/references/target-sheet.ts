/**
 * The page on which the printed target is printed, as an SVG in millimetres: strip, check line, and what to do with them.
 * Upright paper, so that a printer set as usual neither turns nor shrinks it.
 */
import { PAPER_SIZES, type Paper } from './paper.ts';
import { checkLineDrawing, markerDrawing } from './sheet-drawing.ts';
import { CARD, CHECK_LINE_MM } from './target-card.ts';
import { TARGET_MARKERS } from './target-markers.ts';

const TOP_MM = 30;
const STRIP_FOOT_MM = TOP_MM + 30 + CARD.heightMm;
const CHECK_MM = STRIP_FOOT_MM + 38;
const FIRST_LINE_MM = CHECK_MM + 36;
const LINE_MM = 7;

const WORDS = {
  title: 'Strokewitness: printed target',
  size: 'Print at 100 %, not fitted to the page. Matt paper is best.',
  edge: 'this edge on the middle of the clevis pin',
  check: 'Check line. Measure it with a steel rule, outer edge to outer edge of the end ticks,',
  type: 'and type into the app what it measures: 100.0 mm (3.94 in) if the printer kept the size.',
  steps: [
    '1.  Measure the check line; write what it measures on the back of the strip.',
    '2.  Cut the strip out along its thin outline and glue it on something flat and stiff.',
    '3.  Lay it along the push rod, its lower edge on the middle of the clevis pin, square to the view.',
    '4.  Take both pictures with the whole strip in view, sharp, without glare, nothing over it.',
    'Keep hands clear of rod and arm while air is applied.',
  ],
};

export function targetSheet(paper: Paper): string {
  const { widthMm, heightMm } = PAPER_SIZES[paper];
  const left = (widthMm - CARD.widthMm) / 2;
  const parts = [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}">`,
    `<title>${WORDS.title}</title>`,
    `<style>@page{size:${widthMm}mm ${heightMm}mm;margin:0}text{font-family:sans-serif;fill:#000}</style>`,
    `<rect width="${widthMm}" height="${heightMm}" fill="#fff"/>`,
    text(WORDS.title, left, TOP_MM, 6),
    text(WORDS.size, left, TOP_MM + 9, 4),
    `<g id="strip" transform="translate(${left} ${STRIP_FOOT_MM})">${strip()}</g>`,
    `<g id="check-line" transform="translate(${(widthMm - CHECK_LINE_MM) / 2} ${CHECK_MM})">${checkLineDrawing()}</g>`,
    text(WORDS.check, left, CHECK_MM + 13, 4),
    text(WORDS.type, left, CHECK_MM + 13 + LINE_MM, 4),
    ...WORDS.steps.map((line, index) => text(line, left, FIRST_LINE_MM + index * LINE_MM, 4)),
    '</svg>',
  ];
  return `${parts.join('\n')}\n`;
}

const text = (words: string, xMm: number, yMm: number, sizeMm: number) =>
  `<text x="${xMm}" y="${yMm}" font-size="${sizeMm}">${words}</text>`;

function strip(): string {
  const { widthMm, heightMm } = CARD;
  const outline = `<rect y="${-heightMm}" width="${widthMm}" height="${heightMm}" fill="none" stroke="#888" stroke-width="0.1"/>`;
  const arrow = (x: number) => `<path d="M${x - 1.2} -3.2h2.4l-1.2 2.6z"/>`;
  const edge = `<text x="${widthMm / 2}" y="-0.9" font-size="2" text-anchor="middle">${WORDS.edge}</text>`;
  return [outline, ...TARGET_MARKERS.map(markerDrawing), arrow(3), arrow(widthMm - 3), edge].join('\n');
}
