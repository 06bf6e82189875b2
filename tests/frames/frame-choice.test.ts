import fc from 'fast-check';
import { expect, test } from 'vitest';
import { frameAtTime } from '../../src/frames/frame-choice.ts';

const frames = [0, 10, 20, 50].map((timeTicks, index) => ({ index, timeTicks }));

test.each([
  [-5, 0],
  [0, 0],
  [9, 0],
  [10, 1],
  [49, 2],
  [50, 3],
  [1e9, 3],
])('at tick %i frame %i is on the screen', (timeTicks, index) => {
  expect(frameAtTime(frames, timeTicks)?.index).toBe(index);
});

test('a clip without frames shows none', () => {
  expect(frameAtTime([], 0)).toBeUndefined();
});

test('as a walk through all frames finds it', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.nat(200), { minLength: 1 }), fc.nat(220), (ticks, at) => {
      const list = ticks.toSorted((a, b) => a - b).map((timeTicks, index) => ({ index, timeTicks }));
      const walked = list.findLast(({ timeTicks }) => timeTicks <= at) ?? list[0];
      expect(frameAtTime(list, at)).toBe(walked);
    }),
  );
});
