import { expect, test } from 'vitest';
import { armSight } from '../../src/measurement/arm-sight.ts';
import { clipViews } from '../../src/measurement/clip-views.ts';
import { anyClip } from '../simulation/any-clip.ts';
import { simulateClip } from '../simulation/clip-scene.ts';

test('a frame of the other rest, and the pin in both, as far apart as the stroke', () => {
  const options = anyClip(3, { framesPerS: 30, reference: 'tape', tapeUnmoved: true });
  const { input, track } = simulateClip(options);
  const views = clipViews(input, track);
  if (!views.ok) throw new Error(views.failure.code);
  const sight = armSight({ ...input, ...views.value }, track);
  if (!sight) throw new Error('no sight');
  const { here, there, other } = sight;
  expect(track.timeTicks[other.index - track.firstIndex]).toBe(other.timeTicks);
  const travelMm = Math.abs(there.pinMm[0] - here.pinMm[0]);
  const longestMm = Math.max(...options.course.strokesMm);
  expect(Math.abs(travelMm - longestMm)).toBeLessThan(0.08 * longestMm);
  // The pin's end stands between arm and camshaft's end from the camera: its mark lies near where both planes see the pin.
  const pin = track.points.find(({ kind }) => kind === 'clevis-pin');
  const i = track.seed.index - track.firstIndex;
  const [xPx, yPx] = [(pin?.xCentiPx[i] ?? 0) / 100, (pin?.yCentiPx[i] ?? 0) / 100];
  for (const plane of [here.armPx, here.endPx]) {
    const [u, v] = here.pinMm;
    const w = plane[6] * u + plane[7] * v + plane[8];
    const [x, y] = [
      (plane[0] * u + plane[1] * v + plane[2]) / w,
      (plane[3] * u + plane[4] * v + plane[5]) / w,
    ];
    expect(Math.hypot(x - xPx, y - yPx)).toBeLessThan(30);
  }
});

test('nothing is measured: nothing is seen', () => {
  const { input, track } = simulateClip(anyClip(3, { framesPerS: 30, reference: 'tape', tapeUnmoved: true }));
  expect(armSight({ ...input, views: [] }, track)).toBeNull();
});
