/** What the finding step says of its own uncertainty: the check by trials, and the mark that contradicts the others. */
import AxeBuilder from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';
import { openDemo } from './main-job-finding.ts';
import { mark, type Px } from './main-job-marking.ts';
import { type TruthView, truthOf, viewOf } from './main-job-truth.ts';
import { chooseClampType, picture, step } from './shell-start.ts';

test.setTimeout(240_000);

const TRUTH = truthOf('pair-tape');
const CHECK = { name: 'Check the uncertainty by 10,000 trials' };

/** Face, pin, three graduations and camshaft end; a graduation of the released picture so many pixels beside its place. */
async function markPair(page: Page, { asidePx = 0 } = {}): Promise<void> {
  await openDemo(page, 'Photos with a tape');
  await chooseClampType(page, '30');
  await step(page, 2).click();
  await page.getByRole('checkbox', { name: /Tape along the rod/ }).check();
  for (const state of ['Released', 'Applied'] as const) {
    const view = viewOf(TRUTH, state === 'Released' ? 'released' : 'applied');
    await step(page, state === 'Released' ? 3 : 4).click();
    const { chamberFace, clevisPin, camshaftEnd } = view.points;
    for (const { px } of [chamberFace, clevisPin]) await mark(page, state, view, px);
    for (const inches of [1, 4, 7, 10]) {
      const reading = page.getByRole('textbox', { name: 'Reading', exact: true });
      if (inches <= 4) await reading.fill(`${inches}`);
      await expect(page.locator('.asking')).toContainText(`Mark ${inches} in on the tape`);
      const [x, y] = graduation(view, inches);
      const off = state === 'Released' && inches === 7 ? asidePx : 0;
      await mark(page, state, view, [x, y + off]);
    }
    await mark(page, state, view, camshaftEnd.px);
  }
  await step(page, 7).click();
  await page.getByRole('combobox', { name: 'Dimensions in' }).selectOption({ label: 'millimetres' });
  await expect(page.locator('[aria-busy="false"]').first()).toHaveText(/±/);
}

function graduation({ points }: TruthView, inches: number): Px {
  const found = points.tapeGraduations?.find((each) => each.inches === inches);
  if (!found) throw new Error(`${inches} in cannot be seen`);
  return found.px;
}

const uMm = (text: string | undefined) => Number(/± ([\d.]+) mm/.exec(text ?? '')?.[1]);

test('the uncertainty is checked by trials, which can be stopped, and dropped when a mark moves', {
  tag: '@desk',
}, async ({ page }) => {
  await markPair(page);
  await page.getByRole('button', CHECK).click();
  await expect(page.getByRole('progressbar')).toBeVisible();
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByRole('progressbar')).toHaveCount(0);

  await page.getByRole('button', CHECK).click();
  await expect(page.getByRole('img', { name: /^Where the trials fall/ })).toBeVisible({ timeout: 120_000 });
  const row = page.locator('.trials-values').getByRole('row', { name: /^Stroke/ });
  const [stated, byTrials] = await row.getByRole('cell').allTextContents();
  expect(uMm(stated)).toBeGreaterThan(0);
  // The marks are good and the geometry is no extreme one: the two are of one size.
  expect(uMm(byTrials) / uMm(stated)).toBeGreaterThan(0.6);
  expect(uMm(byTrials) / uMm(stated)).toBeLessThan(1.7);
  await expect(page.locator('.trials')).toContainText(/95 of 100 trials fall between/);
  await expect(page.locator('.trials-values').getByRole('row')).toHaveCount(4);

  expect((await new AxeBuilder({ page }).include('.how-sure').analyze()).violations).toEqual([]);

  // Looked away and back, nothing changed: still there. A mark moved: gone.
  await step(page, 6).click();
  await step(page, 7).click();
  await expect(page.getByRole('img', { name: /^Where the trials fall/ })).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('button', CHECK)).toBeVisible();
});

test('a mark that contradicts the others is named, ringed on its picture and brought close', {
  tag: '@phone',
}, async ({ page }) => {
  await markPair(page, { asidePx: 24 });
  const sheet = page.getByRole('region', { name: 'How sure' });
  await expect(sheet).toContainText('it contradicts the others');
  const named = sheet.getByRole('button', { name: /^Fits the others least: 177.8 mm, released/ });
  const ringed = picture(page, 'Released').getByRole('button', { name: /^177.8 mm, .*doubtful/ });
  await sheet.getByText('The numbers behind it').click();
  await expect(sheet.getByRole('row', { name: /^Squared misfits/ })).toBeVisible();

  await named.click();
  await expect(page.getByText(/^177.8 mm is selected\./)).toBeVisible();
  await expect(ringed).toHaveAttribute('aria-pressed', 'true');
  await expect(ringed.locator('circle.viewer-doubt')).toHaveCount(1);
  await expect(ringed).toBeInViewport();
  const [mine, near] = await Promise.all(
    [ringed, picture(page, 'Released').locator('.viewer-stage')].map((each) => each.boundingBox()),
  );
  if (!mine || !near) throw new Error('not there');
  // Close: the mark stands in the middle third of its picture.
  const across = (mine.x + mine.width / 2 - near.x) / near.width;
  expect(Math.abs(across - 0.5)).toBeLessThan(1 / 6);
});
