/** A clip that came in decoded, worked on in a browser that only plays it: that stands in the finding, the report and the recheck. */
import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import type { InspectionRecord } from '../../src/record/record.ts';
import { recordText } from '../../src/record/save-record.ts';
import { bringPictures, reportRecord } from './report-record.ts';
import { choose, step } from './shell-start.ts';

const SAID = /Frames taken by the player: “.*application\.mp4”/;

/** One wheel end with the stroke from two frames of the clip. */
function clipRecord(): InspectionRecord {
  const record = reportRecord();
  const wheelEnds = record.wheelEnds.flatMap((wheelEnd) => {
    const measurements = wheelEnd.measurements.filter(({ id }) => id === 'clip-as-found');
    return measurements.length > 0 ? [{ ...wheelEnd, measurements }] : [];
  });
  return { ...record, wheelEnds };
}

async function openRecord(page: Page): Promise<void> {
  await page.goto('/');
  const buffer = Buffer.from(recordText(clipRecord()));
  await choose(page, 'Open a saved record', [{ name: 'clip.json', mimeType: 'application/json', buffer }]);
}

test('a clip that this browser only plays is said to be so in finding, report and recheck', async ({
  page,
}) => {
  await page.addInitScript(() => Reflect.deleteProperty(globalThis, 'VideoDecoder'));
  await openRecord(page);
  await step(page, 7).click();
  await expect(page.getByText('Source of the limit')).toBeVisible({ timeout: 20_000 });
  await expect(page.getByText(SAID)).toHaveCount(0);
  await step(page, 1).click();
  await bringPictures(page);
  await step(page, 7).click();
  await expect(page.getByText(SAID)).toBeVisible({ timeout: 20_000 });

  await page.getByRole('button', { name: 'Axle 3, right' }).click();
  await page.getByRole('button', { name: 'Vehicle', exact: true }).click();
  await page.getByRole('button', { name: 'Open the report' }).click();
  const paper = page.locator('.report-paper');
  await expect(paper.getByText(SAID)).toHaveCount(1, { timeout: 30_000 });
  await expect(paper.getByText('4.5 s; frames by the player')).toHaveCount(1);
  await page.getByRole('button', { name: 'Back to the inspection' }).click();

  await page.getByRole('button', { name: 'Make the evidence package' }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 60_000 }),
    page.getByRole('button', { name: 'Save the package' }).click({ timeout: 60_000 }),
  ]);
  const buffer = readFileSync(await download.path());
  await page.getByRole('button', { name: 'All inspections' }).click();
  await choose(page, 'Recheck an evidence package', [
    { name: 'clip-evidence.zip', mimeType: 'application/zip', buffer },
  ]);
  await expect(page.getByText(SAID)).toBeVisible({ timeout: 30_000 });
});
