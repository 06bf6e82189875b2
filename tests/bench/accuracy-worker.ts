/** A worker of the study: runs the cases it is sent, one batch at a time. */
import { parentPort } from 'node:worker_threads';
import { runCase } from './accuracy-case.ts';
import type { Batch } from './accuracy-pool.ts';

const port = parentPort;
if (!port) throw new Error('Not started as a worker');
port.on('message', ({ cell, seeds, strokesMm }: Batch) => {
  port.postMessage(seeds.map((seed, i) => runCase(cell, seed, strokesMm?.[i])));
});
