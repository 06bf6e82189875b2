import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Hand, placementSigmaPx } from '../../src/marks/placement.ts';

const plain = { gearing: 1, magnification: 1 };

// Worked by hand from the header's formula.
test.each([
  ['mouse at 1:1', { hand: 'mouse', screenPxPerFramePx: 1, ...plain }, Math.sqrt(0.98)],
  ['mouse at a quarter', { hand: 'mouse', screenPxPerFramePx: 0.25, ...plain }, 4 * Math.sqrt(0.98)],
  ['mouse far zoomed in: the floor', { hand: 'mouse', screenPxPerFramePx: 16, ...plain }, 0.5],
  [
    'finger with a loupe of 4, picture at a tenth',
    { hand: 'finger', screenPxPerFramePx: 0.1, gearing: 1, magnification: 4 },
    10 * Math.sqrt(2.5 ** 2 + 0.175 ** 2),
  ],
  [
    'the same, geared down to a quarter',
    { hand: 'finger', screenPxPerFramePx: 0.1, gearing: 0.25, magnification: 4 },
    10 * Math.sqrt(0.625 ** 2 + 0.175 ** 2),
  ],
  ['keys at 1:1: the eye alone', { hand: 'keys', screenPxPerFramePx: 1, ...plain }, 0.7],
] as const)('%s', (_what, placed, sigmaPx) => {
  expect(placementSigmaPx(placed)).toBeCloseTo(sigmaPx, 10);
});

const placed = fc.record({
  hand: fc.constantFrom<Hand>('mouse', 'finger', 'keys'),
  screenPxPerFramePx: fc.double({ min: 0.01, max: 64, noNaN: true }),
  gearing: fc.double({ min: 0.05, max: 1, noNaN: true }),
  magnification: fc.double({ min: 1, max: 20, noNaN: true }),
});

test('is never below half a pixel and never better for being seen smaller', () => {
  fc.assert(
    fc.property(placed, fc.double({ min: 1, max: 10, noNaN: true }), (each, smaller) => {
      const here = placementSigmaPx(each);
      const seenSmaller = { ...each, screenPxPerFramePx: each.screenPxPerFramePx / smaller };
      expect(here).toBeGreaterThanOrEqual(0.5);
      expect(placementSigmaPx(seenSmaller)).toBeGreaterThanOrEqual(here - 1e-12);
    }),
  );
});

test('a finger is never better than a mouse moved and seen alike', () => {
  fc.assert(
    fc.property(placed, (each) => {
      const finger = placementSigmaPx({ ...each, hand: 'finger' });
      expect(finger).toBeGreaterThanOrEqual(placementSigmaPx({ ...each, hand: 'mouse' }));
    }),
  );
});

test('a picture seen at no scale is our own mistake', () => {
  expect(() => placementSigmaPx({ hand: 'mouse', screenPxPerFramePx: 0, ...plain })).toThrow();
});
