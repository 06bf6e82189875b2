/**
 * Marking as a person does: bring the picture close about the point, then tap or click it.
 * The truth's pixel is found on the screen from the fitted picture (whole, centred); bringing it close about a place keeps
 * that place still. A mouse stands on whole screen pixels, which are several of the fitted picture's: the click makes good
 * what the place was off.
 */
import { expect, type Locator, type Page } from '@playwright/test';
import type { FrameSize, Px } from './main-job-truth.ts';
import { picture } from './shell-start.ts';

type State = 'Released' | 'Applied';
type Spot = { readonly x: number; readonly y: number };

export async function mark(page: Page, state: State, size: FrameSize, [xPx, yPx]: Px): Promise<void> {
  const region = picture(page, state);
  const stage = region.locator('.viewer-stage');
  await expect(stage.locator('canvas').first()).toBeVisible();
  await region.getByRole('button', { name: 'Fit the whole picture' }).click();
  await stage.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  const { spot } = await spotOf(stage, size, [xPx, yPx]);
  if (await page.evaluate(() => navigator.maxTouchPoints > 0)) await pinchAndTap(page, spot);
  else {
    await wheelAndClick(page, spot);
    await expectMarkAt(page, state, [xPx, yPx]);
  }
}

/** Where a place of the picture is on the screen, and its scale, while the whole picture is shown. */
export async function spotOf(
  stage: Locator,
  size: FrameSize,
  [xPx, yPx]: Px,
): Promise<{ readonly spot: Spot; readonly scale: number }> {
  const box = await stage.boundingBox();
  if (!box) throw new Error('the picture is not there');
  const scale = Math.min(box.width / size.widthPx, box.height / size.heightPx);
  const spot = {
    x: box.x + (box.width - scale * size.widthPx) / 2 + scale * xPx,
    y: box.y + (box.height - scale * size.heightPx) / 2 + scale * yPx,
  };
  return { spot, scale };
}

/** A turn of the wheel scales the picture by exp(-0.0016 turn), by a factor of two at most. */
const TURN = -375;
const TURNS = 4;
const CLOSER = Math.exp(-0.0016 * TURN * TURNS);

async function wheelAndClick(page: Page, { x, y }: Spot): Promise<void> {
  const at = { x: Math.round(x), y: Math.round(y) };
  await page.mouse.move(at.x, at.y);
  for (let turns = 0; turns < TURNS; turns++) await page.mouse.wheel(0, TURN);
  await nextPaint(page);
  await page.mouse.click(at.x + Math.round(CLOSER * (x - at.x)), at.y + Math.round(CLOSER * (y - at.y)));
}

/** A mark says where it is. */
async function expectMarkAt(page: Page, state: State, [xPx, yPx]: Px): Promise<void> {
  const marks = picture(page, state).getByRole('button', { name: /\. x / });
  const labels = await marks.evaluateAll((all) => all.map((each) => each.getAttribute('aria-label') ?? ''));
  const places = labels.map((label) => /x (-?[\d.]+), y (-?[\d.]+) px/.exec(label)?.slice(1).map(Number));
  const away = places.map((place) => Math.hypot((place?.[0] ?? NaN) - xPx, (place?.[1] ?? NaN) - yPx));
  expect(Math.min(...away), `${xPx}, ${yPx} among ${labels.join('; ')}`).toBeLessThan(1);
}

async function pinchAndTap(page: Page, { x, y }: Spot): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const fingers = (apart: number) => [
    { x: x - apart, y, id: 0 },
    { x: x + apart, y, id: 1 },
  ];
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', touchPoints: { x: number; y: number }[]) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints });
  await send('touchStart', fingers(4));
  for (const apart of [10, 20, 40, 60]) await send('touchMove', fingers(apart));
  await send('touchEnd', []);
  await nextPaint(page);
  await send('touchStart', [{ x, y }]);
  await send('touchEnd', []);
  await session.detach();
}

async function nextPaint(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(null)))),
  );
}
