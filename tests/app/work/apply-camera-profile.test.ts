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

test('another takes its place, none takes it out, and the record keeps no camera that nothing uses', () => {
  const another = choose(choose(recordWithPair(), profile('a')), profile('b'));
  expect(another.cameraProfiles).toEqual([profile('b')]);
  expect(used(another)).toEqual(profile('b'));
  const none = choose(another, null);
  expect(none.cameraProfiles).toEqual([]);
  expect(used(none)).toBeNull();
  expect(openRecord(recordText(none)).ok).toBe(true);
});

test('what another measurement uses stays in the record', () => {
  const one = choose(recordWithPair(), profile('a'));
  const [wheelEnd] = one.wheelEnds;
  const [measurement] = wheelEnd?.measurements ?? [];
  if (!wheelEnd || !measurement) throw new Error('no measurement');
  const second = { ...measurement, id: 'second', cameraProfileId: 'a' };
  const two = { ...one, wheelEnds: [{ ...wheelEnd, measurements: [measurement, second] }] };
  expect(choose(two, null).cameraProfiles).toEqual([profile('a')]);
});
