/** Batches of cases shared out among worker threads; results in the order of the batches. */
import { Worker } from 'node:worker_threads';
import type { Case } from './accuracy-case.ts';
import type { Cell } from './accuracy-cells.ts';

export type Batch = {
  readonly cell: Cell;
  readonly seeds: readonly number[];
  /** True strokes, where they are not to be drawn. */
  readonly strokesMm?: readonly number[];
};

export const BATCH_SIZE = 25;

export type Pool = {
  readonly run: (batches: readonly Batch[]) => Promise<readonly Case[]>;
  readonly close: () => Promise<void>;
};

/** A worker thread of Node 20 does not inherit the loader of TypeScript. */
const BOOT = `
  const { workerData } = require('node:worker_threads');
  import('tsx/esm/api').then(({ register }) => { register(); return import(workerData); });
`;

export function openPool(workerCount: number): Pool {
  const workers = Array.from(
    { length: workerCount },
    () => new Worker(BOOT, { eval: true, workerData: new URL('./accuracy-worker.ts', import.meta.url).href }),
  );
  const one = (worker: Worker, batch: Batch) =>
    new Promise<readonly Case[]>((resolve, reject) => {
      worker.once('message', (cases: readonly Case[]) => {
        worker.off('error', reject);
        resolve(cases);
      });
      worker.once('error', reject);
      worker.postMessage(batch);
    });
  return {
    run: async (batches) => {
      const results: (readonly Case[])[] = [];
      let next = 0;
      const work = async (worker: Worker): Promise<void> => {
        while (next < batches.length) {
          const at = next++;
          results[at] = await one(worker, batches[at] as Batch);
        }
      };
      await Promise.all(workers.map(work));
      return results.flat();
    },
    close: async () => {
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}

/** Seeds from a first one on, cut into batches. */
export function batchesOf(
  cell: Cell,
  firstSeed: number,
  count: number,
  strokeMm?: (seed: number) => number,
): readonly Batch[] {
  const batches: Batch[] = [];
  for (let from = 0; from < count; from += BATCH_SIZE) {
    const seeds = Array.from({ length: Math.min(BATCH_SIZE, count - from) }, (_v, i) => firstSeed + from + i);
    batches.push({ cell, seeds, ...(strokeMm ? { strokesMm: seeds.map(strokeMm) } : {}) });
  }
  return batches;
}
