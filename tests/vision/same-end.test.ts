import { expect, test } from 'vitest';
import type { Point } from '../../src/vision/point.ts';
import { sameEnd } from '../../src/vision/same-end.ts';
import { endPicture, type Seen } from './end-picture.ts';

const one: Seen = { centre: [64.2, 58.7], turnRad: 0, larger: 1, rust: 3, seed: 1 };
const other: Seen = { centre: [71.6, 61.3], turnRad: 0.05, larger: 1.06, rust: 3, seed: 2 };

/** A face 200 px to the left of the pin, and the camshaft below it. */
const marksOf = ({ centre: [x, y], turnRad, larger }: Seen, off: Point) => ({
  facePx: [x - 200 * larger * Math.cos(turnRad), y - 200 * larger * Math.sin(turnRad)] as const,
  pinPx: [x + off[0], y + off[1]] as const,
  camshaftPx: [
    x - 200 * larger * Math.cos(turnRad),
    y - 200 * larger * Math.sin(turnRad) + 140 * larger,
  ] as const,
});

test('the same point of a pin’s end is found in another picture, from a mark some pixels off', () => {
  const found = sameEnd(endPicture(one), endPicture(other), {
    of: 'clevis-pin',
    known: marksOf(one, [0, 0]),
    rough: marksOf(other, [3.1, -2.4]),
    roughSigmaPx: 2,
  });
  if (!found.ok) throw new Error(found.failure.code);
  const [x, y] = found.value.placePx;
  expect(Math.hypot(x - other.centre[0], y - other.centre[1])).toBeLessThan(0.15);
  expect(found.value.sigmaPx).toBeLessThan(0.4);
});

test('what the first mark is off by goes along, turned and larger as the part is', () => {
  const found = sameEnd(endPicture(one), endPicture(other), {
    of: 'clevis-pin',
    known: marksOf(one, [2, -1.5]),
    rough: marksOf(other, [0, 0]),
    roughSigmaPx: 2,
  });
  if (!found.ok) throw new Error(found.failure.code);
  const [c, s] = [1.06 * Math.cos(0.05), 1.06 * Math.sin(0.05)];
  const should = [other.centre[0] + 2 * c + 1.5 * s, other.centre[1] + 2 * s - 1.5 * c] as const;
  const [x, y] = found.value.placePx;
  expect(Math.hypot(x - should[0], y - should[1])).toBeLessThan(0.15);
});

test('another end: refused with the reason', () => {
  const question = {
    of: 'clevis-pin',
    known: marksOf(one, [0, 0]),
    rough: marksOf(other, [1, 1]),
    roughSigmaPx: 2,
  } as const;
  const unlike = sameEnd(endPicture(one), endPicture({ ...other, rust: 11 }), question);
  expect(unlike.ok ? 'found' : unlike.failure.code).toMatch(/^same\/(unlike|two-ways)$/);
});
