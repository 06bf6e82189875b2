import { expect, test } from 'vitest';
import { findEnd } from '../../src/vision/assist-end.ts';
import { pinPicture } from './tape-picture.ts';

const asked = ([x, y]: readonly [number, number], sigmaPx: number) =>
  ({ of: 'clevis-pin', placePx: [x, y], sigmaPx, lengthPx: 420 }) as const;

test('the middle of a pin’s end is found by the rim of its centre mark, from a mark some pixels off', () => {
  const { gray, centre } = pinPicture();
  const found = findEnd(gray, asked([centre[0] + 3.2, centre[1] - 2.1], 2.5));
  if (!found.ok) throw new Error(found.failure.code);
  const [mark] = found.value.marks;
  expect(
    Math.hypot((mark?.placePx[0] ?? NaN) - centre[0], (mark?.placePx[1] ?? NaN) - centre[1]),
  ).toBeLessThan(0.15);
  expect(mark?.sigmaPx).toBeLessThan(0.24);
});

test('without a centre mark nothing is offered: an outline does not tell the middle', () => {
  const { gray, centre } = pinPicture({ mark: 'none' });
  const rough = findEnd(gray, asked([centre[0] + 4, centre[1] - 3], 4));
  expect(rough.ok ? 'found' : rough.failure.code).toBe('disc/no-centre-mark');
});

test('a centre mark that is dark all round is not offered: where it begins in the face is not seen', () => {
  const { gray, centre } = pinPicture({ mark: 'dark' });
  const dark = findEnd(gray, asked([centre[0] + 2, centre[1] - 1], 2.5));
  expect(dark.ok ? 'found' : dark.failure.code).toBe('disc/loose-centre-mark');
});

test('a centre mark that is hardly larger than the blur is not offered', () => {
  const { gray, centre } = pinPicture({ markPx: 4.6 });
  const small = findEnd(gray, asked(centre, 2.5));
  expect(small.ok ? 'found' : small.failure.code).toBe('disc/loose-centre-mark');
});

test('nothing round, or too near to the border: refused with the reason', () => {
  const { gray, centre } = pinPicture({ angular: true, mark: 'none' });
  const square = findEnd(gray, asked(centre, 2));
  expect(square.ok ? 'found' : square.failure.code).toBe('disc/not-round');
  const rim = findEnd(pinPicture().gray, asked([8, 70], 2));
  expect(rim.ok ? 'found' : rim.failure.code).toBe('disc/out-of-picture');
});
