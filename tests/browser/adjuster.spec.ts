/** The adjuster's wrench in two pictures: marked by hand, read as a turn, decided. */
import { expect, type Page, test } from '@playwright/test';
import { choose, photo } from './shell-start.ts';

const REACH_CSS = 100;

/** Middle of the hex, then the wrench's far end at this angle, clockwise from the right as the picture shows it. */
async function markWrench(page: Page, deg: number): Promise<void> {
  const stage = page.locator('.wrench-viewer .viewer-stage');
  await expect(stage.locator('canvas').first()).toBeVisible();
  await stage.scrollIntoViewIfNeeded();
  const box = await stage.boundingBox();
  if (!box) throw new Error('the picture is not there');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const rad = (deg * Math.PI) / 180;
  await page.mouse.click(x, y);
  await expect(page.locator('.wrench .asking')).toContainText('far out on the wrench');
  await page.mouse.click(x + REACH_CSS * Math.cos(rad), y + REACH_CSS * Math.sin(rad));
  await expect(page.locator('.wrench .asking')).toContainText('marked');
}

/** Until it is the one that is open: the one before closes for it. */
async function addPicture(page: Page, number: number, colour: string): Promise<void> {
  await choose(page, 'Take a picture now', [await photo(page, `${colour}.jpg`, colour)]);
  await expect(page.getByRole('button', { name: `Picture ${number},`, expanded: true })).toBeVisible();
  await expect(page.locator('.wrench-viewer')).toHaveCount(1);
}

test('a wrench that went on by 40 degrees takes up; one that stood still does not', {
  tag: '@desk',
}, async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Start an inspection' }).click();
  await page.getByRole('button', { name: 'I have read this' }).click();
  await page.getByRole('button', { name: 'Add trailer axle' }).click();
  await page.getByRole('button', { name: /^Axle 1, left/ }).click();
  const part = page
    .locator('.sheet-part')
    .filter({ has: page.getByRole('heading', { name: 'Adjuster', exact: true }) });
  await part.locator('summary').click();
  await part.getByRole('button', { name: 'Automatic', exact: true }).click();
  await part.getByRole('button', { name: 'Counter-clockwise' }).click();
  await part.getByRole('checkbox', { name: /camera stands on something/ }).check();
  await addPicture(page, 1, '#6a4b33');
  await markWrench(page, 10);
  const more = part.getByRole('button', { name: 'One application more', exact: true });
  for (let i = 0; i < 6; i++) await more.click();
  await addPicture(page, 2, '#33506a');
  await markWrench(page, 50);
  const status = part.locator('.turn-read').getByRole('status');
  await expect(part.locator('.turn-read .stroke-value')).toContainText(/^(39|40|41)\.\d° ± .*° clockwise/);
  await expect(part.locator('.turn-read')).toContainText('in 6 applications');
  await expect(status).toHaveText('Takes up');

  await part.getByRole('button', { name: 'Take this picture out' }).click();
  await expect(part.locator('.turn-read')).toHaveCount(0);
  await addPicture(page, 2, '#336a50');
  await markWrench(page, 10);
  await expect(status).toHaveText('Does not take up');
  await part.getByRole('button', { name: 'Takes up', exact: true }).click();
  await expect(part).toContainText('You say otherwise; both are kept.');
  await page.reload();
  await part.locator('summary').click();
  await expect(status).toHaveText('Does not take up');
});
