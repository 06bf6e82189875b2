import { expect, test } from 'vitest';
import { verdictText } from '../../../src/app/words/recheck.ts';
import {
  MEASURED,
  newKeyPair,
  packageBytes,
  recheckBytes,
  smallRecord,
} from '../../evidence/small-package.ts';

test('what is no package is told from a package in which something was changed', async () => {
  const keys = await newKeyPair();
  const whole = await packageBytes({ record: smallRecord([MEASURED]), keys });
  const unread = /^This is no evidence package/;
  expect(verdictText(await recheckBytes(new TextEncoder().encode('a letter')))).toMatch(unread);
  expect(verdictText(await recheckBytes(whole.slice(0, -9)))).toMatch(unread);

  const changed = whole.slice();
  const middle = Math.floor(changed.length / 2);
  changed[middle] = 255 - (changed[middle] ?? 0);
  expect(verdictText(await recheckBytes(changed))).toMatch(
    /^This package does not hold: \d of 10 questions are answered with no\.$/,
  );
});
