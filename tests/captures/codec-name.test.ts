import { expect, test } from 'vitest';
import { codecName } from '../../src/captures/codec-name.ts';

test.each([
  ['hevc', 'hvc1', 'HEVC (H.265)'],
  ['avc', 'avc1', 'H.264'],
  [null, 'apcn', 'apcn'],
  [null, null, 'unknown'],
])('codec %s, %s in the file, is called %s', (codec, inFile, name) => {
  expect(codecName(codec, inFile)).toBe(name);
});
