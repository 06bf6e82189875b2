/** A whole inspection as one walks it: axles, conditions, wheel ends by hand and by pictures, cause, repair, recheck, list. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { MOST_PHOTOS } from '../../src/record/wheel-end.ts';
import { mark } from './main-job-marking.ts';
import { truthOf, viewOf } from './main-job-truth.ts';
import { choose, chooseClampType, photo, step } from './shell-start.ts';

test.setTimeout(180_000);

const back = (page: Page, to: 'Vehicle' | 'All inspections') =>
  page.getByRole('button', { name: to, exact: true }).click();
const place = (page: Page, name: string) => page.getByRole('button', { name: new RegExp(`^${name}`) });
const part = (page: Page, heading: string) =>
  page.locator('.sheet-part').filter({ has: page.getByRole('heading', { name: heading, exact: true }) });

async function readByHand(page: Page, purpose: string, released: string, applied: string): Promise<void> {
  const section = part(page, purpose);
  await section.getByRole('button', { name: 'Enter a tape reading' }).click();
  await section.getByLabel('Reading, released').fill(released);
  await section.getByLabel('Reading, applied').fill(applied);
  await section.getByRole('button', { name: 'Note the reading' }).click();
}

async function chooseType30(page: Page): Promise<void> {
  const section = part(page, 'Chamber');
  await section.getByRole('radio', { name: 'Clamp band' }).check();
  await section.getByRole('combobox', { name: 'Type and outside diameter' }).selectOption('30');
}

async function startTrailer(page: Page): Promise<void> {
  await page.goto('/');
  await page.getByRole('button', { name: 'Start an inspection' }).click();
  await page.getByRole('button', { name: 'I have read this' }).click();
  for (let axle = 1; axle <= 3; axle++) await page.getByRole('button', { name: 'Add trailer axle' }).click();
  await page.getByLabel('Unit', { exact: true }).fill('Gravel trailer GT-21');
  await page.getByRole('button', { name: 'Trailer', exact: true }).click();
  await page.getByLabel('Name', { exact: true }).fill('Invented technician');
  const conditions = ['Wheels chocked', 'Engine off', 'Spring brakes released', 'Pedal fully down and held'];
  for (const condition of [...conditions, 'Drums cold'])
    await page.getByRole('group', { name: condition }).getByRole('button', { name: 'Yes' }).click();
  await page.getByLabel('Reservoir gauge before the application, psi').fill('95');
  await expect(part(page, 'Conditions')).toContainText('all said and met');
}

async function measureFromPictures(page: Page): Promise<void> {
  const truth = truthOf('pair-tape');
  await page.getByRole('button', { name: 'Measure from pictures' }).click();
  const files = ['released.jpg', 'applied.jpg'].map((name) => ({
    name,
    mimeType: 'image/jpeg',
    buffer: readFileSync(`sample-media/pair-tape/${name}`),
  }));
  await choose(page, 'Choose photos or a clip', files);
  await step(page, 2).click();
  await page.getByRole('checkbox', { name: /Tape along the rod/ }).check();
  for (const state of ['Released', 'Applied'] as const) {
    const view = viewOf(truth, state === 'Released' ? 'released' : 'applied');
    await step(page, state === 'Released' ? 3 : 4).click();
    for (const point of [view.points.chamberFace, view.points.clevisPin])
      await mark(page, state, view, point.px);
    for (const inches of [1, 5, 9]) {
      const graduation = view.points.tapeGraduations?.find((each) => each.inches === inches);
      if (!graduation) throw new Error(`${inches} in cannot be seen`);
      await page.getByRole('textbox', { name: 'Reading', exact: true }).fill(`${inches}`);
      await mark(page, state, view, graduation.px);
    }
  }
  await chooseClampType(page, '30');
  await page.getByRole('button', { name: /^Axle 2, right$/ }).click();
}

test('a three-axle trailer is inspected, one wheel end repaired and rechecked', { tag: '@phone' }, async ({
  page,
}) => {
  await startTrailer(page);
  await place(page, 'Axle 1, left').click();
  await chooseType30(page);
  await readByHand(page, 'As found', '6', '7 5/8');
  await expect(part(page, 'As found')).toContainText('Within limit');
  const reading = part(page, 'As found').getByRole('listitem').filter({ hasText: 'by hand' });
  await expect(reading).toContainText('Stroke by hand 1 5/8 ± 1/8 in');
  await expect(reading).toContainText('6 in to 7 5/8 in');
  await page.getByRole('button', { name: 'Axle 2, left ›' }).click();
  await expect(page.getByRole('heading', { name: 'Axle 2, left' })).toBeVisible();
  await back(page, 'Vehicle');
  await place(page, 'Axle 2, right').click();
  await measureFromPictures(page);
  await expect(part(page, 'As found').locator('.stroke-value')).toContainText('±');
  await page.reload();
  await expect(page.getByRole('heading', { name: 'Axle 2, right' })).toBeVisible();
  await back(page, 'Vehicle');

  await place(page, 'Axle 3, left').click();
  await chooseType30(page);
  await readByHand(page, 'As found', '6', '8 5/16');
  await expect(part(page, 'As found')).toContainText('Over limit');
  const search = part(page, 'Look for the cause');
  await search
    .getByRole('group', { name: 'Does the adjuster take up?' })
    .getByRole('button', { name: 'No', exact: true })
    .click();
  await expect(search).toContainText('Adjuster worn or seized');
  const repair = part(page, 'Repair');
  await repair.locator('summary').click();
  await repair.getByRole('button', { name: 'Enter a repair' }).click();
  await repair.getByLabel('Cause found').selectOption({ label: 'Adjuster worn or seized' });
  await repair.getByLabel('What was done').fill('Replaced the adjuster and set the free stroke.');
  await repair.getByLabel('Parts').fill('Automatic slack adjuster');
  await repair.getByRole('button', { name: 'Note the repair' }).click();
  await expect(page.getByText('the stroke was not measured after it')).toBeVisible();
  const after = part(page, 'After repair');
  if (!(await after.getByRole('button', { name: 'Enter a tape reading' }).isVisible()))
    await after.locator('summary').click();
  await readByHand(page, 'After repair', '6', '7 5/8');
  await back(page, 'Vehicle');
  await expect(place(page, 'Axle 3, left')).toContainText('Within limit, by hand, after repair');
  await expect(place(page, 'Axle 1, left')).toContainText('Within limit, by hand');
  await expect(place(page, 'Axle 3, right')).toContainText('Not started');
  await expect(place(page, 'Axle 2, right')).toContainText('±');

  const shown = await place(page, 'Axle 2, right').locator('.plan-stroke').textContent();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save record' }).click(),
  ]);
  const rows = JSON.parse(
    execFileSync('npx', ['tsx', 'src/cli/measure.ts', await download.path()], { encoding: 'utf8' }),
  );
  expect(rows).toHaveLength(1);
  const headless = inSixteenths(rows[0].stroke_mm, rows[0].U95_mm);
  expect(shown).toBe(headless);

  await page.getByRole('button', { name: 'Open the report' }).click();
  await expect(page.getByRole('button', { name: 'Print' })).toBeEnabled({ timeout: 60_000 });
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0).toBeGreaterThan(3);
  await expect(page.locator('.report-screen')).toContainText(headless);
  await expect(page.locator('.report-screen')).toContainText('Gravel trailer GT-21');
});

/** A second writing of the tape's fractions: the value to the nearest sixteenth, U rounded up. */
function inSixteenths(mm: number, UMm: number): string {
  const text = (sixteenths: number) => {
    const whole = Math.floor(sixteenths / 16);
    const rest = sixteenths % 16;
    const divisor = [16, 8, 4, 2, 1].find((each) => rest % each === 0) ?? 1;
    const fraction = rest === 0 ? '' : `${rest / divisor}/${16 / divisor}`;
    return [whole > 0 || rest === 0 ? String(whole) : '', fraction].filter((each) => each !== '').join(' ');
  };
  return `${text(Math.round((mm / 25.4) * 16))} ± ${text(Math.ceil((UMm / 25.4) * 16))} in`;
}

test('an axle taken away comes back by undo, and earlier strokes of the unit are shown', {
  tag: '@desk',
}, async ({ page }) => {
  await page.goto('/');
  for (const reading of ['7 1/2', '7 3/4']) {
    await page.getByRole('button', { name: 'Start an inspection' }).click();
    const cautions = page.getByRole('button', { name: 'I have read this' });
    if (await cautions.isVisible()) await cautions.click();
    await page.getByRole('button', { name: 'Add drive axle' }).click();
    await page.getByLabel('Unit', { exact: true }).fill('Dump truck DT-03');
    await place(page, 'Axle 1, right').click();
    await chooseType30(page);
    await readByHand(page, 'As found', '6', reading);
    await back(page, 'Vehicle');
    await expect(place(page, 'Axle 1, right')).toContainText('Within limit, by hand');
    if (reading === '7 1/2') await back(page, 'All inspections');
  }
  await part(page, 'Vehicle').locator('summary').click();
  await page.getByRole('button', { name: 'Remove axle 1' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Remove', exact: true }).click();
  await expect(place(page, 'Axle 1, right')).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await place(page, 'Axle 1, right').click();
  await expect(page.getByRole('img', { name: /^Earlier strokes.*1 1\/2 in/ })).toBeVisible();
  await back(page, 'Vehicle');
  await back(page, 'All inspections');
  await expect(page.getByRole('button', { name: /^Dump truck DT-03/ })).toHaveCount(2);
});

test('a wheel end takes as many photos as a record holds, says so of one more, and opens again', {
  tag: '@desk',
}, async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Start an inspection' }).click();
  await page.getByRole('button', { name: 'I have read this' }).click();
  await page.getByRole('button', { name: 'Add drive axle' }).click();
  await place(page, 'Axle 1, right').click();
  const notes = part(page, 'Notes and photos');
  await notes.locator('summary').click();
  const photos = [];
  for (let i = 1; i <= MOST_PHOTOS + 1; i++)
    photos.push(await photo(page, `${i}.jpg`, `hsl(${8 * i} 60% 45%)`));
  await choose(page, 'Add photos', photos);
  await expect(page.getByRole('alert')).toContainText('keeps 40 photos', { timeout: 60_000 });
  await expect(notes.getByLabel(/^What photo \d+ shows$/)).toHaveCount(MOST_PHOTOS);
  await expect(notes.getByRole('button', { name: 'Add photos' })).toBeDisabled();
  await page.reload();
  await expect(page.getByRole('heading', { name: 'Axle 1, right' })).toBeVisible();
  await notes.locator('summary').click();
  await notes.getByRole('button', { name: 'Take photo 40 out' }).click();
  await expect(notes.getByRole('button', { name: 'Add photos' })).toBeEnabled();
});
