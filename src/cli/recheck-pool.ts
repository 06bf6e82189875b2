/** Many packages shared out among worker threads, each of them this same program; lines in the order of the packages. */
import { Worker } from 'node:worker_threads';
import type { RecheckJob, RecheckLine } from './recheck-file.ts';

/** A worker thread of Node 20 does not inherit the loader of TypeScript; the built file needs none. */
const BOOT = `
  const { workerData } = require('node:worker_threads');
  import('tsx/esm/api').then(({ register }) => { register(); return import(workerData); });
`;

export async function recheckMany(
  program: string,
  jobs: readonly RecheckJob[],
  workerCount: number,
  print: (line: RecheckLine) => void,
): Promise<void> {
  const waiting = new Map<number, RecheckLine>();
  let next = 0;
  let printed = 0;
  const done = (at: number, line: RecheckLine): void => {
    waiting.set(at, line);
    for (let ready = waiting.get(printed); ready; ready = waiting.get(printed)) {
      waiting.delete(printed++);
      print(ready);
    }
  };
  const work = async (): Promise<void> => {
    let worker = startWorker(program);
    while (next < jobs.length) {
      const at = next++;
      const job = jobs[at] as RecheckJob;
      const line = await answerOf(worker, job);
      done(at, line ?? { package: job.path, holds: false, notRechecked: 'the recheck broke off' });
      if (!line) worker = startWorker(program);
    }
    await worker.terminate();
  };
  await Promise.all(Array.from({ length: workerCount }, work));
}

function startWorker(program: string): Worker {
  return program.endsWith('.ts')
    ? new Worker(BOOT, { eval: true, workerData: program })
    : new Worker(new URL(program));
}

/** Null: the thread died of the package, as it may of memory. */
function answerOf(worker: Worker, job: RecheckJob): Promise<RecheckLine | null> {
  return new Promise((resolve) => {
    const settle = (line: RecheckLine | null): void => {
      worker.off('message', settle).off('error', died).off('exit', died);
      resolve(line);
    };
    const died = (): void => settle(null);
    worker.on('message', settle).on('error', died).on('exit', died);
    worker.postMessage(job);
  });
}
