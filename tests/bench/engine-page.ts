/** Times the engine in workers of a page in headless Chromium. */
import { existsSync } from 'node:fs';
import { chromium } from '@playwright/test';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { USUAL_TRIALS } from '../../src/measurement/monte-carlo-joined.ts';
import { workerCode } from './engine-bundle.ts';
import type { Timing } from './engine-timing.ts';
import type { TimingTask } from './engine-worker.ts';

const DEBIAN_CHROMIUM = '/usr/bin/chromium';

export type TimingPage = {
  /** Each task in a fresh worker. */
  readonly time: (task: TimingTask) => Promise<Timing>;
  /** The usual trials, shared out among fresh workers as the app does: time elapsed from the first worker's start, ms. */
  readonly trialsMs: (input: MeasureInput) => Promise<number>;
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
    trialsMs: (input) =>
      page.evaluate(
        async ({ source, message, trials }) => {
          const url = URL.createObjectURL(new Blob([source], { type: 'text/javascript' }));
          const count = Math.min(4, navigator.hardwareConcurrency);
          const begin = performance.now();
          const shares = Array.from({ length: count }, (_, i) => ({
            input: message,
            from: Math.round((i * trials) / count),
            to: Math.round(((i + 1) * trials) / count),
          }));
          await Promise.all(
            shares.map(
              (share) =>
                new Promise<void>((resolve, reject) => {
                  const worker = new Worker(url);
                  worker.onmessage = () => {
                    worker.terminate();
                    resolve();
                  };
                  worker.onerror = ({ message: text }) => reject(new Error(text));
                  worker.postMessage(share);
                }),
            ),
          );
          return performance.now() - begin;
        },
        { source: code, message: input, trials: USUAL_TRIALS },
      ),
    close: () => browser.close(),
  };
}
