/** The media modules in a real browser: files as cameras and people make them, each with its truth known beforehand. */
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import type { Harness, Seen } from './harness/harness.ts';
import { startMediaServer } from './media-server.ts';

declare const harness: Harness;

const MEDIA = 'tests/fixtures/media/';

/** Middles of the 16 bars, lowest bit first, as make-media.sh draws them; and as ffmpeg's own turn of the clip puts them. */
const BARS = Array.from({ length: 16 }, (_, bit) => [10 + 20 * bit, 45] as const);
const TURNED_BARS = BARS.map(([x, y]) => [y, 320 - x] as const);

let server: Awaited<ReturnType<typeof startMediaServer>>;

test.beforeAll(async () => {
  server = await startMediaServer();
});
test.afterAll(() => server?.stop());
test.beforeEach(({ page }) => openHarness(page));

async function openHarness(page: Page) {
  await page.goto(server.url);
  await page.waitForFunction(() => 'harness' in globalThis);
}

async function choose(page: Page, ...names: string[]) {
  await page.getByLabel('Files').setInputFiles(names.map((name) => `${MEDIA}${name}`));
}

async function captureOf(page: Page, name: string) {
  await choose(page, name);
  return page.evaluate((chosen) => harness.capture(chosen), name);
}

function numberOf(seen: Seen): number | Seen {
  if (typeof seen === 'string' || 'code' in seen) return seen;
  return seen.rgb.reduce((sum, [red = 0], bit) => sum + (red > 128 ? 2 ** bit : 0), 0);
}

function shown(seen: Seen | undefined) {
  if (!seen || typeof seen === 'string' || 'code' in seen) throw new Error('No picture');
  return seen;
}

const UPRIGHT_FACTS = { widthPx: 320, heightPx: 180, rotationDeg: 0, focal35Mm: null };

const CLIPS = [
  ['h264-b-frames.mp4', UPRIGHT_FACTS, { ticksPerSecond: 15_360, frameCount: 72, framesBy: 'decoder' }],
  ['variable-rate.mp4', UPRIGHT_FACTS, { ticksPerSecond: 30_000, frameCount: 60 }],
  ['cut-at-1-s.mp4', UPRIGHT_FACTS, { ticksPerSecond: 15_360, frameCount: 42 }],
  ['header-time.mp4', UPRIGHT_FACTS, { frameCount: 2, headerTime: '2026-05-04T17:20:30.000Z' }],
  ['wide-pixels.mp4', UPRIGHT_FACTS, { ticksPerSecond: 15_360, frameCount: 15 }],
  ['vp9.webm', UPRIGHT_FACTS, { ticksPerSecond: 1000, frameCount: 45 }],
  ['av1.mp4', UPRIGHT_FACTS, { ticksPerSecond: 15_360, frameCount: 30 }],
  [
    'rotated-90.mov',
    { widthPx: 180, heightPx: 320, rotationDeg: 270, takenAt: '2026-05-04T10:20:30-0700' },
    { ticksPerSecond: 15_360, frameCount: 30 },
  ],
] as const;

test('the facts of a clip are those that ffprobe gives', async ({ page }) => {
  for (const [name, facts, clip] of CLIPS) {
    const bytes = readFileSync(`${MEDIA}${name}`);
    const { capture } = await captureOf(page, name);
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const expected = { kind: 'clip', fileName: name, sizeBytes: bytes.length, sha256, ...facts };
    expect.soft(capture, name).toMatchObject(expected);
    expect.soft(capture?.clip, name).toMatchObject(clip);
  }
});

const REFUSED = [
  ['empty.jpg', { code: 'captures/empty-file' }],
  ['text.jpg', { code: 'captures/not-a-picture', firstBytes: '43686f636b2074686520776865656c73' }],
  ['hevc.mp4', { code: 'captures/codec-not-decoded', codec: 'HEVC (H.265)' }],
  ['sound-only.mp4', { code: 'captures/no-video-track' }],
  ['truncated.mp4', { code: 'captures/damaged', part: 'end' }],
  ['truncated-index-lost.mp4', { code: 'captures/damaged', part: 'index' }],
  ['garbage-data.mp4', { code: 'captures/damaged', part: 'picture' }],
  ['truncated.jpg', { code: 'captures/damaged', part: 'end' }],
  ['truncated.png', { code: 'captures/damaged', part: 'end' }],
  ['truncated.webp', { code: 'captures/damaged', part: 'end' }],
  ['truncated.heic', { code: 'captures/damaged', part: 'end' }],
  ['garbage-data.heic', { code: 'captures/damaged', part: 'picture' }],
  ['garbage-tables.jpg', { code: 'captures/damaged', part: 'index' }],
  ['huge.png', { code: 'captures/too-many-pixels', widthPx: 30_000, heightPx: 30_000 }],
] as const;

test('what is no whole picture that can be shown here is refused with its reason', async ({ page }) => {
  for (const [name, failure] of REFUSED)
    expect.soft((await captureOf(page, name)).failure, name).toMatchObject(failure);
});

for (const [name, points, firstNumber] of [
  ['h264-b-frames.mp4', BARS, 0],
  ['variable-rate.mp4', BARS, 0],
  ['rotated-90.mov', TURNED_BARS, 0],
  ['cut-at-1-s.mp4', BARS, 30],
  ['wide-pixels.mp4', BARS, 0],
  ['vp9.webm', BARS, 0],
  ['av1.mp4', BARS, 0],
] as const) {
  test(`every frame of ${name} is itself, forwards, backwards and at random`, async ({ page }) => {
    const { capture } = await captureOf(page, name);
    const count = capture?.clip?.frameCount ?? 0;
    const forwards = Array.from({ length: count }, (_, index) => index);
    // 29 has no factor in common with any of the counts, so that this visits every frame once in leaps.
    const leaps = forwards.map((k) => (k * 29 + 7) % count);
    const order = [...forwards, ...forwards.toReversed(), ...leaps];
    const { seen, frames } = await page.evaluate(
      ([chosen, indices, at]) => harness.pictures(chosen, indices, at),
      [name, order, points] as const,
    );
    expect(frames.map(({ index }) => index)).toEqual(forwards);
    expect(new Set(leaps).size).toBe(count);
    expect(seen.map(numberOf)).toEqual(order.map((index) => index + firstNumber));
  });
}

test('a browser that decodes no frames shows them by its player: each is itself, or none', async ({
  page,
}) => {
  await page.evaluate(() => Reflect.deleteProperty(globalThis, 'VideoDecoder'));
  for (const [name, order, first] of [
    ['h264-b-frames.mp4', [0, 1, 40, 71, 39, 40], 0],
    ['cut-at-1-s.mp4', [0, 20, 41], 30],
  ] as const) {
    const { capture } = await captureOf(page, name);
    expect(capture?.clip?.frameCount).toBe(order.includes(71 as never) ? 72 : 42);
    expect(capture?.clip?.framesBy).toBe('player');
    const { seen, liveAfterClose } = await page.evaluate(
      ([chosen, indices, at]) => harness.pictures(chosen, indices, at),
      [name, order, BARS] as const,
    );
    expect(seen.map(numberOf)).toEqual(order.map((index) => index + first));
    expect(liveAfterClose).toEqual({ videoFrames: 0, bitmaps: 0 });
  }
  expect((await captureOf(page, 'hevc.mp4')).failure).toMatchObject({
    code: 'captures/codec-not-decoded',
    codec: 'HEVC (H.265)',
  });
});

test('frames carry the times of the packets, not those of a frame rate', async ({ page }) => {
  await choose(page, 'variable-rate.mp4', 'vp9.webm');
  const ticks = async (name: string) =>
    (await page.evaluate((chosen) => harness.pictures(chosen, [], []), name)).frames.map(
      ({ timeTicks }) => timeTicks,
    );
  const madeOf = (n: number) => (n + 2 * Math.floor(n / 5)) * 1000;
  expect(await ticks('variable-rate.mp4')).toEqual(Array.from({ length: 60 }, (_, n) => madeOf(n)));
  expect(await ticks('vp9.webm')).toEqual(Array.from({ length: 45 }, (_, n) => Math.round((n * 1000) / 30)));
});

test('a clip turned by its metadata stands as ffmpeg shows it', async ({ page }) => {
  await choose(page, 'rotated-90.mov');
  const { seen } = await page.evaluate(() =>
    harness.pictures(
      'rotated-90.mov',
      [0],
      [
        [135, 317],
        [135, 243],
        [135, 237],
        [135, 3],
        [93, 280],
        [87, 280],
      ],
    ),
  );
  const picture = shown(seen[0]);
  expect(picture).toMatchObject({ widthPx: 180, heightPx: 320 });
  const tones = picture.rgb.map(([red = 0]) => (red > 200 ? 'white' : red > 50 ? 'gray' : 'black'));
  expect(tones).toEqual(['white', 'white', 'gray', 'gray', 'white', 'black']);
});

test('of many requests at once the newest is answered and the others end', async ({ page }) => {
  await choose(page, 'h264-b-frames.mp4');
  const asked = [3, 60, 12, 71, 0, 33, 34, 18];
  const { seen, liveAfterClose } = await page.evaluate(
    ([indices, at]) => harness.rush('h264-b-frames.mp4', indices, at),
    [asked, BARS] as const,
  );
  expect(seen.map(numberOf)).toEqual([...asked.slice(1).map(() => 'ended'), 18]);
  expect(liveAfterClose).toEqual({ videoFrames: 0, bitmaps: 0 });
});

test('what is decoded stays bounded while a clip is walked, and nothing is left after closing', async ({
  page,
}) => {
  await choose(page, 'h264-b-frames.mp4', 'exif-6.jpg');
  const walk = [...Array(72).keys(), ...[...Array(72).keys()].reverse()];
  const clip = await page.evaluate((order) => harness.pictures('h264-b-frames.mp4', order, []), walk);
  expect(clip.liveBeforeClose.bitmaps).toBe(12);
  expect(clip.liveBeforeClose.videoFrames).toBeLessThan(30);
  expect(clip.liveAfterClose).toEqual({ videoFrames: 0, bitmaps: 0 });
  const photo = await page.evaluate(() => harness.pictures('exif-6.jpg', [null, null, null], []));
  expect(photo.liveBeforeClose.bitmaps).toBe(1);
  expect(photo.liveAfterClose).toEqual({ videoFrames: 0, bitmaps: 0 });
});

test('a look at single frames of a clip decodes none after them, and holds none', async ({ page }) => {
  await page.addInitScript(() => {
    globalThis.VideoDecoder = class extends VideoDecoder {
      override decode(chunk: EncodedVideoChunk) {
        Object.assign(globalThis, { given: Number(Reflect.get(globalThis, 'given') ?? 0) + 1 });
        super.decode(chunk);
      }
    };
  });
  await openHarness(page);
  const { capture } = await captureOf(page, 'h264-b-frames.mp4');
  expect(capture?.clip?.frameCount).toBe(72);
  const given = () => page.evaluate(() => Number(Reflect.get(globalThis, 'given')));
  const before = await given();
  const { liveBeforeClose } = await page.evaluate(() =>
    harness.pictures('h264-b-frames.mp4', [40, 5, 60], []),
  );
  expect(liveBeforeClose.videoFrames).toBe(0);
  // From the key frame before each, and what is coded between: B-frames come after the frames that they lean on.
  expect((await given()) - before).toBeLessThan(70);
});

test('aborted and closed requests end; they neither fail nor hang', async ({ page }) => {
  await choose(page, 'h264-b-frames.mp4');
  const ends = await page.evaluate(() => harness.endedRequests('h264-b-frames.mp4'));
  expect(ends).toEqual({ seenAborted: 'ended', closed: 'ended', after: 'ended', opening: 'ended' });
});

test('a frame of another time, and another file, are not taken for the recorded ones', async ({ page }) => {
  await choose(page, 'h264-b-frames.mp4', 'av1.mp4', 'exif-6.jpg');
  expect(await page.evaluate(() => harness.wrongFrame('h264-b-frames.mp4'))).toEqual({
    code: 'frames/no-such-frame',
  });
  const found = await page.evaluate(async () => {
    const { capture } = await harness.capture('h264-b-frames.mp4');
    if (!capture) throw new Error('Not opened');
    const others = ['h264-b-frames.mp4', 'av1.mp4', 'exif-6.jpg'];
    return Promise.all(others.map((name) => harness.openedAs(capture, name)));
  });
  expect(found).toEqual([
    null,
    { code: 'captures/not-the-recorded-file', fact: 'frame-count', recorded: 72, found: 30 },
    { code: 'captures/not-the-recorded-file', fact: 'kind', recorded: 'clip', found: 'photo' },
  ]);
});

test('a decoder that never answers is given up', async ({ page }) => {
  await page.clock.install();
  await page.addInitScript(() => {
    globalThis.VideoDecoder = class extends VideoDecoder {
      override decode() {}
      override async flush() {
        await new Promise(() => {});
      }
    };
  });
  await openHarness(page);
  const capture = captureOf(page, 'h264-b-frames.mp4');
  let settled = false;
  void capture.finally(() => {
    settled = true;
  });
  while (!settled) {
    await page.clock.runFor(1000);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  expect((await capture).failure).toEqual({
    code: 'captures/decoder-stalled',
    mediaType: 'video/mp4',
    limitS: 20,
  });
});

test('a decoder that the browser takes away is replaced, and no frame is lost', async ({ page }) => {
  await page.addInitScript(() => {
    let takenAway = false;
    globalThis.VideoDecoder = class extends VideoDecoder {
      readonly #error: VideoDecoderInit['error'];
      #decoded = 0;
      constructor(init: VideoDecoderInit) {
        super(init);
        this.#error = init.error;
      }
      override decode(chunk: EncodedVideoChunk) {
        this.#decoded += 1;
        if (takenAway || this.#decoded < 30) return super.decode(chunk);
        takenAway = true;
        Object.assign(globalThis, { takenAway });
        this.#error(new DOMException('Codec reclaimed due to inactivity.', 'QuotaExceededError'));
      }
    };
  });
  await openHarness(page);
  await choose(page, 'h264-b-frames.mp4');
  const order = [...Array(72).keys()];
  const { seen } = await page.evaluate(
    ([indices, at]) => harness.pictures('h264-b-frames.mp4', indices, at),
    [order, BARS] as const,
  );
  expect(await page.evaluate(() => 'takenAway' in globalThis)).toBe(true);
  expect(seen.map(numberOf)).toEqual(order);
});

const CORNERS = [
  [16, 12],
  [48, 12],
  [16, 36],
  [48, 36],
] as const;
const COLOURS = ['red', 'green', 'blue', 'white'];

function colour([red = 0, green = 0, blue = 0]: readonly number[]): string {
  const bright = [red > 128, green > 128, blue > 128].join();
  const names: Record<string, string> = {
    'true,false,false': 'red',
    'false,true,false': 'green',
    'false,false,true': 'blue',
    'true,true,true': 'white',
  };
  return names[bright] ?? bright;
}

const PHOTOS = [
  ['exif-1.jpg', 0],
  ['exif-2.jpg', 0],
  ['exif-3.jpg', 180],
  ['exif-4.jpg', 180],
  ['exif-5.jpg', 270],
  ['exif-6.jpg', 90],
  ['exif-7.jpg', 90],
  ['exif-8.jpg', 270],
  ['exif-6.png', 90],
  ['exif-6.webp', 90],
] as const;

test('photos stand upright, with what their EXIF says', async ({ page }) => {
  const read = { kind: 'photo', widthPx: 64, heightPx: 48, focal35Mm: 26, clip: null };
  for (const [name, rotationDeg] of PHOTOS) {
    const { capture } = await captureOf(page, name);
    expect
      .soft(capture, name)
      .toMatchObject({ ...read, rotationDeg, takenAt: '2026:05:04 10:20:30.12-07:00' });
    const { seen } = await page.evaluate(([chosen, at]) => harness.pictures(chosen, [null], at), [
      name,
      CORNERS,
    ] as const);
    const picture = shown(seen[0]);
    expect.soft(picture, name).toMatchObject({ widthPx: 64, heightPx: 48 });
    expect.soft(picture.rgb.map(colour), name).toEqual(COLOURS);
  }
});

test('HEIC is decoded by a file of its own that nothing else fetches', async ({ page }) => {
  const fetched: string[] = [];
  page.on('request', (request) => fetched.push(request.url()));
  const has = (part: string) => fetched.some((url) => url.includes(part));
  await captureOf(page, 'bare.jpg');
  expect(has('mediabunny')).toBe(false);
  await captureOf(page, 'av1.mp4');
  expect(has('mediabunny')).toBe(true);
  expect(has('libheif')).toBe(false);

  await captureOf(page, 'photo.heic');
  expect(has('libheif-bundle.mjs')).toBe(true);
});

test('HEIC and AVIF stand upright by the turn that their container carries', async ({ page }) => {
  for (const [name, facts, colours] of [
    ['photo.heic', { widthPx: 256, heightPx: 192, rotationDeg: 0 }, COLOURS],
    ['photo.avif', { widthPx: 256, heightPx: 192, rotationDeg: 0 }, COLOURS],
    // As heif-convert of Debian's libheif shows it.
    ['turned.heic', { widthPx: 192, heightPx: 256, rotationDeg: 270 }, ['green', 'white', 'red', 'blue']],
  ] as const) {
    const { capture } = await captureOf(page, name);
    expect.soft(capture, name).toMatchObject({ ...facts, focal35Mm: 26 });
    const { widthPx, heightPx } = facts;
    const points = [0.25, 0.75].flatMap((y) => [0.25, 0.75].map((x) => [x * widthPx, y * heightPx] as const));
    const { seen } = await page.evaluate(([chosen, at]) => harness.pictures(chosen, [null], at), [
      name,
      points,
    ] as const);
    expect.soft(shown(seen[0]).rgb.map(colour), name).toEqual(colours);
  }
});

test('a file longer than one piece has the fingerprint that Node gives it', async ({ page }) => {
  const buffer = Buffer.alloc(9 * 2 ** 20 + 17, 'stroke');
  const path = test.info().outputPath('long.bin');
  writeFileSync(path, buffer);
  await page.getByLabel('Files').setInputFiles(path);
  const expected = createHash('sha256').update(buffer).digest('hex');
  expect(await page.evaluate(() => harness.fingerprint('long.bin'))).toBe(expected);
});
