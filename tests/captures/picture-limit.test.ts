import { expect, test } from 'vitest';
import { tooManyPixels } from '../../src/captures/picture-limit.ts';

test('a 50-megapixel photo passes, a picture of 64 million pixels and one row does not', () => {
  expect(tooManyPixels({ widthPx: 8160, heightPx: 6144 })).toBeNull();
  expect(tooManyPixels({ widthPx: 8000, heightPx: 8000 })).toBeNull();
  expect(tooManyPixels({ widthPx: 8000, heightPx: 8001 })).toEqual({
    code: 'captures/too-many-pixels',
    widthPx: 8000,
    heightPx: 8001,
    limitPx: 64_000_000,
  });
});
