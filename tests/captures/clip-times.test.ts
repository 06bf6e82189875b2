import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clipTimes } from '../../src/captures/clip-times.ts';

const packet = (timestampS: number, isKey = false) => ({ timestampS, durationS: 0.04, isKey });

test('packets in decoding order become frames in the order of their time', () => {
  const { times, durationS } = clipTimes([packet(0, true), packet(0.12), packet(0.04), packet(0.08)], 25);
  expect(times.map(({ timeTicks }) => timeTicks)).toEqual([0, 1, 2, 3]);
  expect(times.map(({ isKey }) => isKey)).toEqual([true, false, false, false]);
  expect(durationS).toBeCloseTo(0.16, 12);
});

test('what lies before time 0 is not shown, and a second packet of one tick cannot be told apart', () => {
  const { times } = clipTimes([packet(-0.04, true), packet(0.04), packet(0.04), packet(0)], 25);
  expect(times.map(({ timeTicks }) => timeTicks)).toEqual([0, 1]);
});

test('a clip that begins late lasts from its first frame on', () => {
  expect(clipTimes([packet(1), packet(1.04)], 25).durationS).toBeCloseTo(0.08, 12);
  expect(clipTimes([], 25)).toEqual({ times: [], durationS: 0 });
});

// 30,000 / 1001 frames a second: no n / fps in floating point, but whole ticks.
test('every tick of a real clock survives the way through seconds', () => {
  const clocks = fc.constantFrom(600, 1000, 15_360, 30_000, 90_000, 1_000_000);
  fc.assert(
    fc.property(clocks, fc.uniqueArray(fc.nat(2 ** 31), { maxLength: 50 }), (ticksPerSecond, ticks) => {
      const { times } = clipTimes(
        ticks.map((tick) => packet(tick / ticksPerSecond)),
        ticksPerSecond,
      );
      expect(times.map(({ timeTicks }) => timeTicks)).toEqual(ticks.toSorted((a, b) => a - b));
    }),
  );
});
