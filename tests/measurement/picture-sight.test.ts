import { expect, test } from 'vitest';
import { measure } from '../../src/measurement/measure.ts';
import { pictureFaults } from '../../src/measurement/picture-faults.ts';
import { simulate } from '../simulation/scene.ts';

/** Without scatter the pin's visible end stands 22 mm before the rod (tests/simulation/wheel-end.ts), the tape 15 mm (held.ts). */
const APART_MM = 7;

const base = {
  reference: 'tape+band',
  seed: 3,
  hand: 1,
  widthPx: 1920,
  heightPx: 1080,
  sigmaPx: 0.25,
  noisePx: 0,
  typical: true,
  distortion: false,
  rodMarks: true,
  uBandMm: 0.3,
  rimPoints: 40,
  distanceMm: [560, 600],
} as const;

test('off square and the reference apart from the pin are as simulated', () => {
  for (const offSquareDeg of [5, 25]) {
    const scene = simulate({ ...base, offSquareDeg });
    const measured = measure(scene.input);
    if (!measured.ok) throw new Error(measured.failure.code);
    for (const [i, sight] of measured.value.sights.entries()) {
      const pose = scene.poses[i];
      if (!pose) throw new Error('no pose');
      const [ex, ey, ez] = [0, 1, 2].map((axis) =>
        pose.rows.reduce((sum, row, j) => sum - (row[axis] as number) * (pose.t[j] as number), 0),
      ) as [number, number, number];
      const along = scene.truth.releasedReachMm + i * scene.truth.strokeMm;
      const truth = Math.atan2(Math.hypot(ex - along / 2, ey), Math.abs(ez));
      expect(Math.abs(sight.offSquareRad - truth)).toBeLessThan(0.05);
      expect(Math.abs((sight.reference?.apartMm ?? 0) - APART_MM)).toBeLessThan(3);
      expect(sight.reference?.share).toBeLessThan(1);
    }
  }
});

const good = {
  blur: { leastPx: 1, mostPx: 1.2, alongRad: 0.3 },
  light: { burntShare: 0.02, darkShare: 0.2 },
  glareShare: 0,
  scale: { pxPerMm: 2, known: true },
  sight: { offSquareRad: 0.3, reference: { apartMm: 4, share: 0.2 } },
} as const;
const codes = (seen: Parameters<typeof pictureFaults>[0]) => pictureFaults(seen).map(({ code }) => code);

test('a good picture, or one of which nothing is known, has no fault', () => {
  expect(codes(good)).toEqual([]);
  expect(codes({ blur: null, light: null, glareShare: null, scale: null, sight: null })).toEqual([]);
});

test('each fault is named by itself', () => {
  expect(codes({ ...good, scale: { pxPerMm: 0.5, known: true } })).toEqual(['picture/far']);
  // Known to a fifth only: not called far so near to the limit.
  expect(codes({ ...good, scale: { pxPerMm: 1.5, known: true } })).toEqual(['picture/far']);
  expect(codes({ ...good, scale: { pxPerMm: 1.5, known: false } })).toEqual([]);
  expect(codes({ ...good, blur: { leastPx: 3, mostPx: 3.4, alongRad: 0 } })).toEqual(['picture/blurred']);
  expect(codes({ ...good, blur: { leastPx: 1, mostPx: 3.4, alongRad: 0 } })).toEqual(['picture/smeared']);
  expect(codes({ ...good, light: { burntShare: 0.5, darkShare: 0 } })).toEqual(['picture/burnt']);
  expect(codes({ ...good, light: { burntShare: 0, darkShare: 0.7 } })).toEqual(['picture/dark']);
  expect(codes({ ...good, glareShare: 0.4 })).toEqual(['picture/glare']);
  expect(codes({ ...good, sight: { offSquareRad: 0.7, reference: null } })).toEqual(['picture/off-square']);
  const apart = { offSquareRad: 0, reference: { apartMm: 40, share: 0.6 } };
  expect(codes({ ...good, sight: apart })).toEqual(['picture/reference-apart']);
});
