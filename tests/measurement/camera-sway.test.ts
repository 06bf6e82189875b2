import { expect, test } from 'vitest';
import { rotationFromVector, type Vec3 } from '../../src/basics/rotation.ts';
import { cameraSwayMm } from '../../src/measurement/camera-sway.ts';

/** A camera at a place, turned: its translation is -R place. */
function at([x, y, z]: Vec3, turn: Vec3) {
  const r = rotationFromVector(turn);
  const translation: Vec3 = [
    -(r[0] * x + r[1] * y + r[2] * z),
    -(r[3] * x + r[4] * y + r[5] * z),
    -(r[6] * x + r[7] * y + r[8] * z),
  ];
  return { rotation: r, translation };
}

test('how far the camera went aside, whatever it turned to meanwhile; not how far it came nearer', () => {
  expect(cameraSwayMm([])).toBe(0);
  const still = at([10, 0, -700], [0, 0, 0]);
  expect(cameraSwayMm([still, still])).toBeCloseTo(0, 9);
  expect(cameraSwayMm([still, at([10, 0, -640], [0, 0, 0])])).toBeCloseTo(0, 6);
  const aside = [-30, 0, 45, 20].map((x) => at([x, 0, -700], [0, 0, 0]));
  expect(cameraSwayMm(aside)).toBeCloseTo(75, 6);
  const turning = [-40, 40].map((x, i) => at([x, 0, -700], [0, i === 0 ? 0.05 : -0.05, 0]));
  expect(cameraSwayMm(turning)).toBeCloseTo(80, 0);
});
