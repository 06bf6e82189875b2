import { readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { choose, leave, photo, startPair, step, touch } from './shell-start.ts';

const file = (name: string, mimeType: string, buffer: Buffer) => ({ name, mimeType, buffer });

test('files that are no pictures are refused in a sentence each, and the work stays', {
  tag: '@phone',
}, async ({ page }) => {
  await startPair(page);
  await choose(page, 'Choose other pictures', [
    file('notes.jpg', 'image/jpeg', Buffer.from('these are notes, no picture')),
    file('empty.jpg', 'image/jpeg', Buffer.alloc(0)),
  ]);
  const told = page.getByRole('alert');
  await expect(told.getByText(/notes\.jpg.*no photo or clip/)).toBeVisible();
  await expect(told.getByText(/empty\.jpg.*0 bytes/)).toBeVisible();
  await expect(page.getByText('taken as released')).toBeVisible();
  // However long the sentence, the way to close it keeps its size.
  const widths = await told
    .getByRole('button', { name: 'Close' })
    .evaluateAll((all) => all.map((each) => each.getBoundingClientRect().width));
  expect(Math.min(...widths)).toBeGreaterThan(60);
  await told.getByRole('button', { name: 'Close' }).first().click();
  await expect(told.getByText(/notes\.jpg/)).toBeHidden();
});

test('a photo that is cut off is told apart from a whole one', { tag: '@desk' }, async ({ page }) => {
  await page.goto('/');
  const whole = await photo(page, 'whole.jpg', '#123456');
  const cut = { ...whole, name: 'cut.jpg', buffer: whole.buffer.subarray(0, whole.buffer.length / 2) };
  await startPair(page);
  await choose(page, 'Choose other pictures', [cut]);
  await expect(page.getByRole('alert').getByText(/cut\.jpg.*(cut off|damaged)/)).toBeVisible();
});

const clip = 'sample-media/clip-tape/application.mp4';

test('a clip that is cut off is refused in a sentence', { tag: '@desk' }, async ({ page }) => {
  const whole = readFileSync(clip);
  await startPair(page);
  await choose(page, 'Choose other pictures', [
    file('cut.mp4', 'video/mp4', whole.subarray(0, Math.floor(whole.length / 2))),
  ]);
  await expect(page.getByRole('alert').getByText(/cut\.mp4.*(cut off|damaged)/)).toBeVisible();
});

test('what is no package, chosen to be rechecked, is told to be none and starts no work', {
  tag: '@phone',
}, async ({ page }) => {
  await page.goto('/');
  const letter = file('letter.pdf', 'application/pdf', Buffer.from('%PDF-1.4'));
  for (const sent of [letter, await photo(page, 'brake.jpg', '#6a4b33')]) {
    await choose(page, 'Recheck an evidence package', [sent]);
    await expect(page.getByRole('heading', { name: 'This is no evidence package' })).toBeVisible();
    await page.getByRole('button', { name: 'Close the package' }).click();
  }
  await expect(page.getByText('None yet.')).toBeVisible();
});

test('records that do not open leave the work as it was', { tag: '@desk' }, async ({ page }) => {
  await startPair(page);
  await page.getByRole('textbox', { name: 'Unit' }).fill('GT-14');
  await leave(page);
  const told = page.getByRole('alert');
  const newer = { format: 'strokewitness-record', version: 99 };
  for (const [text, sentence] of [
    [JSON.stringify(newer), /newer version/],
    ['{ not json', /no saved record of this program/],
    [JSON.stringify({ format: 'something-else', version: 1 }), /no saved record of this program/],
    [JSON.stringify({ format: 'strokewitness-record', version: 1, id: 'x' }), /damaged/],
  ] as const) {
    await choose(page, 'Open a saved record', [file('record.json', 'application/json', Buffer.from(text))]);
    await expect(told.getByText(sentence)).toBeVisible();
  }
  await page.getByRole('button', { name: /^GT-14/ }).click();
  await expect(page.getByRole('heading', { name: 'GT-14' })).toBeVisible();
});

test(
  'a file far larger than any record is refused without being read',
  { tag: '@desk' },
  async ({ page }, info) => {
    const path = info.outputPath('huge.json');
    writeFileSync(path, '');
    truncateSync(path, 2e9);
    await page.goto('/');
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Open a saved record' }).click(),
    ]);
    await chooser.setFiles(path);
    await expect(page.getByRole('alert').getByText(/huge\.json.*far larger than any record/)).toBeVisible();
  },
);

test('pictures can be dropped on the page and pasted', { tag: '@desk' }, async ({ page }) => {
  await page.goto('/');
  // Before the page is drawn there is nothing to drop on.
  await expect(page.getByRole('button', { name: 'Start with pictures' })).toBeVisible();
  const released = await photo(page, 'released.jpg', '#6a4b33');
  const applied = await photo(page, 'applied.jpg', '#33506a');
  const give = (kind: 'drop' | 'paste', name: string, base64: string) =>
    page.evaluate(
      async ([type, fileName, data]) => {
        const bytes = Uint8Array.from(atob(data ?? ''), (letter) => letter.charCodeAt(0));
        const transfer = new DataTransfer();
        transfer.items.add(new File([bytes], fileName ?? '', { type: 'image/jpeg' }));
        const init = { bubbles: true, cancelable: true };
        document.body.dispatchEvent(
          type === 'drop'
            ? new DragEvent('drop', { ...init, dataTransfer: transfer })
            : new ClipboardEvent('paste', { ...init, clipboardData: transfer }),
        );
      },
      [kind, name, base64],
    );
  const dialog = page.getByRole('dialog', { name: 'Before the first picture' });
  await give('drop', 'released.jpg', released.buffer.toString('base64'));
  await expect(dialog).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
  await expect(page.getByRole('button', { name: 'Start with pictures' })).toBeEnabled();
  await give('drop', 'released.jpg', released.buffer.toString('base64'));
  await page.getByRole('button', { name: 'I have read this' }).click();
  await expect(page.getByText('taken as released')).toBeVisible();
  await give('paste', 'applied.jpg', applied.buffer.toString('base64'));
  await expect(page.getByText('taken as applied')).toBeVisible();
  await expect(step(page, 1)).toHaveAccessibleName(/done/);
});

test('a clip is stepped frame by frame and gives both pictures, with the track’s own time', {
  tag: '@phone',
}, async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Start with pictures' }).click();
  await choose(page, 'I have read this', [file('application.mp4', 'video/mp4', readFileSync(clip))]);
  const at = page.locator('.clip-time');
  await expect(at).toContainText('frame 1 of');
  await page.getByRole('button', { name: '10 frames on' }).click();
  await page.getByRole('button', { name: '1 frame back' }).click();
  await expect(at).toContainText('frame 10 of');
  await expect(at).toContainText('0.300 s');
  await page.getByRole('button', { name: 'Take as released' }).click();
  await page.getByRole('slider', { name: 'Position in the clip' }).fill('100');
  await expect(at).toContainText('frame 101 of');
  await page.getByRole('button', { name: 'Take as applied' }).click();
  await expect(page.getByText(/taken as released at 0\.300 s, taken as applied at 3\.333 s/)).toBeVisible();
});

test('taking another frame says that the marks went with the old one, and undo brings them back', {
  tag: '@phone',
}, async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Start with pictures' }).click();
  await choose(page, 'I have read this', [file('application.mp4', 'video/mp4', readFileSync(clip))]);
  await expect(page.locator('.clip-time')).toContainText('frame 1 of');
  await page.getByRole('button', { name: 'Take as released' }).click();
  await step(page, 3).click();
  await touch(page, 'Released', 0.5, 0.5);
  const face = page.locator('.mark-list').getByRole('button', { name: /^Chamber face/ });
  await expect(face).toContainText('1 of 1');
  await step(page, 1).click();
  await page.getByRole('button', { name: 'Look through the clip' }).click();
  await page.getByRole('slider', { name: 'Position in the clip' }).fill('5');
  await expect(page.locator('.clip-time')).toContainText('frame 6 of');
  await page.getByRole('button', { name: 'Take as released' }).click();
  await expect(page.getByText('The marks of the picture before went with it.')).toBeVisible();
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await step(page, 3).click();
  await expect(face).toContainText('1 of 1');
});
