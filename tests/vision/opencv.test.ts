import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { asOpencv } from '../../src/vision/opencv.ts';
import { withOpencv } from '../../src/vision/with-opencv.ts';
import { nodeOpencv } from './node-opencv.ts';

const version = (name: string) =>
  JSON.parse(readFileSync(`node_modules/@opencvjs/${name}/package.json`, 'utf8')).version;

test('page and tests use the same version of OpenCV', () => {
  expect(version('web')).toBe(version('node'));
});

test('every part of OpenCV that is used exists when it runs', async () => {
  expect(await nodeOpencv()).toHaveProperty('Mat');
});

test('a part that is missing is named', () => {
  const started = asOpencv({ Mat: class {} });
  expect(started.ok).toBe(false);
  if (started.ok || started.failure.code !== 'vision/parts-missing') return;
  expect(started.failure.names).toContain('aruco_ArucoDetector');
  expect(started.failure.names).not.toContain('Mat');
});

test('what was kept is deleted in the end, the last first, also after a throw', async () => {
  const cv = await nodeOpencv();
  const deleted: string[] = [];
  const held = (name: string) => ({ delete: () => deleted.push(name) });
  expect(
    withOpencv(cv, (keep) => {
      keep(held('first'));
      keep(held('second'));
      return 7;
    }),
  ).toEqual({ ok: true, value: 7 });
  expect(deleted).toEqual(['second', 'first']);
  expect(() =>
    withOpencv(cv, (keep) => {
      keep(held('third'));
      throw new Error('a mistake of ours');
    }),
  ).toThrow('a mistake of ours');
  expect(deleted).toEqual(['second', 'first', 'third']);
});

test('what OpenCV throws becomes a failure with its words', async () => {
  const cv = await nodeOpencv();
  const result = withOpencv(cv, (keep) => {
    const settings = keep(new cv.aruco_DetectorParameters());
    const dictionary = keep(cv.getPredefinedDictionary(cv.DICT_4X4_50));
    const refine = keep(new cv.aruco_RefineParameters(10, 0, true));
    const detector = keep(new cv.aruco_ArucoDetector(dictionary, settings, refine));
    detector.detectMarkers(keep(new cv.Mat()), keep(new cv.MatVector()), keep(new cv.Mat()));
  });
  expect(result).toMatchObject({ ok: false, failure: { code: 'vision/opencv-failed' } });
  if (result.ok || result.failure.code !== 'vision/opencv-failed') return;
  expect(result.failure.text).toMatch(/empty/);
});
