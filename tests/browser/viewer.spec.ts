import { expect, type Page, test } from '@playwright/test';
import { axe } from './axe.ts';
import type { Harness } from './harness-viewer/harness.tsx';
import { partPage } from './part-pages.ts';

// The last file of all: both workers take its tests.
test.describe.configure({ mode: 'parallel' });

const mark = (id: string, xPx: number, yPx: number, more: object = {}) => ({
  ...{ id, xPx, yPx, name: id, selected: false, automatic: false, doubtful: false, minor: false },
  ...more,
});
const PIN = mark('Clevis pin', 2000, 1500);
const FACE = mark('Chamber face', 1000, 1500);

test.beforeEach(async ({ page }) => {
  await page.goto(partPage('viewer'));
  await page.waitForFunction(() => window.harness !== undefined);
  await page.evaluate(() => window.harness.picture('numbered'));
});

type Point = { readonly x: number; readonly y: number };

async function show(page: Page, change: Parameters<Harness['show']>[0]): Promise<void> {
  await page.evaluate((part) => window.harness.show(part), change);
}

async function callsOf(page: Page, name: string): Promise<unknown[][]> {
  const calls = await page.evaluate(() => window.harness.calls);
  return calls.filter((call) => call.name === name).map((call) => call.args);
}

/** Where a frame point is on the page: where a mark put there is drawn. That marks lie on their pixels has its own test. */
async function seenAt(page: Page, xPx: number, yPx: number): Promise<Point> {
  await settled(page);
  const probe = `Probe ${xPx} ${yPx}`;
  const before = await page.evaluate(() => window.harness.marks());
  await show(page, { marks: [...before, mark(probe, xPx, yPx)] });
  const at = await centreOf(page, probe);
  await show(page, { marks: before });
  return at;
}

async function centreOf(page: Page, id: string): Promise<Point> {
  return page.locator(`[data-mark-id="${id}"] .viewer-hit`).evaluate((hit) => {
    const { left, top, width, height } = hit.getBoundingClientRect();
    return { x: left + width / 2, y: top + height / 2 };
  });
}

async function settled(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(null)))),
  );
}

async function scaleOf(page: Page): Promise<number> {
  const [a, b] = [await seenAt(page, 1000, 1000), await seenAt(page, 2000, 1000)];
  return (b.x - a.x) / 1000;
}

async function zoomAt(page: Page, at: Point, turns: number): Promise<void> {
  await page.mouse.move(at.x, at.y);
  for (let n = 0; n < turns; n++) await page.mouse.wheel(0, -200);
  await settled(page);
}

type Finger = (
  kind: 'touchStart' | 'touchMove' | 'touchEnd' | 'touchCancel',
  ...points: Point[]
) => Promise<void>;

async function fingersOn(page: Page): Promise<Finger> {
  const session = await page.context().newCDPSession(page);
  return async (type, ...points) => {
    const touchPoints = points.map(({ x, y }, id) => ({ x, y, id }));
    await session.send('Input.dispatchTouchEvent', { type, touchPoints });
  };
}

test('what is drawn under a mark is the pixel that it names', async ({ page }) => {
  // The cross at (2000, 1500) of the picture has red arms two pixels wide: the middle of what is red is where the mark is.
  for (const turns of [0, 4, 5]) {
    await zoomAt(page, await seenAt(page, 2000, 1500), turns);
    const scale = await scaleOf(page);
    const at = await seenAt(page, 2000, 1500);
    await page.waitForTimeout(250);
    const red = await page.evaluate(middleOfRed, { at, halfCss: 6 + 3 * scale });
    expect(Math.abs(red.x - at.x)).toBeLessThan(0.5);
    expect(Math.abs(red.y - at.y)).toBeLessThan(0.5);
  }
});

function middleOfRed({ at, halfCss }: { at: Point; halfCss: number }): Point {
  const canvas = document.querySelector<HTMLCanvasElement>('.viewer-picture');
  const context = canvas?.getContext('2d');
  if (!canvas || !context) throw new Error('no picture');
  const box = canvas.getBoundingClientRect();
  const ratio = canvas.width / box.width;
  const half = Math.round(halfCss * ratio);
  const left = Math.round((at.x - box.left) * ratio) - half;
  const top = Math.round((at.y - box.top) * ratio) - half;
  const { data, width } = context.getImageData(left, top, 2 * half, 2 * half);
  let [sum, sumX, sumY] = [0, 0, 0];
  for (let n = 0; n < data.length; n += 4) {
    const weight = Math.max(0, (data[n] ?? 0) - (data[n + 1] ?? 0) - 8);
    sum += weight;
    sumX += weight * (((n / 4) % width) + 0.5);
    sumY += weight * (Math.floor(n / 4 / width) + 0.5);
  }
  if (sum === 0) throw new Error('nothing red');
  return { x: box.left + (left + sumX / sum) / ratio, y: box.top + (top + sumY / sum) / ratio };
}

for (const turns of [0, 3, 8, 13])
  test(`a click places on the pixel under it, after ${turns} turns of the wheel`, { tag: '@desk' }, async ({
    page,
  }) => {
    await zoomAt(page, await seenAt(page, 2000, 1500), turns);
    const scale = await scaleOf(page);
    const target = await seenAt(page, 2000 + 40 / scale, 1500 - 30 / scale);
    await show(page, { placing: 'Clevis pin' });
    await page.mouse.click(target.x, target.y);
    const [point] = (await callsOf(page, 'place'))[0] as [{ xPx: number; yPx: number; sigmaPx: number }];
    expect(Math.abs(point.xPx - (2000 + 40 / scale)) * scale).toBeLessThan(0.5);
    expect(Math.abs(point.yPx - (1500 - 30 / scale)) * scale).toBeLessThan(0.5);
    expect(point.sigmaPx).toBeGreaterThanOrEqual(0.5);
  });

for (const spread of [1, 2, 6])
  test(`a finger places where it is lifted, pinched to ${spread} times`, { tag: '@phone' }, async ({
    page,
  }) => {
    const finger = await fingersOn(page);
    const start = await seenAt(page, 2000, 1500);
    if (spread > 1) await pinch(finger, start, 30, 30 * spread);
    const scale = await scaleOf(page);
    const target = { xPx: 2000 + 50 / scale, yPx: 1500 + 20 / scale };
    const at = await seenAt(page, target.xPx, target.yPx);
    await show(page, { placing: 'Clevis pin' });
    await finger('touchStart', { x: at.x - 40, y: at.y + 30 });
    await expect(page.locator('.viewer-loupe')).toBeVisible();
    await finger('touchMove', { x: at.x - 10, y: at.y + 4 });
    await finger('touchMove', at);
    await settled(page);
    await expectLoupeBeside(page, at);
    expect(await callsOf(page, 'place')).toEqual([]);
    await finger('touchEnd');
    const [point] = (await callsOf(page, 'place'))[0] as [{ xPx: number; yPx: number; sigmaPx: number }];
    expect(Math.abs(point.xPx - target.xPx) * scale).toBeLessThan(0.5);
    expect(Math.abs(point.yPx - target.yPx) * scale).toBeLessThan(0.5);
    // A finger is coarser than a mouse, and says so.
    expect(point.sigmaPx * scale).toBeGreaterThan(2);
    await expect(page.locator('.viewer-loupe')).toBeHidden();
  });

async function pinch(finger: Finger, about: Point, fromCss: number, toCss: number): Promise<void> {
  const pair = (css: number): [Point, Point] => [
    { x: about.x - css, y: about.y - css / 3 },
    { x: about.x + css, y: about.y + css / 3 },
  ];
  await finger('touchStart', ...pair(fromCss));
  for (let n = 1; n <= 8; n++) await finger('touchMove', ...pair(fromCss + ((toCss - fromCss) * n) / 8));
  await finger('touchEnd');
}

async function expectLoupeBeside(page: Page, at: Point): Promise<void> {
  const loupe = await page.locator('.viewer-loupe').boundingBox();
  const viewer = await page.locator('.viewer').boundingBox();
  if (!loupe || !viewer) throw new Error('no loupe');
  const dx = Math.max(loupe.x - at.x, 0, at.x - loupe.x - loupe.width);
  const dy = Math.max(loupe.y - at.y, 0, at.y - loupe.y - loupe.height);
  expect(Math.hypot(dx, dy)).toBeGreaterThan(40);
  expect(loupe.x).toBeGreaterThanOrEqual(viewer.x);
  expect(loupe.y).toBeGreaterThanOrEqual(viewer.y);
  expect(loupe.x + loupe.width).toBeLessThanOrEqual(viewer.x + viewer.width);
  expect(loupe.y + loupe.height).toBeLessThanOrEqual(viewer.y + viewer.height);
}

test('a pinch keeps the point between the fingers where it is and scales by what they spread', {
  tag: '@phone',
}, async ({ page }) => {
  const finger = await fingersOn(page);
  const before = await scaleOf(page);
  const about = await seenAt(page, 2600, 1200);
  await pinch(finger, about, 25, 100);
  const after = await seenAt(page, 2600, 1200);
  expect(Math.hypot(after.x - about.x, after.y - about.y)).toBeLessThan(0.5);
  expect((await scaleOf(page)) / before).toBeCloseTo(4, 1);
});

test('a second finger takes the placing back', { tag: '@phone' }, async ({ page }) => {
  const finger = await fingersOn(page);
  const at = await seenAt(page, 2000, 1500);
  const before = await scaleOf(page);
  await show(page, { placing: 'Clevis pin' });
  await finger('touchStart', at);
  await finger('touchStart', at, { x: at.x + 60, y: at.y });
  await finger('touchMove', at, { x: at.x + 120, y: at.y });
  await expect(page.locator('.viewer-loupe')).toBeHidden();
  await finger('touchEnd');
  expect(await callsOf(page, 'place')).toEqual([]);
  expect((await scaleOf(page)) / before).toBeCloseTo(2, 1);
});

test('a slow finger moves a mark by less than its own way, under the loupe, in one undo step', {
  tag: '@phone',
}, async ({ page }) => {
  await show(page, { marks: [PIN, FACE] });
  const finger = await fingersOn(page);
  const start = await centreOf(page, PIN.id);
  const scale = await scaleOf(page);
  const held = { x: start.x + 12, y: start.y + 14 };
  await finger('touchStart', held);
  for (let n = 1; n <= 30; n++) {
    await finger('touchMove', { x: held.x + n, y: held.y });
    await page.waitForTimeout(30);
  }
  await settled(page);
  await expectLoupeBeside(page, { x: held.x + 30, y: held.y });
  await finger('touchEnd');
  const movedCss = ((await page.evaluate(() => window.harness.marks()))[0]?.xPx ?? 0) * scale - 2000 * scale;
  // 23 px beyond the trembling, a quarter of it; the machine may hurry a step.
  expect(movedCss).toBeGreaterThan(4);
  expect(movedCss).toBeLessThan(12);
  expect(await callsOf(page, 'moveBegin')).toEqual([[PIN.id]]);
  expect(await callsOf(page, 'moveEnd')).toEqual([[PIN.id]]);
  await expect(page.getByRole('button', { name: /^Clevis pin/ })).toHaveAttribute('aria-pressed', 'true');
});

test('a mouse drags a mark by exactly its own way, under the loupe while the picture is small', {
  tag: '@desk',
}, async ({ page }) => {
  await show(page, { marks: [PIN, FACE] });
  const scale = await scaleOf(page);
  const start = await centreOf(page, PIN.id);
  await page.mouse.move(start.x + 5, start.y - 4);
  await page.mouse.down();
  await page.mouse.move(start.x + 25, start.y + 6, { steps: 4 });
  await page.mouse.move(start.x + 85, start.y - 54, { steps: 4 });
  await expect(page.locator('.viewer-loupe')).toBeVisible();
  await page.mouse.up();
  await expect(page.locator('.viewer-loupe')).toBeHidden();
  const [moved] = await page.evaluate(() => window.harness.marks());
  expect(((moved?.xPx ?? 0) - 2000) * scale).toBeCloseTo(80, 3);
  expect(((moved?.yPx ?? 0) - 1500) * scale).toBeCloseTo(-50, 3);
  expect(await callsOf(page, 'moveBegin')).toHaveLength(1);
  expect(await callsOf(page, 'moveEnd')).toHaveLength(1);
});

test('a mark at the very edge of the viewer can be dragged without the picture jumping', {
  tag: '@desk',
}, async ({ page }) => {
  await zoomAt(page, await seenAt(page, 2000, 1500), 6);
  const scale = await scaleOf(page);
  const viewer = await page.locator('.viewer-stage').boundingBox();
  const middle = await seenAt(page, 2000, 1500);
  const edge = 2000 + ((viewer?.x ?? 0) + 6 - middle.x) / scale;
  await show(page, { marks: [mark('Edge', edge, 1500)] });
  const start = await centreOf(page, 'Edge');
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  await page.mouse.move(start.x + 50, start.y, { steps: 5 });
  await page.mouse.up();
  await settled(page);
  expect((await centreOf(page, 'Edge')).x).toBeCloseTo(start.x + 50, 2);
});

test('a mark that is selected elsewhere is brought into sight', async ({ page }) => {
  await zoomAt(page, await seenAt(page, 2000, 1500), 8);
  const viewer = await page.locator('.viewer-stage').boundingBox();
  await show(page, { marks: [mark('Corner', 60, 60, { selected: true })] });
  await settled(page);
  const at = await centreOf(page, 'Corner');
  expect(at.x).toBeCloseTo((viewer?.x ?? 0) + (viewer?.width ?? 0) / 2, 1);
});

test('holds for the usual rules of access, light and dark', { tag: '@desk' }, async ({ page }) => {
  await show(page, {
    marks: [PIN, FACE, mark('Camshaft end', 2600, 2400, { selected: true, doubtful: true })],
  });
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const { violations } = await axe(page).include('.viewer').analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  }
});

test('arrow keys nudge by one pixel and, with Alt or Shift, by a tenth; Delete removes', {
  tag: '@desk',
}, async ({ page }) => {
  await show(page, { marks: [FACE, PIN] });
  await page.getByRole('button', { name: /^Clevis pin, released picture\. x 2000\.0, y 1500\.0/ }).focus();
  const where = async () => {
    const pin = (await page.evaluate(() => window.harness.marks())).find(({ id }) => id === 'Clevis pin');
    return [pin?.xPx ?? Number.NaN, pin?.yPx ?? Number.NaN] as const;
  };
  const expectAt = async (xPx: number, yPx: number) => {
    const [x, y] = await where();
    expect(x).toBeCloseTo(xPx, 9);
    expect(y).toBeCloseTo(yPx, 9);
  };
  await page.keyboard.press('ArrowRight');
  await expectAt(2001, 1500);
  await page.keyboard.press('ArrowDown');
  await expectAt(2001, 1501);
  await page.keyboard.press('Alt+ArrowLeft');
  await expectAt(2000.9, 1501);
  await page.keyboard.press('Shift+ArrowUp');
  await expectAt(2000.9, 1500.9);
  expect(await callsOf(page, 'moveBegin')).toHaveLength(4);
  expect(await callsOf(page, 'moveEnd')).toHaveLength(4);
  await page.keyboard.press('Delete');
  expect(await callsOf(page, 'delete')).toEqual([['Clevis pin']]);
  await expect(page.getByRole('button', { name: /^Clevis pin/ })).toHaveCount(0);
});

test('keys zoom, pan and fit; Tab reaches each mark and brings it into sight', { tag: '@desk' }, async ({
  page,
}) => {
  const fitted = await scaleOf(page);
  await page.getByRole('region', { name: 'Released picture' }).focus();
  for (let n = 0; n < 5; n++) await page.keyboard.press('+');
  expect((await scaleOf(page)) / fitted).toBeCloseTo(1.6 ** 5, 3);
  const before = await seenAt(page, 2000, 1500);
  await page.keyboard.press('ArrowRight');
  expect((await seenAt(page, 2000, 1500)).x - before.x).toBeCloseTo(-64, 3);
  const corner = mark('Corner', 60, 60);
  await show(page, { marks: [corner] });
  await page.keyboard.press('Tab');
  await settled(page);
  await expect(page.getByRole('button', { name: /^Corner/ })).toBeFocused();
  const viewer = await page.locator('.viewer').boundingBox();
  const at = await centreOf(page, 'Corner');
  expect(Math.abs(at.x - (viewer?.x ?? 0) - (viewer?.width ?? 0) / 2)).toBeLessThan(1);
  await page.keyboard.press('0');
  expect(await scaleOf(page)).toBeCloseTo(fitted, 6);
});

test('of graduations on one line Tab stops at one, and the page keys go along them', {
  tag: '@desk',
}, async ({ page }) => {
  const on = (inches: number) => mark(`${inches} in`, 1000 * inches, 1500, { line: 'row' });
  await show(page, { marks: [on(1), on(2), on(3), mark('Clevis pin', 2000, 900)] });
  const named = (name: string) => page.getByRole('button', { name: new RegExp(`^${name},`) });
  await page.getByRole('region', { name: 'Released picture' }).focus();
  await page.keyboard.press('Tab');
  await expect(named('1 in')).toBeFocused();
  await page.keyboard.press('PageDown');
  await expect(named('2 in')).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(named('Clevis pin')).toBeFocused();
  await page.keyboard.press('Shift+Tab');
  await expect(named('1 in')).toBeFocused();
  for (const [key, name] of [
    ['PageDown', '2 in'],
    ['PageUp', '1 in'],
  ] as const) {
    await page.keyboard.press(key);
    await expect(named(name)).toBeFocused();
  }
});

test('the wheel and a trackpad’s pinch zoom about the pointer', { tag: '@desk' }, async ({ page }) => {
  const at = await seenAt(page, 1500, 2000);
  const fitted = await scaleOf(page);
  await zoomAt(page, at, 3);
  const after = await seenAt(page, 1500, 2000);
  expect(Math.hypot(after.x - at.x, after.y - at.y)).toBeLessThan(0.01);
  const wheeled = await scaleOf(page);
  expect(wheeled).toBeGreaterThan(fitted * 1.5);
  await page.keyboard.down('Control');
  await page.mouse.wheel(0, -20);
  await page.keyboard.up('Control');
  await settled(page);
  expect((await scaleOf(page)) / wheeled).toBeCloseTo(Math.exp(0.2), 3);
  expect((await seenAt(page, 1500, 2000)).x).toBeCloseTo(at.x, 2);
});

test('pan and zoom render nothing in React', { tag: '@desk' }, async ({ page }) => {
  await show(page, { marks: [PIN, FACE] });
  const at = await centreOf(page, PIN.id);
  const before = await page.evaluate(() => window.harness.renders.count);
  await zoomAt(page, { x: at.x + 100, y: at.y + 60 }, 4);
  await page.mouse.down();
  await page.mouse.move(at.x + 300, at.y + 200, { steps: 40 });
  await page.mouse.move(at.x - 100, at.y - 100, { steps: 40 });
  await page.mouse.up();
  expect((await centreOf(page, PIN.id)).x).not.toBeCloseTo(at.x, 0);
  expect(await page.evaluate(() => window.harness.renders.count)).toBe(before);
});

test('a double tap zooms in there', async ({ page, isMobile }) => {
  const at = await seenAt(page, 2700, 1300);
  const before = await scaleOf(page);
  if (isMobile) {
    await page.touchscreen.tap(at.x, at.y);
    await page.touchscreen.tap(at.x, at.y);
  } else await page.mouse.dblclick(at.x, at.y);
  const after = await seenAt(page, 2700, 1300);
  expect((await scaleOf(page)) / before).toBeCloseTo(2.5, 2);
  expect(Math.hypot(after.x - at.x, after.y - at.y)).toBeLessThan(0.5);
});

test('another picture of the same size keeps the zoom, none shows the empty sheet', async ({ page }) => {
  await page.getByRole('button', { name: 'Zoom in' }).click();
  const zoomed = await scaleOf(page);
  await page.evaluate(() => window.harness.picture('yard'));
  expect(await scaleOf(page)).toBeCloseTo(zoomed, 9);
  await page.evaluate(() => window.harness.picture(null));
  await expect(page.locator('.viewer-picture')).toHaveCount(0);
  await expect(page.getByText('Released picture')).toBeVisible();
  await page.evaluate(() => window.harness.picture('numbered'));
  expect(await scaleOf(page)).toBeCloseTo(zoomed, 9);
});

test('a drag in the cutting mode gives its rectangle in frame pixels', { tag: '@desk' }, async ({ page }) => {
  const [from, to] = [await seenAt(page, 1200, 900), await seenAt(page, 1800, 1300)];
  const scale = await scaleOf(page);
  await show(page, { cropping: true });
  await page.mouse.move(to.x, to.y);
  await page.mouse.down();
  await page.mouse.move(from.x, from.y, { steps: 5 });
  await page.mouse.up();
  const [rect] = (await callsOf(page, 'crop'))[0] as [Record<string, number>];
  const wanted = { xPx: 1200, yPx: 900, widthPx: 600, heightPx: 400 };
  for (const [key, value] of Object.entries(wanted))
    expect(Math.abs((rect[key] ?? Number.NaN) - value) * scale).toBeLessThan(0.5);
});

test('by keys alone: pan under the middle, Enter places there', { tag: '@desk' }, async ({ page }) => {
  await show(page, { placing: 'Clevis pin' });
  await page.getByRole('region', { name: 'Released picture' }).focus();
  for (let n = 0; n < 6; n++) await page.keyboard.press('+');
  await page.keyboard.press('ArrowRight');
  await expect(page.locator('.viewer-middle')).toBeVisible();
  const viewer = await page.locator('.viewer-stage').boundingBox();
  await page.keyboard.press('Enter');
  const at = await centreOf(page, 'm1');
  expect(at.x).toBeCloseTo((viewer?.x ?? 0) + (viewer?.width ?? 0) / 2, 1);
  expect(at.y).toBeCloseTo((viewer?.y ?? 0) + (viewer?.height ?? 0) / 2, 1);
});
