/**
 * npm run bench:robustness: seeded sensible scenes of every reference kind through the engine, sound and then spoiled by what people
 * get wrong; writes docs/robustness.md.
 * Options: --scenes N sound scenes of each kind (default 1000), --spoiled N scenes of each kind and mistake (default 40),
 * --json FILE keeps every outcome.
 */
import { appendFileSync, writeFileSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { REFERENCE_KINDS } from '../simulation/any-scene.ts';
import { MISTAKE_NAMES } from '../simulation/spoiled-scene.ts';
import { robustnessText } from './robustness-text.ts';
import type { Done, Task } from './robustness-worker.ts';

const WORKERS = 2;
/** Away from the seeds that other tests and studies use. */
const FIRST_SEED = 2_000_003;
const FIRST_SPOILED_SEED = 3_000_017;

/** tsx does not reach into a worker by itself. */
const ENTRY = `import('tsx/esm/api').then(({ register }) => {
  register();
  return import(${JSON.stringify(new URL('./robustness-worker.ts', import.meta.url).href)});
});`;

const scenes = given('--scenes', 1000);
const spoiledScenes = given('--spoiled', 40);

const tasks: Task[] = [
  ...REFERENCE_KINDS.flatMap((kind, k) =>
    Array.from({ length: scenes }, (_, i): Task => ({ kind, seed: seedOf(FIRST_SEED, k, i), mistake: null })),
  ),
  ...MISTAKE_NAMES.flatMap((mistake) =>
    REFERENCE_KINDS.flatMap((kind, k) =>
      Array.from(
        { length: spoiledScenes },
        (_, i): Task => ({ kind, seed: seedOf(FIRST_SPOILED_SEED, k, i), mistake }),
      ),
    ),
  ),
];

/** Kinds share no seeds: the same cameras and wheel ends over again would count as many scenes and be few. */
function seedOf(first: number, kindIndex: number, i: number): number {
  return first + 20_000 * kindIndex + i;
}

const shares = Array.from({ length: WORKERS }, (_, w) => tasks.filter((_t, i) => i % WORKERS === w));
const json = process.argv.indexOf('--json');
const jsonFile = json > 0 ? (process.argv[json + 1] ?? null) : null;
const done = (await Promise.all(shares.map(runShare))).flat();
const text = robustnessText(done, { scenes, spoiledScenes });
writeFileSync(new URL('../../docs/robustness.md', import.meta.url), text);
console.log(text);

function runShare(share: readonly Task[]): Promise<readonly Done[]> {
  return new Promise((resolve, reject) => {
    const found: Done[] = [];
    const worker = new Worker(ENTRY, { eval: true, workerData: { tasks: share } });
    worker.on('message', (one: Done | null) => {
      if (!one) return;
      found.push(one);
      if (jsonFile) appendFileSync(jsonFile, `${JSON.stringify(one)}\n`);
    });
    worker.on('error', reject);
    worker.on('exit', () => resolve(found));
  });
}

function given(name: string, otherwise: number): number {
  const at = process.argv.indexOf(name);
  return at > 0 ? Number(process.argv[at + 1]) : otherwise;
}
