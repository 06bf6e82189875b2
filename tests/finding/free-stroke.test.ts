// Usual free stroke of drum brakes 3/8 to 5/8 in (trade press 2015 and 2018, excerpts), another maker to 3/4 in (excerpt).
import { expect, test } from 'vitest';
import { freeStrokeRange, setFreeStrokeRange } from '../../src/finding/free-stroke.ts';
import { US_RULE_SET } from '../../src/finding/rule-sets.ts';
import { INCH } from './chambers.ts';

test.each([
  [1 / 4, 'short'],
  [1 / 2, 'in range'],
  [11 / 16, 'not decided'],
  [1, 'long'],
  // Within the guard band, 1.645 x 0.3 = 0.49 mm, of 3/8 in and of 5/8 in.
  [0.37, 'not decided'],
  [0.61, 'not decided'],
])('measured %f in: %s', (inches, range) => {
  expect(freeStrokeRange({ value: inches * INCH, u: 0.3, U95: 0.588 }, US_RULE_SET)).toBe(range);
});

test.each([
  [5 / 16, 'short'],
  [3 / 8, 'in range'],
  [5 / 8, 'in range'],
  [11 / 16, 'not decided'],
  [3 / 4, 'not decided'],
  [13 / 16, 'long'],
])('set to %f in, as written down: %s', (inches, range) => {
  expect(setFreeStrokeRange(inches * INCH, US_RULE_SET)).toBe(range);
});
