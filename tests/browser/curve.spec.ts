/** The stroke over time, its applications and the annotated clip, in a real browser with simulated measurements. */
import { readFile } from 'node:fs/promises';
import { expect, type Page, test } from '@playwright/test';
import { axe } from './axe.ts';
import type { Harness } from './harness-curve/harness.tsx';
import { partPage } from './part-pages.ts';

const MEDIA = 'tests/fixtures/media/';

test.beforeEach(({ page }) => openHarness(page));

async function openHarness(page: Page): Promise<void> {
  await page.goto(partPage('curve'));
  await page.waitForFunction(() => window.curveHarness !== undefined);
}

async function show(page: Page, ...args: Parameters<Harness['show']>): Promise<void> {
  await page.evaluate(([clip, change]) => window.curveHarness.show(clip, change), args);
}

const slider = (page: Page) => page.getByRole('slider', { name: 'Stroke over time' });

async function frameAt(page: Page): Promise<number> {
  return Number(await slider(page).getAttribute('aria-valuenow')) - 1;
}

test('keys step through the frames and stop at both ends', { tag: '@desk' }, async ({ page }) => {
  await slider(page).focus();
  const wanted = [
    ['ArrowRight', 36],
    ['Shift+ArrowRight', 46],
    ['ArrowLeft', 45],
    ['Shift+ArrowLeft', 35],
    ['End', 119],
    ['ArrowRight', 119],
    ['Home', 0],
    ['ArrowLeft', 0],
  ] as const;
  for (const [key, frame] of wanted) {
    await page.keyboard.press(key);
    expect(await frameAt(page), key).toBe(frame);
  }
});

test('the slider says frame, time, stroke with u, angle and phase, or that the pin is not seen', {
  tag: '@desk',
}, async ({ page }) => {
  await show(page, 'one', { unit: 'mm', frame: 45 });
  await expect(slider(page)).toHaveAttribute(
    'aria-valuetext',
    /^frame 46 of 120, 1\.500 s, Stroke 44\.\d mm, u 0\.1\d mm, Arm angle 92\.\d°, held$/,
  );
  await show(page, 'one', { frame: 55 });
  await expect(slider(page)).toHaveAttribute(
    'aria-valuetext',
    'frame 56 of 120, 1.833 s, pin not seen, held',
  );
  await expect(page.locator('.curve-readout')).toContainText('pin not seen');
});

test('a drag anywhere on the chart moves the frame, and the hand gets the frame nearest in time', async ({
  page,
  isMobile,
}) => {
  const box = await slider(page).boundingBox();
  if (!box) throw new Error('No chart');
  const [from, to] = [44, box.width - 14];
  const at = (frame: number) => box.x + from + ((to - from) * frame) / 119;
  if (isMobile) {
    await page.touchscreen.tap(at(30), box.y + 120);
    expect(await frameAt(page)).toBe(30);
  }
  await page.mouse.move(at(20), box.y + 60);
  await page.mouse.down();
  expect(await frameAt(page)).toBe(20);
  for (const frame of [40, 41, 80, 79, 100]) {
    await page.mouse.move(at(frame), box.y + 260);
    expect(await frameAt(page)).toBe(frame);
  }
  await page.mouse.move(box.x + box.width + 100, box.y);
  expect(await frameAt(page)).toBe(119);
  await page.mouse.up();
  await page.mouse.move(at(10), box.y + 100);
  expect(await frameAt(page)).toBe(119);
});

test('the handle is as large as a finger, and a finger going down still scrolls', async ({ page }) => {
  const hit = await page.locator('.curve-hit').boundingBox();
  expect(hit?.width).toBeGreaterThanOrEqual(48);
  expect(hit?.height).toBeGreaterThanOrEqual(48);
  await expect(slider(page)).toHaveCSS('touch-action', 'pan-y');
});

test('the reading ring lies on the drawn curve', { tag: '@desk' }, async ({ page }) => {
  for (const frame of [10, 33, 45, 70, 86]) {
    await show(page, 'one', { frame });
    const offCss = await page.evaluate(() => {
      const ring = document.querySelector<SVGCircleElement>('.curve-ring');
      const line = document.querySelector<SVGPathElement>('.curve-line');
      if (!ring || !line) return Number.NaN;
      const circle = ring.getBoundingClientRect();
      const box = line.ownerSVGElement?.getBoundingClientRect();
      const [x, y] = [
        circle.x + circle.width / 2 - (box?.x ?? 0),
        circle.y + circle.height / 2 - (box?.y ?? 0),
      ];
      const length = line.getTotalLength();
      let least = Number.POSITIVE_INFINITY;
      for (let s = 0; s <= length; s += 0.5) {
        const on = line.getPointAtLength(s);
        least = Math.min(least, Math.hypot(on.x - x, on.y - y));
      }
      return least;
    });
    expect(offCss, `frame ${frame}`).toBeLessThan(0.5);
  }
});

test('the limit, each stroke with its U and each gap are written on the drawing', async ({
  page,
  isMobile,
}) => {
  await show(page, 'three', { unit: 'mm', limitMm: 57.2 });
  const drawing = page.locator('.curve-drawing');
  await expect(drawing.getByText('limit 57.2 mm')).toHaveCount(1);
  for (const value of ['56.8 ± 0.9 mm', '57.6 ± 0.9 mm', '55.4 ± 0.9 mm'])
    await expect(drawing.getByText(value, { exact: true })).toHaveCount(1);
  // On a phone the gap of four frames is too narrow for a word of its own.
  await expect(drawing.getByText('pin not seen')).toHaveCount(isMobile ? 1 : 2);
  await expect(drawing.getByText('camshaft not seen')).toHaveCount(1);
  // Two gaps leave three pieces.
  const d = await page.locator('.curve-line').getAttribute('d');
  expect(d?.match(/M/g)).toHaveLength(3);
});

test('the applications stand in a list with their times, and what the clip does not show is said', async ({
  page,
}) => {
  await show(page, 'three', { unit: 'mm' });
  const third = page.getByRole('listitem', { name: 'Application 3' });
  await expect(third).toContainText('55.4 ± 0.9 mm');
  await expect(third).toContainText('0.900 s u 0.020 s');
  await expect(page.getByText('Stroke and finding are of application 2')).toBeVisible();
  await show(page, 'slow', { unit: 'decimal-inch' });
  await expect(page.getByRole('listitem', { name: 'Application 1' })).toContainText('not in the clip');
  await expect(page.getByText('240 frames a second')).toBeVisible();
});

for (const scheme of ['light', 'dark'] as const)
  test(`nothing is wider than the page from 360 px on, and it is accessible, ${scheme}`, {
    tag: '@desk',
  }, async ({ page }) => {
    await page.emulateMedia({ colorScheme: scheme });
    for (const width of [360, 768, 1400]) {
      await page.setViewportSize({ width, height: 800 });
      for (const clip of ['one', 'three', 'slow'] as const) {
        await show(page, clip);
        const drawn = page.locator('.curve-drawing');
        await expect(drawn, `${clip} at ${width}`).toHaveAttribute('width', String(width));
        // On a busy machine it may be laid out once more.
        await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
      }
    }
    const { violations } = await axe(page)
      // The parts stand alone here; their page has the heading.
      .disableRules('page-has-heading-one')
      .analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
  });

test('the curve is saved as a table', { tag: '@desk' }, async ({ page }) => {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the curve as a table (CSV)' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe('curve.csv');
  const lines = (await readFile(await file.path(), 'utf8')).split('\r\n');
  expect(lines[0]).toMatch(/^frame,time_s,phase,stroke_mm,/);
  expect(lines).toHaveLength(1 + 120 + 1);
});

/** Middles of the 16 bars that number a frame, lowest bit first; then a place on the pin's cross, and one in the strip. */
const BARS = Array.from({ length: 16 }, (_, bit) => [10 + 20 * bit, 45] as const);
const STRIP = [312, 187] as const;

test.describe('annotated clip', { tag: '@desk' }, () => {
  async function annotated(page: Page, name: string, pin: number, abortAfter: number | null = null) {
    await page.locator('input').setInputFiles(`${MEDIA}${name}`);
    const onPin = [60 + 2 * pin + 6, 126] as const;
    return page.evaluate(([points, after]) => window.curveHarness.annotate(points, after), [
      [...BARS, onPin, STRIP],
      abortAfter,
    ] as const);
  }

  const numberOf = (rgb: readonly (readonly number[])[] | undefined) =>
    rgb?.slice(0, 16).reduce((sum, [red = 0], bit) => sum + (red > 128 ? 2 ** bit : 0), 0);

  for (const name of ['h264-b-frames.mp4', 'variable-rate.mp4'])
    test(`${name} is written frame for frame at its own times, with its lines`, async ({ page }) => {
      const clip = await annotated(page, name, 12);
      if (clip === 'ended' || 'code' in clip) throw new Error(JSON.stringify(clip));
      const { original, written, progress, fileName } = clip;
      expect(fileName).toBe(name.replace('.mp4', '-with-lines.mp4'));
      expect(written.timesS).toEqual(original.timesS);
      expect(progress).toEqual(original.timesS.map((_, i) => i + 1));
      expect(written.rgb.map(numberOf)).toEqual(original.rgb.map(numberOf));
      expect(written.widthPx).toBe(320);
      expect(written.heightPx).toBeGreaterThan(180);
      // The light core of the pin's cross, in the frame where the pin is there, and not where it is not.
      const lightness = (of: typeof written, frame: number) => Math.min(...(of.rgb[frame]?.[16] ?? []));
      expect(lightness(written, 12) - lightness(original, 12)).toBeGreaterThan(60);
      expect(Math.abs(lightness(written, 30) - lightness(original, 30))).toBeLessThan(25);
      for (const rgb of written.rgb) expect(Math.min(...(rgb[17] ?? []))).toBeGreaterThan(225);
    });

  test('WebM is written where the browser has no H.264', async ({ page }) => {
    await page.evaluate(() => {
      const before = VideoEncoder.isConfigSupported.bind(VideoEncoder);
      VideoEncoder.isConfigSupported = async (config) =>
        config.codec.startsWith('avc') ? { supported: false, config } : before(config);
    });
    const clip = await annotated(page, 'h264-b-frames.mp4', 12);
    if (clip === 'ended' || 'code' in clip) throw new Error(JSON.stringify(clip));
    expect(clip.fileName).toBe('h264-b-frames-with-lines.webm');
    expect(clip.written.rgb.map(numberOf)).toEqual(clip.original.rgb.map(numberOf));
    // That container counts whole milliseconds.
    clip.written.timesS.forEach((s, i) => {
      expect(Math.abs(s - (clip.original.timesS[i] ?? 0))).toBeLessThanOrEqual(0.00051);
    });
  });

  test('what cannot be written is told, and an abort ends it', async ({ page }) => {
    expect(await annotated(page, 'h264-b-frames.mp4', 12, 3)).toBe('ended');
    await openHarness(page);
    await page.evaluate(() => {
      VideoEncoder.isConfigSupported = async (config) => ({ supported: false, config });
    });
    expect(await annotated(page, 'h264-b-frames.mp4', 12)).toEqual({ code: 'annotated-clip/cannot-encode' });
    await openHarness(page);
    await page.evaluate(() => {
      VideoEncoder.prototype.encode = () => {
        throw new DOMException('No room', 'OperationError');
      };
    });
    expect(await annotated(page, 'h264-b-frames.mp4', 12)).toEqual({
      code: 'annotated-clip/encoder-stopped',
    });
  });
});
