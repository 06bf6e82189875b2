import { expect, test } from 'vitest';
import { decodePlan, keptPictures } from '../../src/frames/decode-plan.ts';

const keys = [0, 30, 60];

test('a step forward goes on with the running decoder', () => {
  expect(decodePlan(11, { next: 11, playhead: 10, kept: 12, keys })).toEqual({ kind: 'go-on' });
});

test('a leap within one group of frames goes on, over a key frame it starts there', () => {
  expect(decodePlan(29, { next: 2, playhead: 1, kept: 12, keys })).toEqual({ kind: 'go-on' });
  expect(decodePlan(65, { next: 2, playhead: 1, kept: 12, keys })).toEqual({
    kind: 'start',
    from: 65,
    to: 65,
  });
  expect(decodePlan(31, { next: 28, playhead: 27, kept: 12, keys })).toEqual({ kind: 'go-on' });
});

test('a step back starts early enough to keep what the next steps back will ask for', () => {
  expect(decodePlan(40, { next: 52, playhead: 41, kept: 12, keys })).toEqual({
    kind: 'start',
    from: 29,
    to: 40,
  });
  expect(decodePlan(5, { next: 52, playhead: 6, kept: 12, keys })).toEqual({
    kind: 'start',
    from: 0,
    to: 5,
  });
});

test('a leap back far away and a first look start where they are wanted', () => {
  expect(decodePlan(5, { next: 60, playhead: 59, kept: 12, keys })).toEqual({
    kind: 'start',
    from: 5,
    to: 5,
  });
  expect(decodePlan(5, { next: null, playhead: null, kept: 12, keys })).toEqual({
    kind: 'start',
    from: 5,
    to: 5,
  });
});

test('a decoder that goes on to the end is begun where somebody steps forward, not for a look far ahead', () => {
  expect(decodePlan(41, { next: null, playhead: 40, kept: 12, keys })).toMatchObject({ from: 41, to: null });
  expect(decodePlan(43, { next: null, playhead: 40, kept: 12, keys })).toMatchObject({ from: 43, to: null });
  expect(decodePlan(50, { next: null, playhead: 40, kept: 12, keys })).toMatchObject({ from: 50, to: 50 });
});

test('the pictures kept fit the memory of a phone', () => {
  expect(keptPictures(320, 180)).toBe(12);
  expect(keptPictures(1920, 1080)).toBe(12);
  expect(keptPictures(3840, 2160)).toBe(4);
});
