/** The adjuster's wrench in two pictures: marked by hand, read as a turn, decided. */
import { expect, type Page, test } from '@playwright/test';
import { openAdjusterCheck } from './adjuster-start.ts';
import { choose, photo } from './shell-start.ts';

const REACH_CSS = 180;

/** Middle of the hex, the wrench's far end at this angle, clockwise from the right as the picture shows it, then the arm. */
async function markWrench(page: Page, deg: number, armDeg = 0): Promise<void> {
  const stage = page.locator('.wrench-viewer .viewer-stage');
  await expect(stage.locator('canvas').first()).toBeVisible();
  await stage.scrollIntoViewIfNeeded();
  const box = await stage.boundingBox();
  if (!box) throw new Error('the picture is not there');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const asks = (what: string) => expect(page.locator('.wrench .asking')).toContainText(what);
  const put = (awayCss: number, atDeg: number) => {
    const rad = (atDeg * Math.PI) / 180;
    return page.mouse.click(x + awayCss * Math.cos(rad), y + awayCss * Math.sin(rad));
  };
  await put(0, 0);
  await asks('far out on the wrench');
  await put(REACH_CSS, deg);
  await asks('camshaft');
  await put(60, 180 + armDeg);
  await asks('clevis pin');
  await put(140, 180 + armDeg);
  await asks('marked');
}

/** Until it is the one that is open: the one before closes for it. */
async function addPicture(page: Page, number: number, colour: string): Promise<void> {
  await choose(page, 'Take a picture or a clip now', [await photo(page, `${colour}.jpg`, colour)]);
  await expect(page.getByRole('button', { name: `Picture ${number},`, expanded: true })).toBeVisible();
  await expect(page.locator('.wrench-viewer')).toHaveCount(1);
}

test('a wrench that went on by 40 degrees takes up; one that stood still does not', {
  tag: '@desk',
}, async ({ page }) => {
  const part = await openAdjusterCheck(page, 'Counter-clockwise');
  for (const said of ['Back the hex off', 'Back off only the brake under test', 'is no repair'])
    await expect(part).toContainText(said);
  await part.getByRole('checkbox', { name: /camera stands on something/ }).check();
  await addPicture(page, 1, '#6a4b33');
  await markWrench(page, 10);
  const more = part.getByRole('button', { name: 'One application more', exact: true });
  for (let i = 0; i < 6; i++) await more.click();
  await addPicture(page, 2, '#33506a');
  await markWrench(page, 50);
  const status = part.locator('.turn-read').getByRole('status');
  const value = part.locator('.turn-read .stroke-value');
  await expect(value).toContainText(/^(38|39|40|41)\.\d° ± .*° clockwise/);
  await expect(part.locator('.turn-read')).toContainText('in 6 applications');
  await expect(status).toHaveText('Takes up');
  await expect(part).toContainText('Not known within 3°');
  await addPicture(page, 3, '#706a33');
  await markWrench(page, 140);
  await addPicture(page, 4, '#70336a');
  await markWrench(page, -60);
  await expect(value).toContainText(/^(38|39|40|41)\.\d° ± [12]\.\d° clockwise/);
  await expect(part).not.toContainText(/not known within 3°/i);

  const drop = part.getByRole('button', { name: 'Take this picture out' });
  await drop.click();
  for (const number of [3, 2]) {
    await part.getByRole('button', { name: `Picture ${number},` }).click();
    await drop.click();
  }
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

test('a camera that rolled, whatever is said of it, turns no wrench', { tag: '@desk' }, async ({ page }) => {
  const part = await openAdjusterCheck(page, 'Counter-clockwise');
  await part.getByRole('checkbox', { name: /camera stands on something/ }).check();
  await addPicture(page, 1, '#6a4b33');
  await markWrench(page, 10);
  const more = part.getByRole('button', { name: 'One application more', exact: true });
  for (let i = 0; i < 6; i++) await more.click();
  await addPicture(page, 2, '#33506a');
  // Not answered yet: the work is open again where it was.
  await page.reload();
  await expect(page.getByRole('button', { name: 'Picture 2,', expanded: true })).toBeVisible();
  await markWrench(page, 35, 25);
  await expect(part.locator('.turn-read').getByRole('status')).toHaveText('Cannot tell');
  await expect(part).toContainText('the camera moved, or a mark is off');
});
