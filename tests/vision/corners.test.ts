/** Against OpenCV's goodFeaturesToTrack, a general library's. */
import { loadOpenCV } from '@opencvjs/node';
import { expect, test } from 'vitest';
import { binned } from '../../src/vision/binned.ts';
import { corners } from '../../src/vision/corners.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { AT_REST, scenePicture } from './follow-scene.ts';

const WANTED = { most: 600, leastShare: 0.0005, apartPx: 6 };
const picture = scenePicture([AT_REST], 2, 11);

async function theirs({ widthPx, heightPx, values }: Gray): Promise<readonly (readonly [number, number])[]> {
  const cv = await loadOpenCV();
  const from = new cv.Mat(heightPx, widthPx, cv.CV_8UC1);
  const found = new cv.Mat();
  try {
    from.data.set(values);
    cv.goodFeaturesToTrack(from, found, WANTED.most, WANTED.leastShare, WANTED.apartPx);
    return Array.from({ length: found.rows }, (_, i) => [
      (found.data32F[2 * i] ?? 0) + 0.5,
      (found.data32F[2 * i + 1] ?? 0) + 0.5,
    ]);
  } finally {
    from.delete();
    found.delete();
  }
}

test.each([
  ['a wheel end', picture],
  ['a part of it, whose corners lie at the rim', cut(picture, 530, 250, 200, 120)],
])('%s: the same corners as OpenCV finds, in the same order', async (_, gray) => {
  const found = corners(gray, WANTED);
  expect(found.length).toBeGreaterThan(100);
  expect(found).toEqual(await theirs(gray));
});

test('an even picture has none; no two are nearer than asked, however many there are', () => {
  const even = { widthPx: 60, heightPx: 40, values: new Uint8Array(2400).fill(90) };
  expect(corners(even, WANTED)).toEqual([]);
  const apart = corners(picture, { ...WANTED, most: 200, apartPx: 30 });
  const nearest = apart.flatMap(([x, y], i) => apart.slice(0, i).map(([u, v]) => Math.hypot(x - u, y - v)));
  expect(apart.length).toBeGreaterThan(50);
  expect(Math.min(...nearest)).toBeGreaterThanOrEqual(30);
});

test('squares of pixels are as bright as their mean', () => {
  const values = Uint8Array.from([10, 20, 7, 30, 41, 7, 1, 2, 3]);
  expect(binned({ widthPx: 3, heightPx: 3, values }, 2)).toEqual({
    widthPx: 1,
    heightPx: 1,
    values: Uint8Array.from([25]),
  });
});

function cut({ widthPx, values }: Gray, left: number, top: number, wide: number, high: number): Gray {
  const rows = Array.from({ length: high }, (_, row) => {
    const from = (top + row) * widthPx + left;
    return [...values.subarray(from, from + wide)];
  });
  return { widthPx: wide, heightPx: high, values: Uint8Array.from(rows.flat()) };
}
