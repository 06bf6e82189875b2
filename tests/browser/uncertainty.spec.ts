/** What the finding step says of its own uncertainty: the check by trials, and the mark that contradicts the others. */
import { expect, type Page, test } from '@playwright/test';
import { NO_REFERENCES } from '../../src/references/reference.ts';
import { axe } from './axe.ts';
import { graduation, openPair, pairPictures, placed } from './prepared-pair.ts';
import { picture, step } from './shell-start.ts';

test.setTimeout(120_000);

const CHECK = { name: 'Check the uncertainty by 10,000 trials' };

/** Face, pin, four graduations; a graduation of the released picture so many pixels beside its place. */
async function openMarked(page: Page, { sigmaPx, asidePx = 0 }: { sigmaPx: number; asidePx?: number }) {
  await openPair(page, {
    set: 'pair-tape',
    pictures: pairPictures('pair-tape'),
    references: { ...NO_REFERENCES, tape: { zeroAtFace: false, unmoved: false, touchesPin: false } },
    marksOf: ({ state, points }) => [
      placed(state, 'chamber-face', points.chamberFace.px, sigmaPx),
      placed(state, 'clevis-pin', points.clevisPin.px, sigmaPx),
      placed(state, 'camshaft-end', points.camshaftEnd.px, sigmaPx),
      ...[1, 4, 7, 10].map((inches) => {
        const [x, y] = points.tapeGraduations?.find((each) => each.inches === inches)?.px ?? [NaN, NaN];
        const off = state === 'released' && inches === 7 ? asidePx : 0;
        return graduation(state, inches, [x, y + off], sigmaPx);
      }),
    ],
  });
  await step(page, 7).click();
  await page.getByRole('combobox', { name: 'Dimensions in' }).selectOption({ label: 'millimetres' });
  await expect(page.locator('[aria-busy="false"]').first()).toHaveText(/±/);
}

const uMm = (text: string | undefined) => Number(/± ([\d.]+) mm/.exec(text ?? '')?.[1]);

test('the uncertainty is checked by trials, which can be stopped, and dropped when a mark moves', {
  tag: '@desk',
}, async ({ page }) => {
  // As a mouse places them, close by.
  await openMarked(page, { sigmaPx: 0.5 });
  // Every mark fits within its own spread: none is named.
  await expect(page.getByText('check each other. They agree')).toBeVisible();
  await expect(page.getByRole('button', { name: /^Fits the others least/ })).toHaveCount(0);
  await page.getByRole('button', CHECK).click();
  await expect(page.getByRole('progressbar')).toBeVisible();
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByRole('progressbar')).toHaveCount(0);

  await page.getByRole('button', CHECK).click();
  await expect(page.getByRole('img', { name: /^Where the trials fall/ })).toBeVisible({ timeout: 60_000 });
  const row = page.locator('.trials-values').getByRole('row', { name: /^Stroke/ });
  const [stated, byTrials] = await row.getByRole('cell').allTextContents();
  expect(uMm(stated)).toBeGreaterThan(0);
  // The marks are good and the geometry is no extreme one: the two are of one size.
  expect(uMm(byTrials) / uMm(stated)).toBeGreaterThan(0.6);
  expect(uMm(byTrials) / uMm(stated)).toBeLessThan(1.7);
  await expect(page.locator('.trials')).toContainText(/95 of 100 trials fall between/);
  await expect(page.locator('.trials-values').getByRole('row')).toHaveCount(4);

  expect((await axe(page).include('.how-sure').analyze()).violations).toEqual([]);

  // Looked away and back, nothing changed: still there. A mark moved: gone.
  await step(page, 4).click();
  await step(page, 7).click();
  await expect(page.getByRole('img', { name: /^Where the trials fall/ })).toBeVisible();
  await picture(page, 'Applied')
    .getByRole('button', { name: /^Clevis pin, .*x / })
    .press('ArrowRight');
  await expect(page.getByRole('button', CHECK)).toBeVisible();
});

test('a mark that contradicts the others is named, ringed on its picture and brought close', {
  tag: '@phone',
}, async ({ page }) => {
  // As a finger does.
  await openMarked(page, { sigmaPx: 2, asidePx: 16 });
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
