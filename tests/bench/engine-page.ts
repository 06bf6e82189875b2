/** Times the engine in workers of a page in headless Chromium. */
import { existsSync } from 'node:fs';
import { chromium } from '@playwright/test';
import { workerCode } from './engine-bundle.ts';
import type { Timing } from './engine-timing.ts';
import type { TimingTask } from './engine-worker.ts';

const DEBIAN_CHROMIUM = '/usr/bin/chromium';

export type TimingPage = {
  /** Each task in a fresh worker. */
  readonly time: (task: TimingTask) => Promise<Timing>;
  readonly close: () => Promise<void>;
};

export async function openTimingPage(): Promise<TimingPage> {
  const code = await workerCode();
  const executablePath = process.env.CHROMIUM ?? (existsSync(DEBIAN_CHROMIUM) ? DEBIAN_CHROMIUM : undefined);
  const browser = await chromium.launch({
    ...(executablePath ? { executablePath } : {}),
    args: ['--no-sandbox', '--disable-background-networking', '--no-first-run'],
  });
  const page = await browser.newPage();
  return {
    time: (task) =>
      page.evaluate(
        ({ source, message }) =>
          new Promise<Timing>((resolve, reject) => {
            const worker = new Worker(URL.createObjectURL(new Blob([source], { type: 'text/javascript' })));
            worker.onmessage = ({ data }) => {
              worker.terminate();
              resolve(data);
            };
            worker.onerror = ({ message: text }) => reject(new Error(text));
            worker.postMessage(message);
          }),
        { source: code, message: task },
      ),
    close: () => browser.close(),
  };
}
