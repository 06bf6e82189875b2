/** From the photo pair with a tape to a finding by touch, every tap counted; a pinch brings the brake close once on each picture. */
import { expect, type Locator, type Page, test } from '@playwright/test';
import { spotOf } from './main-job-marking.ts';
import { type FrameSize, type Px, truthOf, viewOf } from './main-job-truth.ts';
import { picture } from './shell-start.ts';

test.setTimeout(120_000);

/** The way was to take twelve; the tape is found and its numerals are read, so that none of its graduations is marked or typed. */
const MOST_TAPS = 8;
const CLOSER = 4;

test('from two photos with a tape to a finding in eight taps', { tag: '@phone' }, async ({ page }) => {
  const truth = truthOf('pair-tape');
  let taps = 0;
  const press = async (name: string | RegExp) => {
    await page.getByRole('button', { name }).first().tap();
    taps++;
  };
  await page.goto('/');
  const wentEarly = await watchedForEarly(page);
  const began = Date.now();
  await press('Photos with a tape');
  await press(/^Tape along the rod in both/);
  for (const state of ['Released', 'Applied'] as const) {
    const view = viewOf(truth, state === 'Released' ? 'released' : 'applied');
    const { chamberFace, clevisPin } = view.points;
    const close = await pinched(page, state, view, alongTape(view));
    const touch = async (px: Px) => {
      await touched(page, close, px);
      taps++;
    };
    const found = page.getByRole('region', { name: 'Found in this picture' });
    await touch(chamberFace.px);
    // In the second picture the pin is found without being touched.
    if (state === 'Released') await touch(clevisPin.px);
    else await expect(found).toContainText('End of the clevis pin found again', { timeout: 60_000 });
    await expect(found).toContainText(/Tape read by its numerals, 1 in to 1\d in/, { timeout: 60_000 });
    await expect(page.getByText('looking …')).toHaveCount(0, { timeout: 60_000 });
    await expect(found).toContainText('Middle line of the rod found by its edges');
    // What is asked for next: in the second picture the pin.
    await expect(page.locator('.asking')).toHaveText(
      state === 'Released'
        ? /^Check what was found, then take it\. Or mark \d+ in by hand\.$/
        : 'Check what was found, then take it. Or mark the clevis pin by hand.',
    );
    await page.screenshot({ path: test.info().outputPath(`read-${state}.png`) });
    // Nothing of it counts before it is taken.
    if (state === 'Applied') await expect(page.locator('.result-line, .viewer-value')).toHaveCount(0);
    await expectOneLine(page.getByRole('button', { name: /^Take all\. Next/ }));
    await press(/^Take all\. Next/);
  }
  expect(await wentEarly()).toBe(false);
  await press('Type 30');
  const result = page.locator('.result-line');
  await expect(result).toContainText(/limit|decided/i, { timeout: 60_000 });
  const seconds = (Date.now() - began) / 1000;
  test.info().annotations.push({ type: 'way', description: `${taps} taps, ${seconds.toFixed(1)} s` });
  expect(taps).toBeLessThanOrEqual(MOST_TAPS);
  // The machine's work and the test's waiting; a person adds their own.
  expect(seconds).toBeLessThan(60);
  expect(await result.textContent()).toMatch(/Within limit|Not decided/);
  await page.getByRole('button', { name: /^Step 7:/ }).tap();
  await page.getByRole('combobox', { name: 'Dimensions in' }).selectOption({ label: 'millimetres' });
  const stroke = page
    .getByRole('region', { name: 'Title block' })
    .getByText('Stroke', { exact: true })
    .locator('..')
    .getByRole('status');
  await expect(stroke).toHaveText(/^[\d.]+ ± [\d.]+ mm$/);
  const [, value, U] = /([\d.]+) ± ([\d.]+)/.exec((await stroke.textContent()) ?? '') ?? [];
  expect(Math.abs(Number(value) - truth.strokeMm)).toBeLessThanOrEqual(Number(U));
});

test('a typed reading that the numerals contradict waits for the person', { tag: '@phone' }, async ({
  page,
}) => {
  const { close, found, view } = await faceAndPinTouched(page);
  const { tapeGraduations = [] } = view.points;
  await expect(found).toContainText('Tape read by its numerals', { timeout: 60_000 });
  // Asked for the second inch, the third one is touched.
  const third = tapeGraduations.find(({ inches }) => inches === 3)?.px;
  if (!third) throw new Error('the third inch cannot be seen');
  await touched(page, close, third);
  await expect(found).toContainText('You typed 2 in, but by the tape’s numerals that stroke reads 3 in.');
  // Neither is taken with what else was found.
  await expect(page.getByRole('button', { name: /^Take all\. Next/ })).toHaveCount(0);
  await page.screenshot({ path: test.info().outputPath('doubted.png') });
  await page.getByRole('button', { name: /^It reads 3 in/ }).tap();
  await expect(found.getByText('You typed')).toHaveCount(0);
  await expect(page.getByRole('button', { name: /^Step 3: .*done$/ })).toBeVisible();
});

test('of the edges across the rod near the face the person takes one, and takes it back', {
  tag: '@phone',
}, async ({ page }) => {
  const { found } = await faceAndPinTouched(page);
  await expect(found).toContainText('An edge across the rod is seen near your chamber face.', {
    timeout: 60_000,
  });
  const face = page.getByRole('group', { name: 'Marks' }).getByLabel(/^Chamber face/);
  await expect(face).not.toHaveAccessibleName(/automatic/);
  // Not taken with what else was found.
  await expect(page.getByRole('button', { name: /^Take all\. Next/ })).toBeVisible();
  await found.getByRole('button', { name: 'Look at the edge' }).tap();
  await page.screenshot({ path: test.info().outputPath('edge.png') });
  const take = found.getByRole('button', { name: 'Take this edge' });
  expect((await take.boundingBox())?.height).toBeGreaterThanOrEqual(44);
  await take.tap();
  await expect(face).toHaveAccessibleName(/automatic/);
  await expect(found).not.toContainText('edge across the rod');
  await page.getByRole('button', { name: 'Undo' }).tap();
  await expect(face).not.toHaveAccessibleName(/automatic/);
  await expect(take).toBeVisible();
});

/** Whether the way on was ever shown as the one thing to do while more was being looked for. */
async function watchedForEarly(page: Page): Promise<() => Promise<boolean>> {
  const early = await page.evaluateHandle(() => {
    const seen = { early: false };
    new MutationObserver(() => {
      const isLooking = document.querySelector('.step-body')?.textContent?.includes('looking …') ?? false;
      const goesOn = document.querySelector('.step-next')?.textContent?.includes('Take all. Next') ?? false;
      if (isLooking && goesOn) seen.early = true;
    }).observe(document.body, { childList: true, subtree: true, characterData: true });
    return seen;
  });
  return () => early.evaluate((seen) => seen.early);
}

/** In the released picture of the pair with a tape. */
async function faceAndPinTouched(page: Page) {
  const view = viewOf(truthOf('pair-tape'), 'released');
  const { chamberFace, clevisPin } = view.points;
  await page.goto('/');
  for (const name of ['Photos with a tape', /^Tape along the rod in both/])
    await page.getByRole('button', { name }).first().tap();
  const close = await pinched(page, 'Released', view, alongTape(view));
  await touched(page, close, chamberFace.px);
  await touched(page, close, clevisPin.px);
  return { close, found: page.getByRole('region', { name: 'Found in this picture' }), view };
}

/** Between the face and a far graduation. */
function alongTape({ points: { chamberFace, tapeGraduations = [] } }: ReturnType<typeof viewOf>): Px {
  return [(chamberFace.px[0] + (tapeGraduations.at(-10)?.px[0] ?? 0)) / 2, chamberFace.px[1]];
}

/** As a finger goes: some screen pixels off. */
async function touched(page: Page, close: Close, [xPx, yPx]: Px): Promise<void> {
  const { x, y } = close([xPx - 5, yPx - 4]);
  await page.touchscreen.tap(x, y);
}

type Close = Awaited<ReturnType<typeof pinched>>;

async function expectOneLine(button: Locator): Promise<void> {
  const lines = await button.evaluate((element) => {
    const text = document.createRange();
    text.selectNodeContents(element);
    return new Set([...text.getClientRects()].map(({ top }) => top)).size;
  });
  expect(lines).toBe(1);
}

/** Brings the picture close about a place and answers where places of it then are on the screen. */
async function pinched(page: Page, state: 'Released' | 'Applied', size: FrameSize, about: Px) {
  const stage = picture(page, state).locator('.viewer-stage');
  await expect(stage.locator('canvas').first()).toBeVisible();
  const { spot, scale } = await spotOf(stage, size, about);
  const session = await page.context().newCDPSession(page);
  const fingers = (apart: number) => [
    { x: spot.x - apart, y: spot.y, id: 0 },
    { x: spot.x + apart, y: spot.y, id: 1 },
  ];
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', touchPoints: { x: number; y: number }[]) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints });
  await send('touchStart', fingers(20));
  for (let i = 1; i <= 6; i++) await send('touchMove', fingers(20 + ((CLOSER - 1) * 20 * i) / 6));
  await send('touchEnd', []);
  await session.detach();
  await page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(null)))),
  );
  return ([x, y]: Px) => ({
    x: spot.x + CLOSER * scale * (x - about[0]),
    y: spot.y + CLOSER * scale * (y - about[1]),
  });
}
