import { expect, test } from 'vitest';
import { bandPath, curvePath } from '../../../src/app/curve/curve-path.ts';

const axes = { xAt: (timeS: number) => 10 * timeS, yAt: (value: number) => 100 - value };
const frame = (timeS: number, value: number | null, u = 2) => ({
  timeS,
  seen: value === null ? null : { value, u },
});

test('a gap is left open', () => {
  const frames = [frame(0, 1), frame(1, 2), frame(2, null), frame(3, 4), frame(4, 5)];
  expect(curvePath(frames, axes)).toBe('M0.0 99.0L10.0 98.0M30.0 96.0L40.0 95.0');
});

test('a frame alone between gaps still shows', () => {
  expect(curvePath([frame(0, null), frame(1, 2), frame(2, null)], axes)).toBe('M8.5 98.0L11.5 98.0');
});

test('the band goes along the upper edge and back along the lower, once for each piece', () => {
  const frames = [frame(0, 10, 2), frame(1, 20, 4), frame(2, null), frame(3, 5, 1), frame(4, 5, 1)];
  expect(bandPath(frames, axes)).toBe(
    'M0.0 88.0L10.0 76.0L10.0 84.0L0.0 92.0ZM30.0 94.0L40.0 94.0L40.0 96.0L30.0 96.0Z',
  );
});
