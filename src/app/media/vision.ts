import type { VisionClient } from '../../vision/vision-client.browser.ts';

let client: Promise<VisionClient> | null = null;

/** The page's one way to the vision worker, loaded with the first search: whoever searches nothing never loads it. */
export function vision(): Promise<VisionClient> {
  client ??= clientOf(
    () => new Worker(new URL('../../vision/vision.worker.browser.ts', import.meta.url), { type: 'module' }),
  );
  return client;
}

let atAssists: Promise<VisionClient> | null = null;

/** The assists' own worker: small, and a search that is under way goes on beside it. */
export function assists(): Promise<Pick<VisionClient, 'assist'>> {
  atAssists ??= clientOf(
    () => new Worker(new URL('../../vision/assist.worker.browser.ts', import.meta.url), { type: 'module' }),
  );
  return atAssists;
}

let atSights: Promise<VisionClient> | null = null;

/** What looks at whole pictures as they are opened, beside the assists. */
export function sights(): Promise<Pick<VisionClient, 'quality'>> {
  atSights ??= clientOf(startSight);
  return atSights;
}

let atGuesses: Promise<VisionClient> | null = null;

/** Guesses what a picture shows, in a worker of their own: a newer request ends the one before, and what pictures are like is not to wait. */
export function roughGuesses(): Promise<Pick<VisionClient, 'roughGuess'>> {
  atGuesses ??= clientOf(startSight);
  return atGuesses;
}

const startSight = () =>
  new Worker(new URL('../../vision/sight.worker.browser.ts', import.meta.url), { type: 'module' });

async function clientOf(startWorker: () => Worker): Promise<VisionClient> {
  const { visionClient } = await import('../../vision/vision-client.browser.ts');
  return visionClient(startWorker);
}
