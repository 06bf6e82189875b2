/** A clip followed from two touches and a tape, compared with the truth that it was rendered from. */
import { expect, type Page, test } from '@playwright/test';
import { finding, openDemo } from './main-job-finding.ts';
import { mark } from './main-job-marking.ts';
import { type TruthView, truthOf, viewOf } from './main-job-truth.ts';
import { chooseClampType, step } from './shell-start.ts';

test.setTimeout(180_000);

const truth = truthOf('clip-tape');

async function takeReleased(page: Page): Promise<TruthView> {
  const view = viewOf(truth, 'released');
  await openDemo(page, 'Clip with a tape');
  await page.getByRole('slider', { name: 'Position in the clip' }).fill(`${view.frameIndex ?? 0}`);
  await page.getByRole('button', { name: 'Take as released' }).click();
  await step(page, 2).click();
  await page.getByRole('checkbox', { name: /Tape along the rod/ }).check();
  await page.getByRole('checkbox', { name: /tape lay in the same place/ }).check();
  await step(page, 3).click();
  for (const point of [view.points.chamberFace, view.points.clevisPin])
    await mark(page, 'Released', view, point.px);
  const graduations = view.points.tapeGraduations ?? [];
  for (const inches of [1, 4, 7, 10]) {
    const graduation = graduations.find((each) => each.inches === inches);
    if (!graduation) throw new Error(`${inches} in cannot be seen`);
    if (inches <= 4) await page.getByRole('textbox', { name: 'Reading', exact: true }).fill(`${inches}`);
    await mark(page, 'Released', view, graduation.px);
  }
  return view;
}

test('a clip is followed from one marked frame to its stroke', async ({ page }) => {
  await takeReleased(page);
  await page.getByRole('button', { name: 'Follow through the clip' }).click();
  const t0 = Date.now();
  await expect(page.getByText(/frames followed/)).toBeVisible({ timeout: 120_000 });
  console.log('followed in', Date.now() - t0);
  await chooseClampType(page, '30');
  const found = await finding(page);
  console.log(found, truth.strokeMm);
  const kept = await page.evaluate(
    () =>
      new Promise((done) => {
        const open = indexedDB.open('strokewitness');
        open.onsuccess = () => {
          const all = open.result.transaction('records').objectStore('records').getAll();
          all.onsuccess = () => done(JSON.stringify(all.result.at(-1)?.record));
        };
      }),
  );
  const { writeFileSync } = await import('node:fs');
  writeFileSync('/tmp/exp/followed.json', String(kept));
  expect(Math.abs(found.strokeMm - truth.strokeMm)).toBeLessThanOrEqual(found.UMm);
});
