import { expect, test, vi } from 'vitest';
import { createRecheckStore } from '../../../src/app/recheck/recheck-store.ts';

/** As much of a worker as the store uses. */
class FakeWorker extends EventTarget {
  postMessage() {}
  terminate() {}
}

const FILE = new File(['PK'], 'package.zip');
const FOUND = { holds: true };

function opened() {
  const workers: FakeWorker[] = [];
  const store = createRecheckStore(() => {
    const worker = new FakeWorker();
    workers.push(worker);
    return worker as unknown as Worker;
  });
  const looks = [store.open(FILE)];
  const says = (event: Event) => workers.at(-1)?.dispatchEvent(event);
  const answers = () => says(Object.assign(new Event('message'), { data: FOUND }));
  return { store, looks, says, answers };
}

test('roots chosen while others are looked at do not leave the package as broken', async () => {
  const { store, looks, answers } = opened();
  looks.push(store.trust([]), store.trust([]));
  answers();
  await Promise.all(looks);
  expect(store.getState()).toMatchObject({ file: FILE, recheck: FOUND, isBroken: false });
});

test('a look that breaks is told, and the next one that answers takes it back', async () => {
  const reported = vi.fn();
  vi.stubGlobal('reportError', reported);
  const { store, looks, says, answers } = opened();
  says(Object.assign(new Event('error'), { message: 'out of memory' }));
  await Promise.all(looks);
  expect(store.getState().isBroken).toBe(true);
  expect(reported).toHaveBeenCalledOnce();
  looks.push(store.trust([]));
  answers();
  await Promise.all(looks);
  expect(store.getState()).toMatchObject({ recheck: FOUND, isBroken: false });
  vi.unstubAllGlobals();
});
