/** Follows study clips in headless Chromium by the page's own worker, and decodes them alone for comparison. */
import { existsSync, readFileSync } from 'node:fs';
import { type Browser, chromium, type Page } from '@playwright/test';
import { createServer } from 'vite';
import { splitOpencv } from '../../.run/vite-opencv.ts';
import { followPlan } from '../../src/app/following/follow-plan.ts';
import { trackOf } from '../../src/app/following/track-of.ts';
import type { Track } from '../../src/marks/track.ts';
import { type StudyClip, seedView } from './tracking-clip.ts';
import type { TrackingBench } from './tracking-page/page.ts';

declare const bench: TrackingBench;

export type PageRun = {
  readonly track: Track;
  readonly ticksPerSecond: number;
  readonly startS: number;
  readonly decodePerS: number;
  readonly followPerS: number;
  /** Of all the browser's processes together, at most: while decoding alone, while following. */
  readonly decodeMb: number;
  readonly followMb: number;
};

const DEBIAN_CHROMIUM = '/usr/bin/chromium';

export async function openTrackingPage() {
  const server = await createServer({
    configFile: false,
    root: process.cwd(),
    cacheDir: 'node_modules/.vite-harness-tracking',
    logLevel: 'error',
    plugins: [splitOpencv()],
    server: { host: '127.0.0.1', port: 0, hmr: false, watch: null },
    optimizeDeps: { noDiscovery: true, include: ['mediabunny', 'hash-wasm', 'zod', 'idb'] },
  });
  await server.listen();
  const address = server.httpServer?.address();
  if (!address || typeof address === 'string') throw new Error('The server has no port');
  const url = `http://127.0.0.1:${address.port}/tests/bench/tracking-page/index.html`;
  const executablePath = process.env.CHROMIUM ?? (existsSync(DEBIAN_CHROMIUM) ? DEBIAN_CHROMIUM : undefined);
  const browser = await chromium.launch({
    ...(executablePath ? { executablePath } : {}),
    args: ['--no-sandbox', '--disable-background-networking', '--no-first-run'],
  });
  return {
    run: (clip: StudyClip) => inFreshPage(browser, url, (page) => runClip(browser, page, clip)),
    close: async () => {
      await browser.close();
      await server.close();
    },
  };
}

async function inFreshPage<T>(browser: Browser, url: string, use: (page: Page) => Promise<T>): Promise<T> {
  const page = await browser.newPage();
  try {
    await page.goto(url);
    await page.waitForFunction(() => 'bench' in globalThis);
    return await use(page);
  } finally {
    await page.close();
  }
}

async function runClip(
  browser: Browser,
  page: Page,
  clip: StudyClip,
): Promise<PageRun | { readonly code: string }> {
  await page.getByLabel('Clip').setInputFiles(clip.file);
  const plan = followPlan(seedView(clip, 0));
  if (!plan) throw new Error('No plan');
  const decoding = await watched(browser, () => page.evaluate(() => bench.decode()));
  const following = await watched(browser, () =>
    page.evaluate(([seed, question]) => bench.follow(seed, question), [
      clip.seedIndex,
      plan.question,
    ] as const),
  );
  const followed = following.answer;
  if ('code' in followed) return followed;
  const seedTicks = followed.seen.timeTicks[clip.seedIndex] ?? 0;
  const track = trackOf('t1', seedView(clip, seedTicks), plan, followed.seen);
  if (!track) throw new Error('No track');
  return {
    track,
    ticksPerSecond: followed.ticksPerSecond,
    startS: followed.startS,
    decodePerS: decoding.answer.frames / decoding.answer.seconds,
    followPerS: (track.timeTicks.length - 1) / followed.followS,
    decodeMb: decoding.mostMb,
    followMb: following.mostMb,
  };
}

async function watched<T>(browser: Browser, work: () => Promise<T>) {
  const session = await browser.newBrowserCDPSession();
  let mostMb = 0;
  const look = async () => {
    const { processInfo } = await session.send('SystemInfo.getProcessInfo');
    mostMb = Math.max(
      mostMb,
      processInfo.reduce((sum, { id }) => sum + residentMb(id), 0),
    );
  };
  const timer = setInterval(() => void look().catch(() => undefined), 250);
  try {
    await look();
    return {
      answer: await work(),
      get mostMb() {
        return mostMb;
      },
    };
  } finally {
    clearInterval(timer);
    await session.detach();
  }
}

/** Own pages of the process, without those it shares with the others. */
function residentMb(id: number): number {
  try {
    const [, resident = 0, shared = 0] = readFileSync(`/proc/${id}/statm`, 'utf8').split(' ').map(Number);
    return ((resident - shared) * 4096) / 1e6;
  } catch {
    return 0;
  }
}
