import { expect, test } from 'vitest';
import { storedPlaces } from '../../src/captures/stored-place.ts';
import { uprightFromStored } from '../../src/captures/upright.ts';

test.each([0, 90, 180, 270] as const)('turned by %i degrees, a stored place comes back', (rotationDeg) => {
  const stored = { widthPx: 400, heightPx: 300 };
  const [a, b, c, d, e, f] = uprightFromStored(stored, { rotationDeg, mirrored: false });
  const onItsSide = rotationDeg % 180 !== 0;
  const { size, place } = storedPlaces({
    widthPx: onItsSide ? 300 : 400,
    heightPx: onItsSide ? 400 : 300,
    rotationDeg,
  });
  expect(size).toEqual(stored);
  expect(place(a * 37 + c * 91 + e, b * 37 + d * 91 + f)).toEqual([37, 91]);
});
