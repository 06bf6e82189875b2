import { expect, test } from 'vitest';
import { boundText } from '../../../src/app/words/findings.ts';

// In eighths of an inch, as the limits of 49 CFR 393.47(e) are, rounding to the safe side reaches a limit and never passes it.
test('what a stroke within its limit is at most reads no more than the limit', () => {
  expect(boundText({ is: 'at most', mm: 1.99 * 25.4 }, 'fraction')).toBe('at most 2 in, 95 % sure');
  expect(boundText({ is: 'at least', mm: 2.01 * 25.4 }, 'fraction')).toBe('at least 2 in, 95 % sure');
  expect(boundText({ is: 'at most', mm: 1.9 * 25.4 }, 'fraction')).toBe('at most 1 15/16 in, 95 % sure');
});
