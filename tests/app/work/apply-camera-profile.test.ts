import { expect, test } from 'vitest';
import { applyAction } from '../../../src/app/work/apply-action.ts';
import type { CameraProfile } from '../../../src/captures/camera-profile.ts';
import { openRecord } from '../../../src/record/open-record.ts';
import { measureInput } from '../../../src/record/results.ts';
import { recordText } from '../../../src/record/save-record.ts';
import { recordWithPair, TARGET } from './sample.ts';

const profile = (id: string): CameraProfile => ({
  ...{ id, name: `Camera ${id}`, madeAt: '2026-11-25T12:00:00.000Z', widthPx: 4000, heightPx: 3000 },
  ...{ focalPx: 3100, uLnFocal: 0.001, cxPx: 2000, cyPx: 1500, uCxPx: 1, uCyPx: 1 },
  ...{ k1: 0.02, uK1: 0.001, k2: -0.03, uK2: 0.002, rmsPx: 0.2, photoCount: 10, cornerCount: 500 },
});

const choose = (record: ReturnType<typeof recordWithPair>, chosen: CameraProfile | null) =>
  applyAction(record, TARGET, { type: 'set-camera-profile', profile: chosen });

const used = (record: ReturnType<typeof recordWithPair>) => {
  const measurement = record.wheelEnds[0]?.measurements[0];
  if (!measurement) throw new Error('no measurement');
  return measureInput(record, measurement).cameraProfile;
};

test('a chosen camera goes into the record, which opens again, and into the measurement', () => {
  const before = recordWithPair();
  const text = recordText(before);
  const chosen = choose(before, profile('a'));
  expect(recordText(before)).toBe(text);
  const opened = openRecord(recordText(chosen));
  if (!opened.ok) throw new Error(JSON.stringify(opened.failure));
  expect(used(opened.value)).toEqual(profile('a'));
});

test('another takes its place, none takes it out of the measurement; the record keeps what it held', () => {
  const another = choose(choose(recordWithPair(), profile('a')), profile('b'));
  expect(used(another)).toEqual(profile('b'));
  const none = choose(another, null);
  expect(used(none)).toBeNull();
  expect(none.cameraProfiles).toEqual([profile('a'), profile('b')]);
  expect(openRecord(recordText(none)).ok).toBe(true);
  expect(used(choose(none, profile('a')))).toEqual(profile('a'));
});

test('one that the record holds already is not taken in twice', () => {
  const twice = choose(choose(recordWithPair(), profile('a')), profile('a'));
  expect(twice.cameraProfiles).toEqual([profile('a')]);
});
