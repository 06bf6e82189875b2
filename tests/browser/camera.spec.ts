/** A camera calibrated from photos of the printed board, kept on the device, and used for a measurement. */
import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { openRecord } from '../../src/record/open-record.ts';
import { BOARD_CORNERS_MM, BOARD_MARKERS, SQUARE_MM } from '../../src/references/calibration-board.ts';
import { findBoard } from '../../src/vision/find-board.ts';
import { nodeOpencv } from '../vision/node-opencv.ts';
import { axe } from './axe.ts';
import { boardPhotos, SCENE } from './board-photos.ts';
import { choose, openWithoutNetwork, photo, startPair, step } from './shell-start.ts';

test.setTimeout(300_000);

const photos = (page: Page) => page.getByRole('list', { name: 'Photos of the board' }).getByRole('listitem');
const result = (page: Page) => page.getByRole('region', { name: 'Result' });

async function savedRecord(page: Page) {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save record' }).click(),
  ]);
  const opened = openRecord(readFileSync(await download.path(), 'utf8'));
  if (!opened.ok) throw new Error(JSON.stringify(opened.failure));
  return opened.value;
}

test('from photos of the board to a camera that is kept, and used for a measurement after a reload', {
  tag: '@phone',
}, async ({ page }) => {
  await startPair(page);
  const board = await boardPhotos(page);
  const other = await photo(page, 'no-board.jpg', '#446');
  await step(page, 2).click();
  await page.getByRole('button', { name: 'Calibrate a camera' }).click();
  await expect(page.getByRole('heading', { name: 'Camera', exact: true })).toBeFocused();
  await expect(page.getByRole('link', { name: /^A4/ })).toBeVisible();

  await choose(page, 'Choose 8 or more photos', [...board.slice(0, 5), other]);
  await expect(result(page)).toContainText('The board was found in 5 of 6 photos; 8 are needed.', {
    timeout: 120_000,
  });
  await expect(photos(page).filter({ hasText: 'no-board.jpg' })).toContainText('Board not found.');
  await page.getByRole('button', { name: 'Leave out no-board.jpg' }).click();
  await choose(page, 'Add photos', board.slice(5));
  await expect(result(page)).toContainText('corners in 9 photos', { timeout: 120_000 });
  await expect(photos(page)).toHaveCount(9);
  await expect(photos(page).first()).toContainText(/of 54 corners, 0\.\d\d px off/);

  expect((await axe(page).analyze()).violations).toEqual([]);

  await page.getByRole('textbox', { name: 'Name of the camera' }).fill('Yard phone');
  await page.getByRole('button', { name: 'Keep and use it for this measurement' }).click();
  const chosen = page.getByRole('radio', { name: /^Yard phone/ });
  await expect(chosen).toBeChecked();
  await page.reload();
  await expect(chosen).toBeChecked();

  const record = await savedRecord(page);
  const [profile] = record.cameraProfiles;
  if (!profile) throw new Error('no profile in the record');
  expect(record.wheelEnds[0]?.measurements[0]?.cameraProfileId).toBe(profile.id);
  expect(profile).toMatchObject({ name: 'Yard phone', widthPx: 1200, heightPx: 900, photoCount: 9 });
  const { lens } = SCENE;
  const ratios = [
    Math.log(profile.focalPx / lens.focalPx) / profile.uLnFocal,
    (profile.cxPx - lens.cxPx) / profile.uCxPx,
    (profile.cyPx - lens.cyPx) / profile.uCyPx,
    (profile.k1 - lens.k1) / profile.uK1,
    (profile.k2 - lens.k2) / profile.uK2,
  ];
  // U at 95 % for the focal length; for all five together three standard uncertainties.
  expect(Math.abs(ratios[0] ?? Number.NaN)).toBeLessThan(1.96);
  for (const ratio of ratios) expect(Math.abs(ratio)).toBeLessThan(3);
  expect(profile.uLnFocal).toBeLessThan(0.001);
  expect(profile.rmsPx).toBeLessThan(0.2);

  await page.getByRole('radio', { name: /^Not calibrated/ }).check();
  await page.reload();
  await expect(page.getByRole('radio', { name: /^Not calibrated/ })).toBeChecked();
  await expect(chosen).not.toBeChecked();
  expect((await savedRecord(page)).wheelEnds[0]?.measurements[0]?.cameraProfileId).toBeNull();
});

test('the measurement follows the choice of the camera at once', { tag: '@desk' }, async ({ page }) => {
  const kept = JSON.parse(readFileSync('tests/fixtures/records/version-2.json', 'utf8'));
  const record = { ...kept, wheelEnds: kept.wheelEnds.slice(0, 1) };
  await page.goto('/');
  await choose(page, 'Open a saved record', [
    { name: 'record.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(record)) },
  ]);
  const warning = page.getByText('The calibrated camera was set up at another picture size');
  const finding = page.getByRole('button', { name: /^Step \d: Finding/ });
  const yard = page.getByRole('radio', { name: /^Yard phone/ });
  await finding.click();
  await expect(page.locator('[aria-busy="false"]').first()).toHaveText(/±/);
  await expect(warning).toHaveCount(0);
  await step(page, 2).click();
  await yard.check();
  await finding.click();
  await expect(warning).toBeVisible();
  await step(page, 2).click();
  await page.getByRole('radio', { name: /^Not calibrated/ }).check();
  await expect(yard).not.toBeChecked();
  await finding.click();
  await expect(warning).toHaveCount(0);
});

test('photos of another size than the camera was made for: said where it is chosen', {
  tag: '@desk',
}, async ({ page }) => {
  await page.goto('/');
  const profile = {
    ...{ id: 'a', name: 'Office camera', madeAt: '2026-11-25T12:00:00.000Z', widthPx: 4000, heightPx: 3000 },
    ...{ focalPx: 3100, uLnFocal: 0.001, cxPx: 2000, cyPx: 1500, uCxPx: 1, uCyPx: 1, k1: 0, uK1: 0.001 },
    ...{ k2: 0, uK2: 0.001, rmsPx: 0.2, photoCount: 10, cornerCount: 500 },
  };
  await page.evaluate(
    (kept) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('strokewitness');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const transaction = opening.result.transaction('cameras', 'readwrite');
          for (const each of kept) transaction.objectStore('cameras').put(each);
          transaction.oncomplete = () => resolve();
        };
      }),
    // The second is not one that this app understands.
    [profile, { id: 'b', name: 'From another version' }],
  );
  await startPair(page);
  await step(page, 2).click();
  const office = page.getByRole('radio', { name: /^Office camera/ });
  await expect(office).not.toBeChecked();
  await expect(page.getByText('the pictures here are of another size')).toBeVisible();
  await expect(page.getByText('From another version')).toHaveCount(0);

  await page.getByRole('button', { name: 'Calibrate a camera' }).click();
  await page.getByRole('button', { name: 'Remove Office camera from this device' }).click();
  await expect(page.getByText('None yet.')).toBeVisible();
  await page.getByRole('button', { name: 'Back' }).click();
  await expect(page.getByRole('radio', { name: /^Not calibrated/ })).toBeChecked();
  await expect(office).toHaveCount(0);
});

test.describe('without a network', () => {
  test.use({ serviceWorkers: 'allow' });

  test('without a network the board is printed at its size and found in a photo; a clip is refused', {
    tag: '@phone',
  }, async ({ page, context }) => {
    await openWithoutNetwork(page);
    await page.getByRole('button', { name: 'Calibrate a camera' }).click();

    for (const paper of ['A4', 'US Letter']) {
      const [sheet] = await Promise.all([
        context.waitForEvent('page'),
        page.getByRole('link', { name: new RegExp(`^${paper}`) }).click(),
      ]);
      // 250 mm and 100 mm at 96 px per inch.
      const box = (id: string) => sheet.locator(id).evaluate((line) => line.getBoundingClientRect());
      expect((await box('#board')).height).toBeCloseTo((250 / 25.4) * 96, 0);
      expect((await box('#check-line-across')).width).toBeCloseTo((100 / 25.4) * 96, 0);
      expect((await box('#check-line-down')).height).toBeCloseTo((100 / 25.4) * 96, 0);
      await sheet.close();
    }

    const [board] = await boardPhotos(page, 1);
    if (!board) throw new Error('no photo');
    const clip = {
      name: 'clip.mp4',
      mimeType: 'video/mp4',
      buffer: readFileSync('tests/fixtures/media/h264-b-frames.mp4'),
    };
    await choose(page, 'Choose 8 or more photos', [board, clip]);
    await expect(photos(page).first()).toContainText(/of 54 corners/, { timeout: 120_000 });
    await expect(photos(page).nth(1)).toContainText('A clip. Take photos');
  });
});

test('the printed page, as the browser draws it, is the board that is looked for', { tag: '@desk' }, async ({
  page,
}) => {
  await page.goto('/');
  // Edges fall inside pixels, as in a photo.
  const pxPerMm = 3.7;
  const { width, height, text } = await page.evaluate(async (scale) => {
    const image = new Image();
    image.src = '/calibration-board-a4.svg';
    await image.decode();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [Math.round(210 * scale), Math.round(297 * scale)];
    const pen = canvas.getContext('2d');
    if (!pen) throw new Error('no canvas');
    pen.drawImage(image, 0, 0, 210 * scale, 297 * scale);
    const { data } = pen.getImageData(0, 0, canvas.width, canvas.height);
    let text = '';
    for (let at = 0; at < data.length; at += 4) text += String.fromCharCode(data[at] ?? 0);
    return { width: canvas.width, height: canvas.height, text: btoa(text) };
  }, pxPerMm);
  const gray = { widthPx: width, heightPx: height, values: new Uint8Array(Buffer.from(text, 'base64')) };
  const plan = { squareMm: SQUARE_MM, markers: BOARD_MARKERS, cornersMm: BOARD_CORNERS_MM };
  const found = findBoard(await nodeOpencv(), gray, plan);
  if (!found.ok) throw new Error(JSON.stringify(found.failure));
  expect(found.value.corners).toHaveLength(BOARD_CORNERS_MM.length);
  // Turned clockwise by 90 degrees about the board's top left corner at (192.5, 7) mm.
  for (const { corner, xPx, yPx } of found.value.corners) {
    const [xMm, yMm] = BOARD_CORNERS_MM[corner] ?? [Number.NaN, Number.NaN];
    expect(Math.hypot(xPx / pxPerMm - (192.5 - yMm), yPx / pxPerMm - (7 + xMm))).toBeLessThan(0.05);
  }
});
