import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { boardSheet } from '../../src/references/board-sheet.ts';
import { PAPER_SIZES, PAPERS } from '../../src/references/paper.ts';

test.each(PAPERS)(
  'the page that the app offers is the one made here: npm run board writes it (%s)',
  (paper) => {
    expect(readFileSync(`public/calibration-board-${paper}.svg`, 'utf8')).toBe(boardSheet(paper));
  },
);

test.each(PAPERS)('everything on the page is off its edges by what printers leave white (%s)', (paper) => {
  const { widthMm, heightMm } = PAPER_SIZES[paper];
  const sheet = boardSheet(paper);
  const placeOf = (id: string) =>
    new RegExp(`id="${id}" transform="translate\\(([\\d.]+) ([\\d.]+)`).exec(sheet)?.slice(1).map(Number) ??
    [];
  // The board lies on its side: 175 mm to the left of its origin, 250 mm down. Ticks are 8 mm long. 6 mm: common practice, no source.
  const [right = 0, top = 0] = placeOf('board');
  expect(right - 175).toBeGreaterThanOrEqual(6);
  expect(right).toBeLessThanOrEqual(widthMm - 6);
  expect(top).toBeGreaterThanOrEqual(6);
  expect((placeOf('check-line-down')[0] ?? 0) - 8).toBeGreaterThanOrEqual(6);
  expect((placeOf('check-line-across')[1] ?? 0) - 8).toBeGreaterThan(top + 250);
  const lowestMm = Math.max(
    ...[...sheet.matchAll(/<text x="[\d.]+" y="([\d.]+)"/g)].map((match) => Number(match[1])),
  );
  expect(lowestMm).toBeGreaterThan(250);
  expect(lowestMm).toBeLessThan(heightMm - 6);
  expect(sheet).toContain(`width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}"`);
});
