import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { PAPER_SIZES, PAPERS } from '../../src/references/paper.ts';
import { targetSheet } from '../../src/references/target-sheet.ts';

test.each(PAPERS)(
  'the page that the app offers is the one made here: npm run target writes it (%s)',
  (paper) => {
    expect(readFileSync(`public/printed-target-${paper}.svg`, 'utf8')).toBe(targetSheet(paper));
  },
);

test.each(PAPERS)('everything on the page is off its edges by what printers leave white (%s)', (paper) => {
  const { widthMm, heightMm } = PAPER_SIZES[paper];
  const sheet = targetSheet(paper);
  const leftMm = Number(/id="strip" transform="translate\(([\d.]+)/.exec(sheet)?.[1]);
  // 6 mm: common practice, no source.
  expect(leftMm).toBeGreaterThanOrEqual(6);
  const lowestMm = Math.max(
    ...[...sheet.matchAll(/<text x="[\d.]+" y="([\d.]+)"/g)].map((match) => Number(match[1])),
  );
  expect(lowestMm).toBeGreaterThan(100);
  expect(lowestMm).toBeLessThan(heightMm - 6);
  expect(sheet).toContain(`width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}"`);
});

test('the outer edges of the check line’s end ticks are 100 mm apart', () => {
  const line = /<g id="check-line"[^>]*>(.*?)<\/g>/s.exec(targetSheet('a4'))?.[1] ?? '';
  const rects = [...line.matchAll(/<rect(?: x="([-\d.]+)")? y="-([\d.]+)" width="([\d.]+)"/g)].map(
    (match) => ({
      left: Number(match[1] ?? 0),
      right: Number(match[1] ?? 0) + Number(match[3]),
      high: Number(match[2]),
    }),
  );
  const ends = rects.filter(({ high }) => high === 8);
  expect(ends).toHaveLength(2);
  expect(Math.min(...ends.map(({ left }) => left))).toBeCloseTo(0, 9);
  expect(Math.max(...ends.map(({ right }) => right))).toBeCloseTo(100, 9);
});
