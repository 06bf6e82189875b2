import { expect, test } from 'vitest';
import {
  createTrialsStore,
  type TrialsMessage,
  type TrialsShare,
} from '../../../src/app/measuring/trials-store.ts';
import { USUAL_TRIALS } from '../../../src/measurement/monte-carlo-joined.ts';
import { simulate } from '../../simulation/scene.ts';

const { input } = simulate({ seed: 1, reference: 'tape', sigmaPx: 1 });
const UNSOLVED = { ok: false, failure: { code: 'measurement/no-solution' } } as const;

/** As many trials as were asked, of which the last few are lost. */
function drawn({ from, to }: TrialsShare, lost = 0): TrialsMessage {
  const values = Float64Array.from({ length: to - from - lost }, (_, i) => 40 + ((from + i) % 11));
  const stated = { value: 45, u: 3, U95: 6, budget: [] };
  const none = { freeStrokeMm: null, armAngleReleasedRad: null, armAngleAppliedRad: null };
  return {
    drawn: { ok: true, value: { asked: to - from, quantities: { strokeMm: { stated, values }, ...none } } },
  };
}

/** As much of a worker as the store uses, and what becomes of it. */
class FakeWorker extends EventTarget {
  readonly asked: TrialsShare[] = [];
  ended = false;
  postMessage(asked: TrialsShare) {
    this.asked.push(asked);
  }
  terminate() {
    this.ended = true;
  }
  says(data: TrialsMessage) {
    this.dispatchEvent(Object.assign(new Event('message'), { data }));
  }
}

const WORKERS = 3;

function started() {
  const workers: FakeWorker[] = [];
  const store = createTrialsStore(() => {
    const worker = new FakeWorker();
    workers.push(worker);
    return worker as unknown as Worker;
  }, WORKERS);
  store.begin(input);
  return { store, workers };
}

test('shares the trials out, tells progress of all and then the answer, and ends its workers', () => {
  const { store, workers } = started();
  const shares = workers.flatMap(({ asked }) => asked);
  expect(shares.map(({ from }) => from)).toEqual([0, 3333, 6667]);
  expect(shares.map(({ to }) => to)).toEqual([3333, 6667, USUAL_TRIALS]);
  expect(store.getState().run).toEqual({ input, done: 0, answer: null });
  workers[0]?.says({ done: 300 });
  workers[2]?.says({ done: 200 });
  expect(store.getState().run).toEqual({ input, done: 500, answer: null });
  // In any order.
  for (const i of [2, 0]) workers[i]?.says(drawn(shares[i] as TrialsShare, 1));
  expect(store.getState().run?.answer).toBeNull();
  workers[1]?.says(drawn(shares[1] as TrialsShare));
  expect(store.getState().run?.answer).toMatchObject({ ok: true, value: { asked: USUAL_TRIALS, lost: 2 } });
  expect(workers.map(({ ended }) => ended)).toEqual([true, true, true]);
});

test('what cannot be measured is told as soon as one worker says so', () => {
  const { store, workers } = started();
  workers[1]?.says({ drawn: UNSOLVED });
  expect(store.getState().run?.answer).toEqual(UNSOLVED);
  expect(workers.map(({ ended }) => ended)).toEqual([true, true, true]);
});

test('dropped, it is gone and its workers ended', () => {
  const { store, workers } = started();
  store.drop();
  expect(store.getState().run).toBeNull();
  expect(workers.every(({ ended }) => ended)).toBe(true);
});

test('another one ends the one before', () => {
  const { store, workers } = started();
  const other = { ...input, cameraStill: true };
  store.begin(other);
  expect(workers.map(({ ended }) => ended)).toEqual([true, true, true, false, false, false]);
  expect(store.getState().run?.input).toBe(other);
});
