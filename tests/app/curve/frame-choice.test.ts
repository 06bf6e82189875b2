import fc from 'fast-check';
import { expect, test } from 'vitest';
import { frameByKey, nearestFrame } from '../../../src/app/curve/frame-choice.ts';

const curveAt = (times: readonly number[]) =>
  times.map((timeS) => ({ timeS, stroke: null, armAngleRad: null }));

test('the nearest frame in time, at any rate of frames', () => {
  const hundredths = fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 40 });
  fc.assert(
    fc.property(hundredths, fc.integer({ min: -50, max: 1050 }), (steps, perMille) => {
      const times = steps.map((_, i) => steps.slice(0, i + 1).reduce((sum, step) => sum + step, 0) / 100);
      const timeS = ((times.at(-1) ?? 0) * perMille) / 1000;
      const off = (i: number) => Math.abs((times[i] ?? 0) - timeS);
      const found = nearestFrame(curveAt(times), timeS);
      expect(off(found)).toBeLessThanOrEqual(Math.min(...times.map((_, i) => off(i))) + 1e-12);
    }),
  );
});

test.each([
  ['ArrowRight', false, 50, 51],
  ['ArrowLeft', false, 50, 49],
  ['ArrowUp', false, 50, 51],
  ['ArrowDown', false, 50, 49],
  ['ArrowRight', true, 50, 60],
  ['ArrowLeft', true, 50, 40],
  ['PageUp', false, 50, 60],
  ['PageDown', false, 50, 40],
  ['Home', false, 50, 0],
  ['End', false, 50, 99],
  ['ArrowRight', true, 95, 99],
  ['PageDown', false, 4, 0],
  ['a', false, 50, null],
  ['Enter', false, 50, null],
])('%s, shift %s, from %i: %s', (key, shiftKey, frame, wanted) => {
  expect(frameByKey({ key, shiftKey }, frame, 100)).toBe(wanted);
});
