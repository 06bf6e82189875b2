/** One of the bench's modules with all that it imports, as the page's own code is bundled. */
import { fileURLToPath } from 'node:url';
import { build, type Rolldown } from 'vite';
import type { timingOf, trialsTimesMs } from './engine-timing.ts';

export type NodeTiming = {
  readonly timingOf: typeof timingOf;
  readonly trialsTimesMs: typeof trialsTimesMs;
};

/** For a classic worker. */
export function workerCode(): Promise<string> {
  return bundled('engine-worker.ts', 'iife');
}

/** Unbundled, the loader of TypeScript wraps every function for its name's sake, and that is timed too. */
export async function bundledTiming(): Promise<NodeTiming> {
  const code = await bundled('engine-timing.ts', 'es');
  return import(`data:text/javascript;base64,${Buffer.from(code).toString('base64')}`);
}

async function bundled(file: string, format: 'iife' | 'es'): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'warn',
    build: {
      write: false,
      target: 'es2022',
      rollupOptions: {
        input: fileURLToPath(new URL(`./${file}`, import.meta.url)),
        preserveEntrySignatures: 'strict',
        output: { format },
      },
    },
  });
  const { output } = (Array.isArray(built) ? built[0] : built) as Rolldown.RolldownOutput;
  return output[0].code;
}
