import { expect, test } from 'vitest';
import { newestOfEach } from '../../../src/app/storage/parting-note.ts';

test('of several states of one record the last is noted, and every record is', () => {
  const noted = newestOfEach([
    { keptId: 'a', unit: 'GT-0' },
    { keptId: 'b', unit: 'T-3' },
    { keptId: 'a', unit: 'GT-09' },
  ]);
  expect(noted).toEqual([
    { keptId: 'a', unit: 'GT-09' },
    { keptId: 'b', unit: 'T-3' },
  ]);
});
