import { expect, test } from 'vitest';
import { guessPin } from '../../src/vision/guess-ends.ts';
import type { Point } from '../../src/vision/point.ts';
import { endsPicture, type Seen } from './end-picture.ts';

const SIZE: Point = [420, 220];
const NOTHING_ABOVE = 0;
const face: Point = [40.3, 112.6];
const at = (centre: Point, rust = 3): Seen => ({ centre, turnRad: 0, larger: 1, rust, seed: centre[0] });
const released = at([220.2, 108.7]);
const marks = { facePx: face, pinPx: released.centre, camshaftPx: null };
/** Sought from where the pin was: nobody marked it. */
const guessed = (applied: readonly Seen[], brightAbovePx = NOTHING_ABOVE) =>
  guessPin(
    endsPicture([released], SIZE, brightAbovePx),
    endsPicture(applied, SIZE, brightAbovePx),
    marks,
    marks,
    [1, 0, 0, 1],
  );

test('a pin that has gone out is found where nobody marked it', () => {
  const applied = at([291.7, 103.4]);
  const found = guessed([{ ...applied, turnRad: -0.04 }]);
  if (!found.ok) throw new Error(found.failure.code);
  const [x, y] = found.value.placePx;
  expect(Math.hypot(x - applied.centre[0], y - applied.centre[1])).toBeLessThan(0.2);
});

test('a pin that has not moved is found where it was', () => {
  const found = guessed([{ ...released, seed: 9 }]);
  if (!found.ok) throw new Error(found.failure.code);
  expect(Math.hypot(found.value.placePx[0] - 220.2, found.value.placePx[1] - 108.7)).toBeLessThan(0.2);
});

test('nothing is offered where no pin of that look is, where two are, or where something lies over half of it', () => {
  const codeOf = (result: ReturnType<typeof guessed>) => (result.ok ? 'found' : result.failure.code);
  expect(codeOf(guessed([at([291.7, 103.4], 11)]))).toBe('unlike');
  expect(codeOf(guessed([at([291.7, 103.4]), at([240.4, 110.2])]))).toBe('two-places');
  expect(codeOf(guessed([at([291.7, 103.4])], 99))).toBe('parts-apart');
});
