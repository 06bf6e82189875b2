import { expect, test } from 'vitest';
import { createTrialsStore, type TrialsMessage } from '../../../src/app/measuring/trials-store.ts';
import type { MeasureInput } from '../../../src/measurement/measurement.ts';
import { simulate } from '../../simulation/scene.ts';

const { input } = simulate({ seed: 1, reference: 'tape', sigmaPx: 1 });
const LOST: TrialsMessage = {
  answer: { ok: false, failure: { code: 'monte-carlo/trials-lost', lost: 5, asked: 10 } },
};

/** As much of a worker as the store uses, and what becomes of it. */
class FakeWorker extends EventTarget {
  readonly asked: MeasureInput[] = [];
  ended = false;
  postMessage(asked: MeasureInput) {
    this.asked.push(asked);
  }
  terminate() {
    this.ended = true;
  }
  says(data: TrialsMessage) {
    this.dispatchEvent(Object.assign(new Event('message'), { data }));
  }
}

function started() {
  const workers: FakeWorker[] = [];
  const store = createTrialsStore(() => {
    const worker = new FakeWorker();
    workers.push(worker);
    return worker as unknown as Worker;
  });
  store.begin(input);
  const worker = workers[0];
  if (!worker) throw new Error('no worker');
  return { store, worker, workers };
}

test('tells progress and then the answer, and ends its worker', () => {
  const { store, worker } = started();
  expect(worker.asked).toEqual([input]);
  expect(store.getState().run).toEqual({ input, done: 0, answer: null });
  worker.says({ done: 300 });
  expect(store.getState().run).toEqual({ input, done: 300, answer: null });
  worker.says(LOST);
  expect(store.getState().run).toMatchObject({ ...LOST, done: 300 });
  expect(worker.ended).toBe(true);
});

test('dropped, it is gone and its worker ended', () => {
  const { store, worker } = started();
  store.drop();
  expect(store.getState().run).toBeNull();
  expect(worker.ended).toBe(true);
});

test('another one ends the one before', () => {
  const { store, workers } = started();
  const other = { ...input, cameraStill: true };
  store.begin(other);
  expect(workers.map(({ ended }) => ended)).toEqual([true, false]);
  expect(store.getState().run?.input).toBe(other);
});
