import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { formatLengthWithU } from '../../src/basics/length-text.ts';
import type { InspectionRecord } from '../../src/record/record.ts';
import { assess } from '../../src/record/results.ts';
import { recordText } from '../../src/record/save-record.ts';
import { bringPictures, reportRecord } from './report-record.ts';
import { choose } from './shell-start.ts';

const record = reportRecord();
/** Points of a PDF page. */
const PAPERS = { A4: [595, 842], Letter: [612, 792] } as const;

async function openRecord(page: Page): Promise<void> {
  await page.goto('/');
  const text = Buffer.from(recordText(record));
  await choose(page, 'Open a saved record', [
    { name: 'inspection.json', mimeType: 'application/json', buffer: text },
  ]);
}

async function openReport(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the report' }).click();
  await expect(page.getByRole('heading', { name: 'Axle 3, right' })).toBeVisible({ timeout: 30_000 });
}

test('the whole inspection on both papers and as a file of its own, with the engine’s numbers and its pictures', {
  tag: '@desk',
}, async ({ page, context }) => {
  await openRecord(page);
  await bringPictures(page);
  await openReport(page);
  const paper = page.locator('.report-paper');
  for (const stroke of strokesWithoutScreen(record)) await expect(paper).toContainText(stroke);
  const annotated = paper.locator('svg.annotated');
  await expect(annotated).toHaveCount(8);
  await expect(annotated.locator('image')).toHaveCount(8);
  await expect(paper.locator('p.missing')).toHaveCount(0);

  for (const [name, size] of Object.entries(PAPERS)) {
    await page.getByLabel(name).check();
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    expect(pdf.match(/\/Type \/Page\b(?!s)/g)?.length).toBeGreaterThanOrEqual(9);
    expect(pdf.match(/\/Type \/Page\b(?!s)/g)?.length).toBeLessThanOrEqual(14);
    const [, width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf)?.map(Number) ?? [];
    expect([Math.round(width ?? 0), Math.round(height ?? 0)]).toEqual(size);
  }

  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as a file' }).click(),
  ]);
  const path = test.info().outputPath('report.html');
  await download.saveAs(path);
  await standsAlone(await context.newPage(), path);

  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: 688, height: 900 });
  expect(await cutOff(page)).toEqual([]);
  await expect(page.getByRole('button', { name: 'Save as a file' })).toBeHidden();
});

/** Opened elsewhere, it asks for nothing and runs nothing. */
async function standsAlone(alone: Page, path: string): Promise<void> {
  expect(readFileSync(path, 'utf8')).not.toMatch(/<script|javascript:/i);
  const asked: string[] = [];
  alone.on('request', (request) => asked.push(request.url().slice(0, 40)));
  await alone.goto(`file://${path}`);
  await expect(alone.getByRole('heading', { name: 'Axle 3, right' })).toBeVisible();
  await expect(alone.locator('svg.annotated image')).toHaveCount(8);
  const typeface = await alone.evaluate(async () => {
    await document.fonts.ready;
    return document.fonts.check('600 12px "Barlow Semi Condensed"');
  });
  expect(typeface).toBe(true);
  expect(asked.filter((address) => !/^(file|data):/.test(address))).toEqual([]);
}

test('on a phone the report is read without pushing the page aside', { tag: '@phone' }, async ({ page }) => {
  await openRecord(page);
  await openReport(page);
  const aside = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(aside).toBeLessThanOrEqual(0);
  const words = await page.locator('.report-paper').evaluate((paper) => {
    const texts = [...(paper.shadowRoot?.querySelectorAll('svg.plan text') ?? [])];
    const boxes = texts.map((text) => text.getBoundingClientRect()).filter(({ width }) => width > 0);
    return {
      shown: boxes.length,
      outside: boxes.filter((box) => box.left < 0 || box.right > innerWidth).length,
    };
  });
  expect(words.shown).toBeGreaterThan(12);
  expect(words.outside).toBe(0);
  await expect(page.getByRole('button', { name: 'Print, or keep as PDF' })).toBeInViewport();
  await page.getByRole('button', { name: 'Back to the inspection' }).click();
  await expect(page.getByRole('button', { name: 'Open the report' })).toBeVisible();
});

function strokesWithoutScreen(of: InspectionRecord): string[] {
  return of.wheelEnds.flatMap((wheelEnd) =>
    wheelEnd.measurements.map((measurement) => {
      const { measurement: measured } = assess(of, wheelEnd, measurement);
      if (!measured.ok) throw new Error(measured.failure.code);
      const { value, U95 } = measured.value.strokeMm;
      return formatLengthWithU(value, U95, 'fraction');
    }),
  );
}

/** Texts that run out of their place, or off a page as wide as the paper’s. */
async function cutOff(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const root = document.querySelector('.report-paper')?.shadowRoot;
    const edge = root?.querySelector('.report')?.getBoundingClientRect().right ?? 0;
    const all = [
      ...(root?.querySelectorAll<HTMLElement>('h1, h2, h3, p, dt, dd, li, th, td, figcaption, figure') ?? []),
    ];
    if (all.length < 50) return ['the report is not there'];
    return all
      .filter((each) => getComputedStyle(each).display !== 'inline')
      .filter(
        (each) => each.scrollWidth > each.clientWidth + 1 || each.getBoundingClientRect().right > edge + 1,
      )
      .map((each) => each.textContent ?? '');
  });
}
