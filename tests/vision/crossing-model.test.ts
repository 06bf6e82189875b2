import { expect, test } from 'vitest';
import { crossingModel, UNKNOWNS } from '../../src/vision/crossing-model.ts';

const AT = Float64Array.from([0.05, -0.08, 0.3, 1.7, 0.12, 120, -70, 6, -9]);
const PIXEL_BLUR = 0.05;

test.each([
  [0.1, -0.1],
  [-0.2, 0.05],
  [0.4, 0.3],
  [0.05, -0.08],
])('derivatives at (%f, %f) are those of the brightness', (x, y) => {
  const [slopes, unused] = [new Float64Array(UNKNOWNS), new Float64Array(UNKNOWNS)];
  crossingModel(AT, PIXEL_BLUR).brightness(x, y, slopes);
  for (let k = 0; k < UNKNOWNS; k++) {
    const step = 1e-3 * Math.max(1, Math.abs(AT[k] ?? 0));
    const moved = (by: number) =>
      crossingModel(
        AT.map((v, i) => (i === k ? v + by : v)),
        PIXEL_BLUR,
      ).brightness(x, y, unused);
    // The step's table is good to 1e-6 of the amplitude.
    expect(Math.abs((slopes[k] ?? 0) - (moved(step) - moved(-step)) / (2 * step))).toBeLessThan(0.3);
  }
});
