import { expect, test } from 'vitest';
import type { TargetSight } from '../../src/vision/target-sight.ts';
import { visionClient } from '../../src/vision/vision-client.browser.ts';

const SIGHT: TargetSight = { corners: [], missing: [0, 1] };

/** A worker that says what the test lets it say. */
class SpokenFor extends EventTarget {
  tasks: unknown[] = [];
  terminated = false;
  postMessage(task: unknown) {
    this.tasks.push(task);
  }
  terminate() {
    this.terminated = true;
  }
  say(data: unknown) {
    this.dispatchEvent(Object.assign(new Event('message'), { data }));
  }
}

function scene(limits = { startS: 5, taskS: 5 }) {
  const workers: SpokenFor[] = [];
  const client = visionClient(() => {
    const worker = new SpokenFor();
    workers.push(worker);
    return worker as unknown as Worker;
  }, limits);
  const control = new AbortController();
  const find = () => {
    const picture = { closed: false, close: () => Object.assign(picture, { closed: true }) };
    const found = client.findTarget(picture as unknown as ImageBitmap, [], control.signal);
    // Looked at later; until then a rejection is no news.
    found.catch(() => {});
    return { picture, found };
  };
  return { workers, control, find };
}

const soon = () => new Promise((resolve) => setTimeout(resolve, 0));
const started = { ok: true, value: null };

test('one worker starts with the first request and serves the next', async () => {
  const { workers, find } = scene();
  expect(workers).toHaveLength(0);
  for (let times = 1; times <= 2; times++) {
    const { found, picture } = find();
    if (times === 1) workers[0]?.say(started);
    await soon();
    expect(workers[0]?.tasks).toHaveLength(times);
    workers[0]?.say({ ok: true, value: SIGHT });
    expect(await found).toEqual({ ok: true, value: SIGHT });
    expect(picture.closed).toBe(true);
  }
  expect(workers).toHaveLength(1);
  expect(workers[0]?.terminated).toBe(false);
});

test('an abort ends the worker at work, and the next request starts another', async () => {
  const { workers, control, find } = scene();
  const { found, picture } = find();
  workers[0]?.say(started);
  await soon();
  control.abort();
  await expect(found).rejects.toHaveProperty('name', 'AbortError');
  expect(workers[0]?.terminated).toBe(true);
  expect(picture.closed).toBe(true);
  await expect(find().found).rejects.toHaveProperty('name', 'AbortError');
});

test('a newer request ends the older one', async () => {
  const { workers, find } = scene();
  const older = find();
  workers[0]?.say(started);
  await soon();
  const newer = find();
  await expect(older.found).rejects.toHaveProperty('name', 'AbortError');
  expect(workers[0]?.terminated).toBe(true);
  await soon();
  workers[1]?.say(started);
  await soon();
  workers[1]?.say({ ok: true, value: SIGHT });
  expect(await newer.found).toEqual({ ok: true, value: SIGHT });
});

test('a worker that is still starting is left to the newer request', async () => {
  const { workers, find } = scene();
  const older = find();
  await soon();
  const newer = find();
  await expect(older.found).rejects.toHaveProperty('name', 'AbortError');
  workers[0]?.say(started);
  await soon();
  workers[0]?.say({ ok: true, value: SIGHT });
  expect(await newer.found).toEqual({ ok: true, value: SIGHT });
  expect(workers).toHaveLength(1);
});

test('a worker that says nothing is ended, at the start and at a task', async () => {
  const { workers, find } = scene({ startS: 0.02, taskS: 0.01 });
  expect(await find().found).toEqual({ ok: false, failure: { code: 'vision/not-started', limitS: 0.02 } });
  expect(workers[0]?.terminated).toBe(true);
  const { found } = find();
  workers[1]?.say(started);
  expect(await found).toEqual({ ok: false, failure: { code: 'vision/stalled', limitS: 0.01 } });
  expect(workers[1]?.terminated).toBe(true);
});

test('a worker that could not start or that failed is replaced', async () => {
  const { workers, find } = scene();
  const forbidden = { ok: false, failure: { code: 'vision/forbidden' } };
  const first = find();
  workers[0]?.say(forbidden);
  expect(await first.found).toEqual(forbidden);
  const second = find();
  workers[1]?.say(started);
  await soon();
  const failed = { ok: false, failure: { code: 'vision/opencv-failed', text: 'no room' } };
  workers[1]?.say(failed);
  expect(await second.found).toEqual(failed);
  expect(workers.map(({ terminated }) => terminated)).toEqual([true, true]);
});

test('a mistake inside the worker, or an answer of another form, is no failure of the world', async () => {
  const { workers, find } = scene();
  const first = find();
  workers[0]?.dispatchEvent(Object.assign(new Event('error'), { message: 'x is not a function' }));
  await expect(first.found).rejects.toThrow('x is not a function');
  const second = find();
  workers[1]?.say(started);
  await soon();
  workers[1]?.say({ ok: true, value: { corners: 'none' } });
  await expect(second.found).rejects.toThrow();
  expect(workers.map(({ terminated }) => terminated)).toEqual([true, true]);
});
