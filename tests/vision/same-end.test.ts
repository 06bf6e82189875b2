import { expect, test } from 'vitest';
import { drawFrom } from '../../src/basics/random.ts';
import type { Gray } from '../../src/vision/gray.ts';
import type { Point } from '../../src/vision/point.ts';
import { sameEnd } from '../../src/vision/same-end.ts';

type Seen = {
  readonly centre: Point;
  readonly turnRad: number;
  readonly larger: number;
  readonly rust: number;
  readonly seed: number;
};

/** A rusty end of radius 15 px before something plain, from spots of fixed places; drawn without any code of the assists. */
function endPicture({ centre, turnRad, larger, rust, seed }: Seen): Gray {
  const [widthPx, heightPx] = [140, 120];
  const spots = drawFrom(rust);
  const places = Array.from({ length: 40 }, () => ({
    x: spots.normal(0, 9),
    y: spots.normal(0, 9),
    r: 1.2 + 2 * spots.uniform(0, 1),
    dark: 50 * spots.uniform(-0.6, 1),
  }));
  const grain = drawFrom(seed);
  const values = new Uint8Array(widthPx * heightPx);
  const [c, s] = [Math.cos(turnRad) / larger, Math.sin(turnRad) / larger];
  for (let row = 0; row < heightPx; row++)
    for (let column = 0; column < widthPx; column++) {
      const [dx, dy] = [column + 0.5 - centre[0], row + 0.5 - centre[1]];
      const [x, y] = [c * dx + s * dy, -s * dx + c * dy];
      const face = 1 / (1 + Math.exp((Math.hypot(x, y) - 15) / 0.5));
      const rusty = places.reduce(
        (sum, spot) =>
          sum + spot.dark * Math.exp(-(((x - spot.x) / spot.r) ** 2) - ((y - spot.y) / spot.r) ** 2),
        0,
      );
      const level = 70 + 0.2 * column + face * (90 - rusty) + grain.normal(0, 2);
      values[row * widthPx + column] = Math.max(0, Math.min(255, Math.round(level)));
    }
  return { widthPx, heightPx, values };
}

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
