import { expect, test } from 'vitest';
import { type BoardSighting, createCameraStore } from '../../../src/app/camera/camera-store.ts';

function scene() {
  const store = createCameraStore();
  store.add([new File(['a'], 'a.jpg'), new File(['b'], 'b.jpg')]);
  const closed: string[] = [];
  const sighting = (name: string): BoardSighting => ({
    ...{ widthPx: 40, heightPx: 30, rotationDeg: 0, corners: [] },
    small: { width: 4, height: 3, close: () => closed.push(name) } as unknown as ImageBitmap,
  });
  const idOf = (name: string) => store.getState().photos.find(({ file }) => file.name === name)?.id ?? '';
  const names = () => store.getState().photos.map(({ file }) => file.name);
  return { store, closed, sighting, idOf, names };
}

test('photos wait in the order in which they were chosen; more come after them', () => {
  const { store, names } = scene();
  store.add([new File(['c'], 'a.jpg')]);
  expect(names()).toEqual(['a.jpg', 'b.jpg', 'a.jpg']);
  expect(store.getState().photos.every(({ search }) => search.is === 'waiting')).toBe(true);
  expect(new Set(store.getState().photos.map(({ id }) => id)).size).toBe(3);
});

test('what was found belongs to its photo, and is closed when that is left out', () => {
  const { store, closed, sighting, idOf, names } = scene();
  store.set(idOf('a.jpg'), { is: 'done', sighting: sighting('a') });
  store.set(idOf('b.jpg'), { is: 'done', sighting: sighting('b') });
  store.leaveOut(idOf('a.jpg'));
  expect(names()).toEqual(['b.jpg']);
  expect(closed).toEqual(['a']);
  store.clear();
  expect(names()).toEqual([]);
  expect(closed).toEqual(['a', 'b']);
});
