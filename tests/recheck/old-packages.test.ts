import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { recheckBytes } from '../evidence/small-package.ts';

const FOLDER = 'tests/fixtures/packages';
const packages = readdirSync(FOLDER).filter((name) => name.endsWith('.zip'));

test.each(packages)('%s still holds in what rests on no engine and no rule set', async (name) => {
  const { checks } = await recheckBytes(Uint8Array.from(readFileSync(`${FOLDER}/${name}`)));
  const { ruleSets: _ruleSets, results, timeStamp, ...lasting } = checks;
  expect(timeStamp.answer).toBe(name.endsWith('-stamped.zip') ? 'yes' : 'none');
  expect(Object.values(lasting).map(({ answer }) => answer)).toEqual(Object.keys(lasting).map(() => 'yes'));
  // A better engine measures otherwise; what it says must still be about the same measurements.
  expect(new Set(results.differences.map(({ code }) => code)).size).toBeLessThanOrEqual(1);
  for (const { code } of results.differences) expect(code).toBe('results/differ');
});

test('there is a package of every version', () => expect(packages).toContain('version-1.zip'));
