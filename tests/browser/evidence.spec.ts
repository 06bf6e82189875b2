/** Two people: a technician makes the package, an auditor with a browser of his own rechecks it. */
import { webcrypto } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { type Download, expect, type Page, test } from '@playwright/test';
import { canonicalJson } from '../../src/basics/canonical-json.ts';
import { verify } from '../../src/evidence/signature.ts';
import { CHECKS } from '../../src/recheck/recheck.ts';
import { truthOf } from './main-job-truth.ts';
import { openPair, tapePair } from './prepared-pair.ts';
import { choose, type FileToChoose, leave } from './shell-start.ts';

type Handed = { readonly bytes: Buffer; readonly key: string };

/** Opens the saved record, gives it its pictures, makes the package. Returns the key that it is signed with. */
async function packs(page: Page, paddingBytes = 0): Promise<string> {
  await openPair(page, tapePair(paddingBytes));
  await page.getByRole('button', { name: 'Axle 1, left' }).click();
  await page.getByRole('button', { name: 'Vehicle', exact: true }).click();
  const part = page.getByRole('region', { name: 'Evidence package' });
  await part.getByRole('button', { name: 'Make the evidence package' }).click();
  await expect(part.getByText(/The package is ready/)).toBeVisible({ timeout: 20_000 });
  return (await part.locator('.key-print').textContent()) ?? '';
}

async function technician(page: Page): Promise<Handed> {
  const key = await packs(page);
  return { bytes: await saved(page, 'Save the package'), key };
}

async function saved(page: Page, button: string): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(
    /^(strokewitness-Gravel-trailer-GT-14-[\w-]+\.zip|gt-14-evidence-recheck\.json)$/,
  );
  return readFileSync(await download.path());
}

/**
 * Opens the pictures without any marks. Placing marks by hand has tests of its own: here they come into the browser's database
 * half a pixel from the first reader's.
 */
async function readsAgain(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Place your own marks' }).click();
  await expect(page.getByRole('region', { name: 'Released picture', exact: true })).toBeVisible();
  await expect(page.getByRole('button', { name: /released picture\. x/ })).toHaveCount(0);
  await leave(page);
  const { marksOf } = tapePair();
  await page.evaluate(
    async (marked) => {
      const answer = <T>(request: IDBRequest<T>) =>
        new Promise<T>((resolve, reject) => {
          request.onsuccess = () => resolve(request.result);
          request.onerror = () => reject(request.error);
        });
      const database = await answer(indexedDB.open('strokewitness'));
      const records = database.transaction('records', 'readwrite').objectStore('records');
      const [kept] = await answer(records.getAll());
      const { views } = kept.record.wheelEnds[0].measurements[0];
      for (const [i, view] of views.entries()) view.marks = marked[i];
      await answer(records.put(kept));
      database.close();
    },
    truthOf('pair-tape').views.map((view) => marksOf(view).map((mark) => ({ ...mark, xPx: mark.xPx + 0.5 }))),
  );
}
const check = (page: Page, question: RegExp) =>
  page.locator('.checks > li').filter({ hasText: question }).locator('strong');

test('an auditor rechecks in a fresh browser what a technician packed, and sees what somebody changed', {
  tag: '@desk',
}, async ({ page, browser, baseURL }) => {
  const { bytes, key } = await technician(page);
  const context = await browser.newContext({ ...(baseURL ? { baseURL } : {}) });
  const auditor = await context.newPage();
  await auditor.goto('/');
  const sent = { name: 'gt-14-evidence.zip', mimeType: 'application/zip', buffer: bytes };
  await choose(auditor, 'Recheck an evidence package', [sent]);
  await expect(auditor.getByRole('heading', { name: 'This package holds in every point.' })).toBeVisible({
    timeout: 20_000,
  });
  await expect(auditor.locator('.key-print')).toHaveText(key);
  await expect(auditor.locator('.checks > li')).toHaveText(
    CHECKS.map((name) => (name === 'timeStamp' ? /None$/ : /Yes$/)),
  );
  await readsAgain(auditor);
  await choose(auditor, 'Recheck an evidence package', [sent]);
  const compared = auditor.getByRole('row', { name: /axle 1 left, stroke/ });
  await expect(compared.getByText('agree', { exact: true })).toBeVisible({ timeout: 20_000 });
  const reading = await saved(auditor, 'Save this recheck, signed');
  const { document, signature } = JSON.parse(reading.toString());
  const signedBytes = new TextEncoder().encode(canonicalJson(document));
  expect(await verify(webcrypto.subtle, signature, signedBytes)).toBe(true);
  expect(document).toMatchObject({ package: { signedBy: key }, holds: true });
  expect(document.secondReading.comparisons.length).toBeGreaterThan(0);

  await auditor.getByText('Results as the package gives them').click();
  await expect(auditor.getByRole('row', { name: /axle 1 left.*±.*limit/i })).toBeVisible();
  const still = auditor.getByRole('img', { name: 'axle 1 left as found applied' });
  await still.scrollIntoViewIfNeeded();
  await expect
    .poll(() => still.evaluate((image: HTMLImageElement) => image.naturalWidth))
    .toBeGreaterThan(1000);

  const changed = Buffer.from(bytes);
  const middle = Math.floor(bytes.length / 2);
  changed[middle] = (changed[middle] ?? 0) ^ 1;
  await auditor.getByRole('button', { name: 'Close the package' }).click();
  await choose(auditor, 'Recheck an evidence package', [{ ...sent, buffer: changed }]);
  await expect(auditor.getByRole('heading', { name: /does not hold/ })).toBeVisible({ timeout: 20_000 });
  await expect(check(auditor, /as it was when the package was made\?/)).toHaveText('No');
  await expect(auditor.getByText(/captures\/00\d-\w+\.jpg was changed\./)).toBeVisible();
  await expect(check(auditor, /measuring again/)).toHaveText('Yes');
  await context.close();
});

test('what is no package is told as such, and the work behind it stays', { tag: '@phone' }, async ({
  page,
}) => {
  await page.goto('/');
  const script = '<script>document.title = "broken"</script>';
  const file = { name: `${script}.zip`, mimeType: 'application/zip', buffer: Buffer.from(script.repeat(9)) };
  await choose(page, 'Recheck an evidence package', [file]);
  await expect(page.getByRole('heading', { name: /This is no evidence package/ })).toBeVisible();
  await expect(page).toHaveTitle(/Strokewitness/);
  await page.getByRole('button', { name: 'Close the package' }).click();
  await expect(page.getByRole('heading', { name: 'Strokewitness' })).toBeVisible();
});

test('a package in pieces for mail is one again in a fresh browser, in whatever order; a missing piece is named', {
  tag: '@desk',
}, async ({ page, browser, baseURL }) => {
  const key = await packs(page, 7e6);
  await page.getByText('Time stamp by an authority').click();
  const [request] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the request' }).click(),
  ]);
  expect((await received(request)).buffer).toHaveLength(59);
  await page.getByLabel('A mail takes').selectOption({ index: 0 });
  const arriving: Promise<FileToChoose>[] = [];
  page.on('download', (download) => arriving.push(received(download)));
  await page.getByRole('button', { name: 'Save in pieces for mail' }).click();
  await expect.poll(() => arriving.length).toBe(3);
  const pieces = (await Promise.all(arriving)).sort((a, b) => a.name.localeCompare(b.name));
  expect(pieces.map(({ name }) => name.slice(name.indexOf('.zip')))).toEqual(
    ['1', '2', '3'].map((number) => `.zip.${number}-of-3`),
  );
  const context = await browser.newContext({ ...(baseURL ? { baseURL } : {}) });
  const auditor = await context.newPage();
  await auditor.goto('/');
  const [first, second, third] = pieces;
  if (!first || !second || !third) throw new Error('not three pieces');
  await choose(auditor, 'Recheck an evidence package', [third, first]);
  await expect(auditor.getByText(/came in 3 pieces\. Not among the files: 2\./)).toBeVisible();
  await choose(auditor, 'Recheck an evidence package', [third, first, second]);
  await expect(auditor.getByRole('heading', { name: 'This package holds in every point.' })).toBeVisible({
    timeout: 30_000,
  });
  await expect(auditor.locator('.key-print')).toHaveText(key);
  await context.close();
});

async function received(download: Download): Promise<FileToChoose> {
  const buffer = readFileSync(await download.path());
  return { name: download.suggestedFilename(), mimeType: '', buffer };
}

test('a time stamp is asked for, put in, and its authority held against the roots that the auditor gives', {
  tag: '@desk',
}, async ({ page }) => {
  const fixture = (path: string): FileToChoose => ({
    name: path.split('/').at(-1) ?? '',
    mimeType: '',
    buffer: readFileSync(`tests/fixtures/${path}`),
  });
  await page.goto('/');
  await choose(page, 'Recheck an evidence package', [fixture('packages/version-1.zip')]);
  const part = page.getByRole('region', { name: 'Times', exact: true });
  await expect(part.getByText(/nobody attested them/)).toBeVisible({ timeout: 20_000 });
  await part.getByText('Time stamp by an authority').click();
  const [request] = await Promise.all([
    page.waitForEvent('download'),
    part.getByRole('button', { name: 'Save the request' }).click(),
  ]);
  expect(await received(request)).toMatchObject({
    name: 'version-1.zip.tsq',
    buffer: readFileSync('tests/fixtures/time-stamps/request.tsq'),
  });
  await choose(page, 'Put the answer in', [fixture('time-stamps/other-hash.tsr')]);
  await expect(part.getByText(/time stamp is of something else/)).toBeVisible();
  const [stamped] = await Promise.all([
    page.waitForEvent('download'),
    choose(page, 'Put the answer in', [fixture('time-stamps/ec.tsr')]),
  ]);
  expect(await received(stamped)).toMatchObject({
    name: 'version-1-stamped.zip',
    buffer: readFileSync('tests/fixtures/packages/version-1-stamped.zip'),
  });
  await expect(check(page, /time stamp fit/)).toHaveText('Yes', { timeout: 20_000 });
  await expect(part.getByText('Invented time stamps, EC, Invented for tests')).toBeVisible();
  await expect(part.getByText(/Authority not checked/)).toBeVisible();
  const roots = 'Choose the authority’s root certificates';
  await choose(page, roots, [fixture('time-stamps/certificates.txt')]);
  await expect(part.getByText(/holds no certificate/)).toBeVisible();
  await choose(page, roots, [fixture('time-stamps/other-root.pem')]);
  await expect(check(page, /time stamp fit/)).toHaveText('No', { timeout: 20_000 });
  await choose(page, roots, [fixture('time-stamps/root.pem')]);
  await expect(part.getByText(/comes from a root that you chose/)).toBeVisible({ timeout: 20_000 });
  await expect(check(page, /time stamp fit/)).toHaveText('Yes');
});
