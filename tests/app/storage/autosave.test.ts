import { expect, test } from 'vitest';
import { createAutosave } from '../../../src/app/storage/autosave.ts';

type State = { readonly id: string; readonly value: number };

function slowStore() {
  const written: State[] = [];
  const waiting: (() => void)[] = [];
  const autosave = createAutosave<State>(
    ({ id }) => id,
    (state) =>
      new Promise((done) => {
        waiting.push(() => {
          written.push(state);
          done();
        });
      }),
  );
  const finishAll = async () => {
    while (waiting.length > 0) {
      waiting.shift()?.();
      await Promise.resolve();
      await Promise.resolve();
    }
  };
  return { autosave, written, waiting, finishAll };
}

test('writes at once, and while a write runs only the newest of the waiting ones', async () => {
  const { autosave, written, waiting, finishAll } = slowStore();
  for (const value of [1, 2, 3, 4]) autosave.changed({ id: 'a', value });
  expect(waiting).toHaveLength(1);
  await finishAll();
  await autosave.settled();
  expect(written.map(({ value }) => value)).toEqual([1, 4]);
});

test('the last change of one record is not lost to a change of another', async () => {
  const { autosave, written, finishAll } = slowStore();
  autosave.changed({ id: 'a', value: 1 });
  autosave.changed({ id: 'a', value: 2 });
  autosave.changed({ id: 'b', value: 9 });
  await finishAll();
  await autosave.settled();
  expect(written).toEqual([
    { id: 'a', value: 1 },
    { id: 'a', value: 2 },
    { id: 'b', value: 9 },
  ]);
});

test('tells what is not written yet, the one being written included', async () => {
  const { autosave, finishAll } = slowStore();
  autosave.changed({ id: 'a', value: 1 });
  autosave.changed({ id: 'a', value: 2 });
  autosave.changed({ id: 'b', value: 9 });
  expect(autosave.unwritten().map(({ value }) => value)).toEqual([1, 2, 9]);
  await finishAll();
  await autosave.settled();
  expect(autosave.unwritten()).toEqual([]);
});

test('works again after it has been idle', async () => {
  const { autosave, written, finishAll } = slowStore();
  autosave.changed({ id: 'a', value: 1 });
  await finishAll();
  await autosave.settled();
  autosave.changed({ id: 'a', value: 2 });
  await finishAll();
  expect(written).toHaveLength(2);
});
